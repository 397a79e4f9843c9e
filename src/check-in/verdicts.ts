import type { CheckInReport, MainReport, WholeReport } from './check-in.ts'
import { verdictWords } from './goes-back.ts'
import { type Judged, type Verdict, worstVerdict } from './judge.ts'
import type { OddMain } from './odd-mains.ts'
import type { Suspect } from './suspects.ts'

/**
 * The verdict on one main: the worst of its measures, and never better than look again while one
 * of its readings is in question.
 */
export function mainVerdict(
  main: number,
  judged: readonly Judged[],
  asked: readonly Suspect[],
  missing: readonly string[],
): Pick<MainReport, 'verdict' | 'reasons' | 'advice' | 'judged'> {
  const verdict = worstVerdict(judged.map((one) => one.verdict))
  const question = asked.find(({ fields }) =>
    fields.some((field) => field.split('.')[1] === `${main}`),
  )
  if (question && verdict !== 'send-back') {
    const reason = `A reading is in question: ${question.label}, ${question.typed}. ${question.question}`
    return { verdict: 'look-again', reasons: [reason], advice: [], judged }
  }
  if (verdict === null) return { verdict, reasons: [], advice: [], judged }
  const worst = judged.filter((one) => one.verdict === verdict)
  const measured = judged.filter((one) => one.verdict !== null).length
  const apart = judged.filter((one) => one.verdict === null && one.limit !== '')
  const unjudged = judged
    .filter((one) => one.verdict === null && one.limit === '')
    .map(({ title }) => title.toLowerCase())
  const passed = `All ${measured} measures that have a limit are within it${missing.length === 0 ? '' : `; not measured: ${missing.join(', ')}`}.`
  const open = `No limit is known for ${unjudged.join(', ')}: take it from the service data before you trust this main.`
  if (verdict === 'pass') {
    const reasons = [
      passed,
      ...apart.map(({ reason }) => reason),
      ...(unjudged.length === 0 ? [] : [open]),
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

/** The verdict on the block: the worst of all, with the mains that decide it named. */
export function overallVerdict(
  mains: readonly MainReport[],
  whole: readonly WholeReport[],
  asked: readonly Suspect[],
  odd: readonly OddMain[],
): CheckInReport['overall'] {
  const parts = whole.flatMap(({ judged }) => judged)
  const found = worstVerdict([...mains, ...parts].map((one) => one.verdict))
  const verdict = found === 'pass' && asked.length > 0 ? 'look-again' : found
  const open = mains.filter(({ missing }) => missing.includes('housing bore'))
  const complete = open.length === 0
  if (verdict === null) {
    const isMeasured = [...mains.flatMap(({ judged }) => judged), ...parts].length > 0
    const title = isMeasured
      ? `Measured, but without a limit to judge by${apartText(odd)}`
      : 'Nothing is measured yet'
    const reasons = [
      ...odd.map(({ main, judged }) => `Main ${main}. ${judged.reason}`),
      ...asked.map(({ question }) => question),
    ]
    return { verdict, title, reasons, complete, advice: [] }
  }
  const at = mains.filter((one) => one.verdict === verdict)
  const wider = parts.filter((one) => one.verdict === verdict)
  return {
    verdict,
    complete,
    title:
      titleOf(verdict, at, wider, open, withoutLimit(mains)) +
      (verdict === 'pass' ? apartText(odd) : ''),
    advice: [...new Set([...at, ...wider].flatMap(({ advice }) => advice))].filter(
      (one) => one !== '',
    ),
    reasons:
      verdict === 'pass'
        ? odd.map(({ main, judged }) => `Main ${main}. ${judged.reason}`)
        : [
            ...at.flatMap((one) => one.reasons.map((reason) => `Main ${one.main}. ${reason}`)),
            ...wider.map(({ reason }) => reason),
          ],
  }
}

function titleOf(
  verdict: Verdict,
  at: readonly MainReport[],
  wider: readonly Judged[],
  open: readonly MainReport[],
  unjudged: readonly string[],
): string {
  if (verdict === 'pass') {
    const left = listOf(open.map(({ main }) => `${main}`))
    if (open.length > 0) return `Pass so far; the housing of main ${left} is not measured`
    return unjudged.length === 0
      ? 'Pass: every measure taken is within its limit'
      : `Pass so far: what has a limit is within it; not judged: ${listOf(unjudged)}`
  }
  const ground = at.filter(({ goesBack }) => goesBack.crank)
  const held = verdict === 'send-back' ? at.filter(({ goesBack }) => goesBack.block) : at
  const subjects = [
    ...named('main', held),
    ...wider.map(({ title }) => `${title.charAt(0).toLowerCase()}${title.slice(1)}`),
  ]
  const journals = named('journal', ground).join('')
  const words = verdictWords({ verdict })
  if (journals === '') return `${words}: ${listOf(subjects)}`
  return subjects.length === 0
    ? `${words} the crank, not the block: ${journals}`
    : `${words}: ${listOf(subjects)}; and the crank: ${journals}`
}

/** "main 1 and 3"; nothing where there is none. */
function named(part: string, mains: readonly MainReport[]): string[] {
  return mains.length === 0 ? [] : [`${part} ${listOf(mains.map(({ main }) => `${main}`))}`]
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

/** What has to be said beside a pass: mains that stand apart, though measured again. */
function apartText(odd: readonly OddMain[]): string {
  if (odd.length === 0) return ''
  const mains = [...new Set(odd.map(({ main }) => `${main}`))]
  return `, but main ${listOf(mains)} ${mains.length === 1 ? 'stands' : 'stand'} apart from the others`
}

/** "1", "1 and 2", "1, 2 and 3". */
function listOf(words: readonly string[]): string {
  if (words.length < 2) return words.join('')
  return `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`
}
