import { type Answers, withAnswer } from '../../shared/answers.ts'
import type { Assessment } from '../../shared/assessment.ts'
import { type FactKey, fact } from '../../shared/fact-keys.ts'
import { printAnswer } from '../../shared/print.ts'
import { toSi } from '../../shared/units.ts'
import { plainInMarkdown } from './markdown-text.ts'
import type { Turn } from './turn.ts'

/**
 * A what-if without the upper ends that the build keeps already: "what if I stay under
 * 6,000" supposes nothing where 5,800 is said or assumed. The turn says which those are.
 */
export function withinBounds(turn: Turn, { build }: Pick<Assessment, 'build'>): Turn {
  const { understanding, supposed, state } = turn
  if (!supposed) return turn
  const kept = (understanding?.atMost ?? []).filter((key) => keeps(key, supposed, build))
  if (kept.length === 0) return turn
  const rest = kept.reduce((all, key) => withAnswer(all, key, state.answers[key]), supposed)
  const alreadyWithin = kept.map((key) => {
    const { text = '', state: how } = build[key] ?? {}
    const bound = plainInMarkdown(printAnswer(key, supposed[key] ?? 0))
    const taken = how === 'assumed' ? 'is taken for now' : 'is what it is'
    return `**${fact(key).label}** already stays under ${bound}: ${plainInMarkdown(text)} ${taken}.`
  })
  return { ...turn, supposed: rest, alreadyWithin }
}

function keeps(key: FactKey, supposed: Answers, build: Assessment['build']): boolean {
  const [bound, present] = [supposed[key], build[key]]
  if (bound === undefined || typeof present?.value !== 'number') return false
  const top = typeof bound === 'number' ? bound : typeof bound === 'object' ? bound.value : NaN
  const unit = typeof bound === 'object' && 'unit' in bound ? bound.unit : undefined
  if (typeof bound === 'object' && 'currency' in bound) return false
  if (unit === undefined || present.unit === '') return present.value <= top
  return toSi(present.value, present.unit) <= toSi(top, unit)
}
