import type { Findings } from './findings.ts'
import { coverage } from './mentions.ts'
import type { Parts } from './message-parts.ts'

const METRIC_SIZE = /^m\d{1,2}$/
const HAS_DIGIT = /\d/

/** Words with a figure in them that nothing was read from: "M12 studs", "a T4 flange". Never lost silently. */
export function doubtUnreadWords(
  { tokens, lexicon, choiceMentions, figureMentions, figures }: Parts,
  { readings, doubts }: Findings,
): void {
  const read = coverage(tokens.length, [
    ...readings,
    ...doubts,
    ...figures,
    ...choiceMentions,
    ...figureMentions,
  ])
  tokens.forEach(({ kind, text }, at) => {
    if (kind !== 'word' || !HAS_DIGIT.test(text) || read[at]) return
    const size = METRIC_SIZE.test(text)
    if (!size && lexicon.speller.known.has(text)) return
    const why = size
      ? 'a thread needs its pitch too: M12x1.75'
      : 'not used: no fact is read from it'
    doubts.push({ from: at, to: at + 1, why })
  })
}
