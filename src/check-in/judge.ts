import type { Source } from '../../shared/assessment.ts'
import { say } from '../rulebook/places.ts'
import type { CheckInRules } from '../shop-sheet/check-in-rules.ts'
import type { LimitId } from '../shop-sheet/limit-rules.ts'
import { type Limit, type LimitCase, limitFor } from '../shop-sheet/limits.ts'
import { asPrinted, type Show, type Standing, standingOf } from './as-printed.ts'

/** Best first. */
const VERDICTS = ['pass', 'too-near', 'look-again', 'send-back'] as const
/**
 * How a measure stands to its limit, the gauge counted in. One that has to be looked at again has a
 * reading in question; where every reading is good and the gauge cannot tell, it is too near.
 */
export type Verdict = (typeof VERDICTS)[number]

/** One measure against its limit. */
export interface Judged {
  readonly id: string
  readonly title: string
  /** SI; the printed text is for people. */
  readonly value: number
  readonly text: string
  /** "at most 0.0005 in"; empty where no limit is known. */
  readonly limit: string
  /** "±0.0001 in". */
  readonly uncertainty: string
  /** Null where there is no limit to judge by. */
  readonly verdict: Verdict | null
  /** The verdict in words. */
  readonly words: string
  readonly reason: string
  /** What to do about it; empty when it passes. */
  readonly advice: string
  /** Why there is such a limit. */
  readonly because: string
  readonly source: Source
  /** What goes back to be mended when it is not kept. */
  readonly goesBack: Limit['goesBack']
}

/** One measured value with what its gauge may be off. */
export interface Measure {
  readonly value: number
  /** Least and greatest of several readings, when the limit binds each of them. */
  readonly least?: number
  readonly greatest?: number
  /** Expanded uncertainty, in the unit of the value. */
  readonly uncertainty: number
  /** Prints a value of this kind. */
  readonly show: Show
  /** What to measure instead where this is too near to tell; the same again when not given. */
  readonly directly?: string
  /** Said after the limit's title, such as "main 2 to main 3". */
  readonly where?: string
}

/** Judge a measure by its limit in this case. */
export function judge(measuring: LimitCase, id: LimitId, measure: Measure): Judged {
  return judgeBy(limitFor(id, measuring), measure, measuring.rules.checkIn)
}

/** Judge a measure, and say how it stands in figures from which the same verdict follows. */
export function judgeBy(limit: Limit, measure: Measure, rules: CheckInRules): Judged {
  const { value, uncertainty, show, where } = measure
  const title = where === undefined ? limit.title : `${limit.title}, ${where}`
  const common = {
    id: limit.id,
    title,
    value,
    text: show(value),
    uncertainty: `±${show(uncertainty)}`,
    because: limit.because,
    source: limit.source,
    goesBack: limit.goesBack,
  }
  if (!limit.known) {
    const reason = say(rules.judged.noLimit, { title, found: show(value) })
    const { words } = rules.verdicts.none
    return { ...common, limit: '', verdict: null, words, reason, advice: '' }
  }
  const worst = worstEnd(limit, measure)
  const { verdict, found, inside, nearer } = worst
  const stood = { found, low: limit.low, high: limit.high, uncertainty }
  const printed = asPrinted(stood, worst, show)
  const { reasons, sides, near } = rules.judged
  const reason = verdict === 'too-near' ? (inside < 0 ? 'near-outside' : 'near-inside') : verdict
  return {
    ...common,
    // What decides is shown: of several readings, the one nearest to its limit or beyond.
    text: printed.found,
    limit: printed.limit,
    uncertainty: `±${printed.uncertainty}`,
    verdict,
    words: rules.verdicts[verdict].words,
    reason: say(reasons[reason], {
      title,
      ...printed,
      side: sides[nearer],
    }),
    advice: {
      pass: '',
      'too-near': measure.directly ?? againAdvice(limit, uncertainty, near),
      'send-back': nearer === 'high' ? limit.ifHigh : limit.ifLow,
    }[verdict],
  }
}

/** What helps where the gauge decides: another reading, unless gauges leave too little to pass in. */
function againAdvice(
  { low, high }: Limit,
  uncertainty: number,
  { again, coarse }: CheckInRules['judged']['near'],
): string {
  return 2 * uncertainty > coarse.share * (high - low) ? coarse.advice : again
}

function worstEnd(
  { low, high }: Limit,
  { value, least = value, greatest = value, uncertainty }: Measure,
): Standing & { readonly found: number } {
  const stand = (found: number) => ({
    found,
    // The last bits of a conversion from inches must not decide.
    ...standingOf({ found, low, high, uncertainty }, 1e-12),
  })
  const [lowest, highest] = [stand(least), stand(greatest)]
  return highest.inside < lowest.inside ? highest : lowest
}

/** The worst of some verdicts; null when none is given. */
export function worstVerdict(verdicts: readonly (Verdict | null)[]): Verdict | null {
  const places = verdicts.flatMap((one) => (one === null ? [] : [VERDICTS.indexOf(one)]))
  return places.length === 0 ? null : (VERDICTS[Math.max(...places)] ?? null)
}
