import { type FactKey, fact } from '../../shared/fact-keys.ts'
import type { Findings } from './findings.ts'
import type { ChoiceMeaning } from './lexicon.ts'
import type { Parts } from './message-parts.ts'

/**
 * Why a message that says something of the engine gives no fact at all: it only denies one
 * ("I don't want to fit studs"), or speaks of a part that none is of ("the crank is cast").
 */
export function doubtNothingRead(parts: Parts, { readings, doubts }: Findings): void {
  const { choiceMentions, input } = parts
  if (readings.length > 0 || doubts.length > 0 || parts.requests.length > 0) return
  for (const mention of choiceMentions) {
    const { from, to, meanings } = mention
    const key = meanings.map(factOf).find((one) => one !== undefined)
    if (key && input.negations.denies(mention)) {
      const why = `says only what is not there or not wanted; for ${fact(key).short}, say what there is`
      doubts.push({ from, to, why })
    } else if (meanings.some((m) => m.kind === 'noun' && m.noun === 'other')) {
      doubts.push({ from, to, why: OTHER })
    }
  }
}

const OTHER = 'about another part: only block, main caps and their fasteners count here'

function factOf(meaning: ChoiceMeaning): FactKey | undefined {
  if (meaning.kind === 'choice') return meaning.fact
  const fasteners = meaning.kind === 'noun' && ['bolts', 'studs'].includes(meaning.noun)
  return fasteners ? 'fastenerKind' : undefined
}
