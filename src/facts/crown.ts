import { type Build, choiceOf, has, siOf } from '../build/build.ts'
import { capStrength } from '../mechanics/cap-strength.ts'
import type { materialOf } from '../mechanics/materials.ts'
import type { Rulebook } from '../rulebook/load.ts'

/** Sizes of the cap by which its strength varies. */
export const STRENGTH_FACTS = [
  'capBoltSpan',
  'capHeight',
  'capWidth',
  'mainJournalDiameter',
] as const

/** Any pull within the range; the crown's stress is a line through nought, so it cancels. */
const REFERENCE_PULL = 1e4

function endurable(
  build: Build,
  { joint, fastenings }: Rulebook,
  material: ReturnType<typeof materialOf>,
  scale: Partial<Record<string, number>>,
): number {
  const size = (key: (typeof STRENGTH_FACTS)[number]): number =>
    siOf(build, key) * (scale[key] ?? 1)
  const boreRadius = size('mainJournalDiameter') / 2 + joint.shellThickness.value
  // A crown thinner than this is a slip in the sizes; the contradiction rules say so.
  const height = Math.max(0.25 * boreRadius, size('capHeight') - boreRadius)
  const span = Math.max(size('capBoltSpan'), 2.05 * boreRadius)
  const { goodmanMargin } = capStrength({
    boreRadius,
    height,
    span,
    width: size('capWidth'),
    pull: REFERENCE_PULL,
    material,
    endFixity: fastenings[choiceOf(build, 'capFastening')]?.footFixity,
  })
  return goodmanMargin * REFERENCE_PULL
}

const STEP = 1.03

/** Strength of a cap: the pull that its crown endures, and how that follows its sizes. */
export interface Crown {
  readonly pull: number
  readonly exponents: ReadonlyMap<string, number>
}

/** Caps looked at last, by all that their strength rests on: fasteners change, caps seldom. */
const strengths = new WeakMap<Rulebook, Map<string, Crown>>()
const MOST_STRENGTHS = 256

/** The cap as a curved beam, of a build and a material: worked out once, then remembered. */
export function crownOf(
  build: Build,
  rulebook: Rulebook,
  material: ReturnType<typeof materialOf>,
): Crown {
  let known = strengths.get(rulebook)
  if (!known || known.size > MOST_STRENGTHS) {
    known = new Map()
    strengths.set(rulebook, known)
  }
  const sizes = STRENGTH_FACTS.map((key) => `${build.facts[key].state}${build.facts[key].value}`)
  const key = `${sizes.join('|')}|${choiceOf(build, 'capMaterial')}|${choiceOf(build, 'capFastening')}`
  let found = known.get(key)
  if (!found) {
    const pull = endurable(build, rulebook, material, {})
    found = { pull, exponents: strengthExponents(build, rulebook, material, pull) }
    known.set(key, found)
  }
  return found
}

function strengthExponents(
  build: Build,
  rulebook: Rulebook,
  material: ReturnType<typeof materialOf>,
  nominal: number,
): Map<string, number> {
  const found = new Map<string, number>()
  for (const key of STRENGTH_FACTS) {
    if (build.facts[key].state !== 'assumed' || !has(build, key)) continue
    const changed = endurable(build, rulebook, material, { [key]: STEP })
    found.set(key, Math.log(changed / nominal) / Math.log(STEP))
  }
  return found
}
