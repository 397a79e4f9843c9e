import { type Answer, type Answers, withAnswer } from '../../shared/answers.ts'
import { type FactKey, fact } from '../../shared/fact-keys.ts'
import type { RouteId } from '../../shared/route-ids.ts'
import type { Build } from '../build/build.ts'
import type { Rulebook } from '../rulebook/load.ts'
import { type Corner, cornersOf, type Tried, type TriedFact } from './corners.ts'
import { type OpenFact, openFacts } from './open-facts.ts'
import type { AskWhatIf, QuickCall } from './quick-call.ts'

/** One open fact, and what its plausible answers do to the call. */
export interface Influence {
  readonly open: OpenFact
  /** Calls over its plausible values, the present one first. */
  readonly calls: readonly RouteId[]
  /** Value that is easiest and hardest on the present hardware; undefined is the assumed one. */
  readonly easiest: Answer | undefined
  readonly hardest: Answer | undefined
  /** How far the ease of the present hardware swings. */
  readonly swing: number
  readonly tried: readonly Tried[]
}

/** What is still open, and which of it matters. */
export interface OpenQuestions {
  /** Every open fact, most influential first. */
  readonly influences: readonly Influence[]
  /** Those without which the call is not settled. */
  readonly mattering: readonly Influence[]
  /** Calls at the two ends, with all that matters at its easiest and its hardest. */
  readonly ends: readonly RouteId[]
}

/**
 * Which open facts can still change the call.
 *
 * Each is tried at its plausible values alone; then together, at the corners where
 * they push a deciding figure farthest and at some drawn ones. From the least
 * influential up, facts are taken in for as long as every corner keeps the present
 * call: those taken in can, also together, not change it. The others matter.
 */
export async function openQuestions(
  answers: Answers,
  build: Build,
  now: QuickCall,
  rulebook: Rulebook,
  ask: AskWhatIf,
): Promise<OpenQuestions> {
  const influences: Influence[] = []
  for (const open of openFacts(build, answers, rulebook)) {
    influences.push(await influenceOf(answers, open, now, ask))
  }
  influences.sort((a, b) => rank(b) - rank(a) || (a.open.key < b.open.key ? -1 : 1))
  const quiet = influences.filter(({ calls }) => calls.length === 1).reverse()
  const harmless = await mostHarmless(answers, quiet, now, ask)
  const mattering = influences.filter((influence) => !harmless.includes(influence))
  const ends = new Set<RouteId>([now.wouldBe])
  for (const end of ['easiest', 'hardest'] as const) {
    const then = await ask(atEnd(answers, mattering, end))
    if (then) ends.add(then.wouldBe)
  }
  return { influences, mattering, ends: [...ends] }
}

async function influenceOf(
  answers: Answers,
  open: OpenFact,
  now: QuickCall,
  ask: AskWhatIf,
): Promise<Influence> {
  const calls = new Set<RouteId>([now.wouldBe])
  const tried: Tried[] = [{ value: undefined, figures: now.figures }]
  let [easiest, hardest]: (Answer | undefined)[] = []
  let [most, least] = [now.ease, now.ease]
  for (const value of open.values) {
    const then = await ask({ ...answers, [open.key]: value })
    if (!then) continue
    calls.add(then.wouldBe)
    tried.push({ value, figures: then.figures })
    if (then.ease > most) [most, easiest] = [then.ease, value]
    if (then.ease < least) [least, hardest] = [then.ease, value]
  }
  return { open, calls: [...calls], easiest, hardest, swing: most - least, tried }
}

function rank({ calls, swing }: Influence): number {
  return 1000 * (calls.length - 1) + swing
}

/**
 * The longest run of the least influential facts that together cannot change the
 * call, as far as their corners show. A corner that changes it is cut back to the
 * facts before the one that tipped it; the next corner is tried on what is left.
 */
