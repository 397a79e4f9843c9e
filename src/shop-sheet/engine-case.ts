import { type Build, choiceOf, has, siOf } from '../build/build.ts'
import { withRoute } from '../build/with-route.ts'
import { CRANK_LAYOUTS, type LayoutId } from '../mechanics/crank-layouts.ts'
import { type MaterialId, materialOf } from '../mechanics/materials.ts'
import type { GrowthMaterial } from '../mechanics/thermal-growth.ts'
import type { Rulebook } from '../rulebook/load.ts'

/** What sheet and check-in need to know of the engine, SI, after the route's changes. */
export interface EngineCase {
  readonly mains: number
  readonly splitCase: boolean
  /** Upright fasteners of one cap; undefined where the pattern leaves it open. */
  readonly upright: number | undefined
  /** Of a bank from their bisector, rad. */
  readonly bankAngle: number
  readonly bore: number
  readonly stroke: number
  readonly rodLength: number
  readonly compressionRatio: number
  readonly journal: number
  readonly bearingWidth: number
  /** The housing as a ring, for crush: outside diameter, and stiffness of the block. */
  readonly ring:
    | { readonly outside: number; readonly modulus: number; readonly poisson: number }
    | undefined
  readonly block: GrowthMaterial
  readonly cap: GrowthMaterial
  readonly use: string
  /** Journal plus two shells of usual thickness: about where the housing bore should lie. */
  readonly aboutHousing: number
  readonly aboutShell: number
  /** Facts among these that were not said. */
  readonly assumed: readonly string[]
}

const USED = [
  'layout',
  'bore',
  'stroke',
  'rodLength',
  'compressionRatio',
  'mainJournalDiameter',
  'mainBearingWidth',
  'capHeight',
  'blockMaterial',
  'capMaterial',
  'use',
] as const

const UPRIGHT: Readonly<Record<string, number>> = {
  'two-bolt': 2,
  'four-bolt': 4,
  'four-bolt-splayed': 4,
}

/**
 * @param build - as it stands
 * @param route - id of the route that is carried out; null leaves the engine as it is
 */
export function engineCase(build: Build, route: string | null, rulebook: Rulebook): EngineCase {
  const changes = rulebook.routes.find(({ id }) => id === route)
  const after = changes ? withRoute(build, changes) : build
  const layout = CRANK_LAYOUTS[choiceOf(after, 'layout') as LayoutId]
  const block = choiceOf(after, 'blockMaterial') as GrowthMaterial
  const { modulus, poisson } = materialOf(blockMaterialId(rulebook, block))
  const journal = siOf(after, 'mainJournalDiameter')
  const shell = rulebook.joint.shellThickness.value
  return {
    mains: layout.mains,
    splitCase: layout.splitCase,
    upright: has(after, 'capFastening') ? UPRIGHT[choiceOf(after, 'capFastening')] : undefined,
    // Both banks of a flat engine lie square to the parting face, along the shift.
    bankAngle: layout.splitCase ? 0 : layout.bankSpread / 2,
    bore: siOf(after, 'bore'),
    stroke: siOf(after, 'stroke'),
    rodLength: siOf(after, 'rodLength'),
    compressionRatio: siOf(after, 'compressionRatio'),
    journal,
    bearingWidth: siOf(after, 'mainBearingWidth'),
    ring: has(after, 'capHeight')
      ? { outside: 2 * siOf(after, 'capHeight'), modulus, poisson }
      : undefined,
    block,
    cap: has(after, 'capMaterial') ? (choiceOf(after, 'capMaterial') as GrowthMaterial) : block,
    use: choiceOf(after, 'use'),
    aboutHousing: journal + 2 * shell,
    aboutShell: shell,
    assumed: USED.filter((key) => build.facts[key].state === 'assumed'),
  }
}

function blockMaterialId({ joint }: Rulebook, block: string): MaterialId {
  return joint.blockMaterial[block] as MaterialId
}
