import type { Assessment } from '../../shared/assessment.ts'
import { buildInputs, figureInput } from './from-build.ts'

const CAP: Readonly<Record<string, string>> = {
  'gray-iron': 'gray-iron-30',
  'ductile-iron': 'ductile-80-55-06',
  'sintered-steel': 'sintered-copper-steel',
  steel: 'steel-1045-cold-drawn',
  aluminium: 'aluminium-356-t6',
}
const BLOCK: Readonly<Record<string, string>> = {
  'gray-iron': 'gray-iron-30',
  'compacted-iron': 'compacted-iron-400',
  aluminium: 'aluminium-319-t6',
}

/** The present cap of a case, with the loads and the preload that the guide worked out. */
export function capJointFromBuild(assessment: Assessment): Record<string, unknown> {
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
    grip: 'capHeight',
    kind: 'fastenerKind',
  })
  return {
    ...own,
    fasteners: [
      { ...fastener, count: four ? 4 : 2, preload: figureInput(keep?.joint.preload ?? 0, 'kN') },
    ],
    capMaterial: CAP[of('capMaterial')],
    blockMaterial: BLOCK[of('blockMaterial')],
    pull: figureInput(pull, 'kN'),
    side: figureInput(side, 'kN'),
  }
}