async function mostHarmless(
  answers: Answers,
  quiet: readonly Influence[],
  now: QuickCall,
  ask: AskWhatIf,
): Promise<readonly Influence[]> {
  const facts = quiet.map(({ open, tried }) => ({ key: open.key, tried }))
  const known = new Map<string, boolean>()
  const keeps = async (corner: Corner, first: number): Promise<boolean> => {
    const taken = corner.slice(0, first)
    // Alone, none of them changes the call.
    if (taken.filter((place) => place > 0).length < 2) return true
    const key = taken.join().replace(/(,0)+$/, '')
    const found = known.get(key)
    if (found !== undefined) return found
    const then = await ask(atCorner(answers, facts, taken))
    const same = !then || then.wouldBe === now.wouldBe
    known.set(key, same)
    return same
  }
  let count = quiet.length
  for (const corner of cornersOf(facts)) {
    if (await keeps(corner, count)) continue
    let [low, high] = [0, count - 1]
    while (low < high) {
      const middle = Math.ceil((low + high) / 2)
      if (await keeps(corner, middle)) low = middle
      else high = middle - 1
    }
    count = low
  }
  return quiet.slice(0, count)
}

function atCorner(answers: Answers, facts: readonly TriedFact[], corner: Corner): Answers {
  const changed: { [key in FactKey]?: Answer } = { ...answers }
  corner.forEach((place, index) => {
    const { key, tried } = facts[index] as TriedFact
    const value = tried[place]?.value
    if (value !== undefined) changed[key] = value
  })
  return changed
}

function atEnd(
  answers: Answers,
  influences: readonly Influence[],
  end: 'easiest' | 'hardest',
): Answers {
  return influences.reduce((all, influence) => {
    const value = influence[end]
    return value === undefined ? all : withAnswer(all, influence.open.key, value)
  }, answers)
}

/** The question to ask next, and how many are left. */
export interface Next {
  readonly key: FactKey
  /** Routes that its answer could still decide between. */
  readonly separates: readonly RouteId[]
  /** Questions that are needed before a call may show. */
  readonly needed: number
  /** Questions that can still change the call; while some are needed, at most so many. */
  readonly left: number
}

/**
 * While a question is needed: the first of those. Only its own answers are tried, and
 * every other open question counts as left, since nearly all of them still matter.
 *
 * @param pointedAt - facts without which the call is withheld; needed before all others if open
 */
export async function neededQuestion(
  answers: Answers,
  build: Build,
  now: QuickCall,
  rulebook: Rulebook,
  ask: AskWhatIf,
  pointedAt: readonly string[] = [],
): Promise<Next | undefined> {
  const open = openFacts(build, answers, rulebook).filter(({ givenUp }) => !givenUp)
  const isNeeded = new Set([
    ...pointedAt,
    ...rulebook.questions.filter(({ essential }) => essential).map(({ fact: key }) => key),
  ])
  const needed = [...isNeeded].flatMap((key) => open.filter((one) => one.key === key))
  const [first] = needed
  if (!first) return undefined
  const { calls } = await influenceOf(answers, first, now, ask)
  return { key: first.key, separates: calls, needed: needed.length, left: open.length }
}

/** Open facts of which the ease of the present hardware swings most, and with it a lowered target. */
export function movingMost({ influences }: OpenQuestions, count = 3): FactKey[] {
  return influences
    .filter(({ swing }) => swing > 0)
    .sort((a, b) => b.swing - a.swing || (a.open.key < b.open.key ? -1 : 1))
    .slice(0, count)
    .map(({ open }) => open.key)
}

/** Once nothing is needed: the most influential question of the most influential topic. */
export function nextQuestion({ mattering, ends }: OpenQuestions): Next | undefined {
  const askable = mattering.filter(({ open }) => !open.givenUp)
  const chosen = heaviest(askable)
  if (!chosen) return undefined
  const separates = new Set<RouteId>([...chosen.calls, ...ends])
  return { key: chosen.open.key, separates: [...separates], needed: 0, left: askable.length }
}

/** The most influential fact of the topic with most influence, so that the talk does not jump about. */
function heaviest(askable: readonly Influence[]): Influence | undefined {
  const weight = new Map<string, number>()
  for (const influence of askable) {
    const { topic } = fact(influence.open.key)
    weight.set(topic, (weight.get(topic) ?? 0) + rank(influence))
  }
  const topic = [...weight].sort(([a, x], [b, y]) => y - x || (a < b ? -1 : 1))[0]?.[0]
  return askable.find((influence) => fact(influence.open.key).topic === topic)
}
