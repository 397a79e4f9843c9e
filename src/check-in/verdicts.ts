import { say } from '../rulebook/places.ts'
import type { CheckInRules } from '../shop-sheet/check-in-rules.ts'
import { tableOf } from '../shop-sheet/fields.ts'
import type { CheckInReport, MainReport, Unread, WholeReport } from './check-in.ts'
import { type Judged, worstVerdict } from './judge.ts'
import type { OddMain } from './odd-mains.ts'
import type { Suspect } from './suspects.ts'

/**
 * The verdict on one main: the worst of its measures, and never better than look again while one
 * of its readings is in question or could not be read.
 */
export function mainVerdict(
  main: number,
  judged: readonly Judged[],
  { asked, wrong, missing }: Pick<MainReport, 'missing'> & Pick<Beside, 'asked' | 'wrong'>,
  { main: says, measures, unread }: CheckInRules,
): Pick<MainReport, 'verdict' | 'reasons' | 'advice' | 'judged'> {
  const verdict = worstVerdict(judged.map((one) => one.verdict))
  const question = asked.find(({ fields }) =>
    fields.some((field) => field.split('.')[1] === `${main}`),
  )
  const open = [
    ...wrong.filter(({ field }) => mainOf(field) === main).map((one) => unreadText(one, unread)),
    ...(question
      ? [
          say(says.asked, {
            reading: question.label,
            typed: question.typed,
            question: question.question,
          }),
        ]
      : []),
  ]
  if (open.length > 0 && verdict !== 'send-back') {
    return { verdict: 'look-again', reasons: open, advice: [], judged }
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

/** The main that a field is of; undefined where it is of none. */
function mainOf(field: string): number | undefined {
  const [table = '', row] = field.split('.')
  return tableOf(table)?.rows === 'mains' ? Number(row) : undefined
}

function unreadText({ label, text }: Unread, says: CheckInRules['unread']): string {
  return say(says, { reading: label, text })
}

/** What the verdict on the block has to say beside that on each part. */
interface Beside {
  readonly asked: readonly Suspect[]
  readonly odd: readonly OddMain[]
  /** What could not be read. */
  readonly wrong: readonly Unread[]
  /** What could not be worked out. */
  readonly notes: readonly string[]
}

/** The verdict on the block: the worst of all, with the mains that decide it named. */
export function overallVerdict(
  mains: readonly MainReport[],
  whole: readonly WholeReport[],
  { asked, odd, wrong, notes }: Beside,
  { overall: says, verdicts, unread }: CheckInRules,
): CheckInReport['overall'] {
  const parts = whole.flatMap(({ judged }) => judged)
  const found = worstVerdict([...mains, ...parts].map((one) => one.verdict))
  // A limit, a gauge or a depth that was not read: the block does not pass on what stands in for it.
  const elsewhere = wrong.filter(({ field }) => mainOf(field) === undefined)
  const isHeld = asked.length + elsewhere.length > 0 && found !== null && found !== 'send-back'
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
  const notRead = verdict === 'look-again' ? elsewhere : []
  const names = [...wider.map(({ title }) => title), ...notRead.map(({ label }) => label)]
  return {
    verdict,
    words,
    complete,
    title:
      verdict === 'pass'
        ? withApart(passTitle(open, withoutLimit(mains), says), odd, says)
        : titleOf(words, at, names, verdict === 'send-back', says),
    advice: [...new Set([...at, ...wider].flatMap(({ advice }) => advice))].filter(
      (one) => one !== '',
    ),
    reasons:
      verdict === 'pass'
        ? apart
        : [
            ...at.flatMap(({ main, reasons }) => reasons.map((reason) => reasonOf(main, reason))),
            ...wider.map(({ reason }) => reason),
            ...notRead.map((one) => unreadText(one, unread)),
          ],
  }
}

type Says = CheckInRules['overall']

function passTitle(open: readonly MainReport[], unjudged: readonly string[], says: Says): string {
  if (open.length > 0) return say(says.passSoFar, { mains: numbersOf(open) })
  return unjudged.length === 0 ? says.pass : say(says.passNoLimit, { measures: listOf(unjudged) })
}

/**
 * What is to be looked at or sent back: mains and what concerns the row, and journals apart.
 *
 * @param wider - titles of what concerns the row or the whole
 */
function titleOf(
  verdict: string,
  at: readonly MainReport[],
  wider: readonly string[],
  goesBack: boolean,
  says: Says,
): string {
  const ground = at.filter((one) => one.goesBack.crank)
  const held = goesBack ? at.filter((one) => one.goesBack.block) : at
  const parts = listOf([
    ...(held.length === 0 ? [] : [say(says.mains, { mains: numbersOf(held) })]),
    ...wider.map((title) => `${title.charAt(0).toLowerCase()}${title.slice(1)}`),
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
