import { say } from '../rulebook/places.ts'
import type { CheckInRules } from '../shop-sheet/check-in-rules.ts'
import type { CheckInReport, MainReport, WholeReport } from './check-in.ts'
import { type Judged, worstVerdict } from './judge.ts'
import type { OddMain } from './odd-mains.ts'
import type { Suspect } from './suspects.ts'

/**
 * The verdict on one main: the worst of its measures, and never better than look again while one
 * of its readings is in question.
 */
export function mainVerdict(
  main: number,
  judged: readonly Judged[],
  { asked, missing }: Pick<MainReport, 'missing'> & { readonly asked: readonly Suspect[] },
  { main: says, measures }: CheckInRules,
): Pick<MainReport, 'verdict' | 'reasons' | 'advice' | 'judged'> {
  const verdict = worstVerdict(judged.map((one) => one.verdict))
  const question = asked.find(({ fields }) =>
    fields.some((field) => field.split('.')[1] === `${main}`),
  )
  if (question && verdict !== 'send-back') {
    const { label: reading, typed, question: words } = question
    const reason = say(says.asked, { reading, typed, question: words })
    return { verdict: 'look-again', reasons: [reason], advice: [], judged }
  }
  if (verdict === null) return { verdict, reasons: [], advice: [], judged }
  const worst = judged.filter((one) => one.verdict === verdict)
  const count = judged.filter((one) => one.verdict !== null).length
  const passed = [
    count === 1 ? says.passedOne : say(says.passed, { count: `${count}` }),
    ...(missing.length === 0
      ? []
      : [say(says.unmeasured, { missing: missing.map((id) => measures[id]).join(', ') })]),
  ].join(' ')
  const apart = judged.filter((one) => one.verdict === null && one.limit !== '')
  const unjudged = judged
    .filter((one) => one.verdict === null && one.limit === '')
    .map(({ title }) => title.toLowerCase())
  if (verdict === 'pass') {
    const reasons = [
      passed,
      ...apart.map(({ reason }) => reason),
      ...(unjudged.length === 0 ? [] : [say(says.noLimit, { measures: unjudged.join(', ') })]),
    ]
    return { verdict, reasons, advice: [], judged }
  }
  return {
    verdict,
    reasons: worst.map(({ reason }) => reason),
    advice: [...new Set(worst.map(({ advice }) => advice))],
    judged,
  }
}

/** What the verdict on the block has to say beside that on each part. */
interface Beside {
  readonly asked: readonly Suspect[]
  readonly odd: readonly OddMain[]
  /** What could not be worked out. */
  readonly notes: readonly string[]
}

/** The verdict on the block: the worst of all, with the mains that decide it named. */
export function overallVerdict(
  mains: readonly MainReport[],
  whole: readonly WholeReport[],
  { asked, odd, notes }: Beside,
  { overall: says, verdicts }: CheckInRules,
): CheckInReport['overall'] {
  const parts = whole.flatMap(({ judged }) => judged)
  const found = worstVerdict([...mains, ...parts].map((one) => one.verdict))
  const isHeld = asked.length > 0 && found !== null && found !== 'send-back'
  const verdict = isHeld ? 'look-again' : found
  const open = mains.filter(({ missing }) => missing.includes('housing'))
  const complete = open.length === 0
  const reasonOf = (main: number, reason: string) => say(says.reason, { main: `${main}`, reason })
  const apart = odd.map(({ main, judged }) => reasonOf(main, judged.reason))
  if (verdict === null) {
    const isMeasured = [...mains.flatMap(({ judged }) => judged), ...parts].length > 0
    const title = isMeasured
      ? withApart(says.noLimit, odd, says)
      : says[notes.length > 0 ? 'beyond' : 'nothing']
    const reasons = [...apart, ...asked.map(({ question }) => question)]
    return { verdict, words: verdicts.none.words, title, reasons, complete, advice: [] }
  }
  const { words } = verdicts[verdict]
  const at = mains.filter((one) => one.verdict === verdict)
  const wider = parts.filter((one) => one.verdict === verdict)
  return {
    verdict,
    words,
    complete,
    title:
      verdict === 'pass'
        ? withApart(passTitle(open, withoutLimit(mains), says), odd, says)
        : titleOf(words, at, wider, verdict === 'send-back', says),
    advice: [...new Set([...at, ...wider].flatMap(({ advice }) => advice))].filter(
      (one) => one !== '',
    ),
    reasons:
      verdict === 'pass'
        ? apart
        : [
            ...at.flatMap(({ main, reasons }) => reasons.map((reason) => reasonOf(main, reason))),
            ...wider.map(({ reason }) => reason),
          ],
  }
}

type Says = CheckInRules['overall']

function passTitle(open: readonly MainReport[], unjudged: readonly string[], says: Says): string {
  if (open.length > 0) return say(says.passSoFar, { mains: numbersOf(open) })
  return unjudged.length === 0 ? says.pass : say(says.passNoLimit, { measures: listOf(unjudged) })
}

/** What is to be looked at or sent back: mains and what concerns the row, and journals apart. */
function titleOf(
  verdict: string,
  at: readonly MainReport[],
  wider: readonly Judged[],
  goesBack: boolean,
  says: Says,
): string {
  const ground = at.filter((one) => one.goesBack.crank)
  const held = goesBack ? at.filter((one) => one.goesBack.block) : at
  const parts = listOf([
    ...(held.length === 0 ? [] : [say(says.mains, { mains: numbersOf(held) })]),
    ...wider.map(({ title }) => `${title.charAt(0).toLowerCase()}${title.slice(1)}`),
  ])
  if (ground.length === 0) return say(says.parts, { verdict, parts })
  const journals = say(says.journals, { mains: numbersOf(ground) })
  return parts === ''
    ? say(says.crank, { verdict, journals })
    : say(says.both, { verdict, parts, journals })
}

/** What was measured and has no limit to be judged by: no block passes on the rest alone. */
function withoutLimit(mains: readonly MainReport[]): string[] {
  const titles = mains.flatMap(({ judged }) =>
    judged
      .filter((one) => one.verdict === null && one.limit === '')
      .map(({ title }) => title.toLowerCase()),
  )
  return [...new Set(titles)]
}

/** A title with what has to be said beside it: mains that stand apart, though measured again. */
function withApart(title: string, odd: readonly OddMain[], says: Says): string {
  const mains = [...new Set(odd.map(({ main }) => `${main}`))]
  if (mains.length === 0) return title
  return say(mains.length === 1 ? says.apart : says.apartSome, { title, mains: listOf(mains) })
}

function numbersOf(mains: readonly MainReport[]): string {
  return listOf(mains.map(({ main }) => `${main}`))
}

/** "1", "1 and 2", "1, 2 and 3". */
function listOf(words: readonly string[]): string {
  if (words.length < 2) return words.join('')
  return `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`
}
