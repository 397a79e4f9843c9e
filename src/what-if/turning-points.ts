import { type Answers, choicesOf, UNKNOWN } from '../../shared/answers.ts'
import { FACT_KEYS, type Fact, type FactKey, fact } from '../../shared/fact-keys.ts'
import type { RouteId } from '../../shared/route-ids.ts'
import type { Build } from '../build/build.ts'
import type { Rulebook } from '../rulebook/load.ts'
import { asAnswer } from './open-facts.ts'
import type { AskWhatIf, QuickCall } from './quick-call.ts'

/** The nearest value of one answer that changes the call. */
export interface TurningValue {
  readonly key: FactKey
  readonly direction: 'below' | 'above' | 'is'
  /** Figure in the usual unit, or a choice. */
  readonly at: number | string
  readonly route: RouteId
}

/** How far either way a figure is tried, as shares of its present value. */
const REACH = { down: 0.4, up: 2.2 } as const
/** How near a boundary is found, as a part of the whole way. */
const NEAR = 1 / 128

/**
 * For each answer that was given, the nearest value that changes the call: every
 * other choice, and for a figure the nearest boundary on either side. Facts that the
 * rulebook's questions call fixed are left out.
 *
 * @param now - the present call
 */
export async function turningPoints(
  answers: Answers,
  build: Build,
  now: QuickCall,
  rulebook: Rulebook,
  ask: AskWhatIf,
): Promise<TurningValue[]> {
  const found: TurningValue[] = []
  const fixed = new Set(rulebook.questions.filter(({ turns }) => !turns).map((one) => one.fact))
  for (const key of FACT_KEYS) {
    if (answers[key] === undefined || answers[key] === UNKNOWN || fixed.has(key)) continue
    const entry = fact(key)
    const { value } = build.facts[key]
    if (entry.kind === 'choice') found.push(...(await otherChoices(answers, entry, now, ask)))
    else if (typeof value === 'number') {
      found.push(...(await boundaries(answers, build, entry, value, now, ask)))
    }
  }
  return found
}

async function otherChoices(
  answers: Answers,
  entry: Fact,
  now: QuickCall,
  ask: AskWhatIf,
): Promise<TurningValue[]> {
  const found: TurningValue[] = []
  for (const choice of Object.keys(choicesOf(entry))) {
    if (choice === answers[entry.key] || choice === UNKNOWN) continue
    const then = await ask({ ...answers, [entry.key]: choice })
    if (!then || then.route === null || then.route === now.wouldBe) continue
    found.push({ key: entry.key, direction: 'is', at: choice, route: then.route })
  }
  return found
}

async function boundaries(
  answers: Answers,
  build: Build,
  entry: Fact,
  value: number,
  now: QuickCall,
  ask: AskWhatIf,
): Promise<TurningValue[]> {
  if (!('low' in entry) || value <= 0) return []
  const found: TurningValue[] = []
  const at = (figure: number) =>
    ask({ ...answers, [entry.key]: asAnswer(build, entry.key, figure) })
  const ends = [
    { direction: 'below' as const, end: Math.max(entry.low, value * REACH.down) },
    { direction: 'above' as const, end: Math.min(entry.high, value * REACH.up) },
  ]
  for (const { direction, end } of ends) {
    if (end === value) continue
    const turned = await nearestTurn(at, value, end, now)
    if (turned) found.push({ key: entry.key, direction, ...turned })
  }
  return found
}

/** The change of call nearest to the present value, to within a hundredth of the way. */
async function nearestTurn(
  at: (figure: number) => Promise<QuickCall | undefined>,
  value: number,
  end: number,
  now: QuickCall,
): Promise<{ at: number; route: RouteId } | undefined> {
  const changed = (then: QuickCall | undefined): then is QuickCall =>
    then !== undefined && then.route !== null && then.route !== now.wouldBe
  const along = (share: number): number => value + (end - value) * share
  const first = await firstChange((share) => at(along(share)), changed, now)
  if (!first) return undefined
  let { near, far, call } = first
  while (far - near > NEAR) {
    const middle: number = (near + far) / 2
    const then = await at(along(middle))
    if (changed(then)) [far, call] = [middle, then]
    else near = middle
  }
  return { at: along(far), route: call.route as RouteId }
}

/** The first of a few steps at which the call changes, and the last before it; shares of the way. */
async function firstChange(
  at: (share: number) => Promise<QuickCall | undefined>,
  changed: (call: QuickCall | undefined) => call is QuickCall,
  now: QuickCall,
): Promise<{ near: number; far: number; call: QuickCall } | undefined> {
  const whole = await at(1)
  // What moves no figure over the whole way moves none on it.
  if (whole && !changed(whole) && sameFigures(whole, now)) return undefined
  let near = 0
  for (const far of [0.25, 0.5, 1]) {
    const call = far === 1 ? whole : await at(far)
    if (changed(call)) return { near, far, call }
    near = far
  }
  return undefined
}

function sameFigures(one: QuickCall, other: QuickCall): boolean {
  return one.figures.every((figure, index) => figure === other.figures[index])
}
