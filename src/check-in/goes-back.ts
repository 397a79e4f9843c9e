import type { CheckInRules } from '../shop-sheet/check-in-rules.ts'
import type { Judged, Verdict } from './judge.ts'

/** What has to go back to be mended. */
export interface GoesBack {
  readonly block: boolean
  readonly crank: boolean
}

/** What goes back for the measures of one main that are outside their limits. */
export function goesBack(judged: readonly Judged[]): GoesBack {
  const out = judged.filter(({ verdict }) => verdict === 'send-back')
  const faultOf = (part: Judged['goesBack']) => out.some((one) => one.goesBack === part)
  const crank = faultOf('crank')
  return { crank, block: faultOf('block') || (faultOf('whose-fault') && !crank) }
}

/** What a verdict rests on, where the bare word would say too much or too little. */
export interface VerdictCase {
  readonly verdict: Verdict | null
  readonly goesBack: GoesBack
  /** Whether a size of it was measured and has no limit to be judged by. */
  readonly sizeOpen: boolean
}

/** A verdict on one main as it is called, in full and where there is little room. */
export function verdictName(
  verdicts: CheckInRules['verdicts'],
  { verdict, goesBack, sizeOpen }: VerdictCase,
): { readonly words: string; readonly short: string } {
  if (verdict === null) return verdicts.none
  if (verdict === 'pass' && sizeOpen) return verdicts.sizeOpen
  if (verdict === 'send-back' && goesBack.crank) {
    return goesBack.block ? verdicts.both : verdicts.crank
  }
  return verdicts[verdict]
}

/**
 * Whether a size of this main was measured and nothing judges it. A journal without limits of its
 * own is judged by the clearance that it leaves.
 */
export function isSizeOpen(judged: readonly Judged[]): boolean {
  const isOpen = (id: string) => judged.some((one) => one.id === id && one.limit === '')
  const hasClearance = judged.some(({ id, verdict }) => id === 'clearance' && verdict !== null)
  return isOpen('housing-size') || (isOpen('journal-size') && !hasClearance)
}
