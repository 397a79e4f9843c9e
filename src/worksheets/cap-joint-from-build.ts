import { readThread } from '../../shared/thread.ts'
import { buildInputs, figureInput } from './from-build.ts'
import type { BuildSource } from './worksheet.ts'

/** The present cap of a case, with the loads and the preload that the guide worked out. */
export function capJointFromBuild({ assessment, joint }: BuildSource): Record<string, unknown> {
  const { build, loads, routes } = assessment
  const keep = routes.find(({ id }) => id === 'keep-caps-and-bolts') ?? routes[0]
  const of = (key: string): string => String(build[key]?.value)
  const four = of('capFastening').startsWith('four-bolt')
  const { pull, side } = loads.worstSide
  const own = buildInputs(assessment, {
    grade: 'fastenerGrade',
    registerHeight: 'registerHeight',
    registerLength: 'capWidth',
  })
  const fastener = buildInputs(assessment, {
    thread: 'fastenerThread',
    kind: 'fastenerKind',
  })
  const height = build.capHeight
  const grip = figureInput(joint.grip * Number(height?.value ?? 0), height?.unit ?? 'in')
  const diameter = readThread(of('fastenerThread'))?.diameter ?? 0
  return {
    ...own,
    fasteners: [
      {
        ...fastener,
        grip,
        count: four ? 4 : 2,
        preload: figureInput(keep?.joint.preload ?? 0, 'kN'),
        headDiameter: figureInput(1000 * joint.head * diameter, 'mm'),
      },
    ],
    capMaterial: joint.capMaterial[of('capMaterial')],
    blockMaterial: joint.blockMaterial[of('blockMaterial')],
    embedding: figureInput(joint.settling, 'mm'),
    pull: figureInput(pull, 'kN'),
    side: figureInput(side, 'kN'),
  }
}
