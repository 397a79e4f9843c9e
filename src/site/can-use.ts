import { type FactKey, fact } from '../../shared/fact-keys.ts'
import type { Rulebook } from '../rulebook/load.ts'

/** What the guide can use where it could take nothing: the question that is open, and examples. */
export function canUse({ questions }: Rulebook, asking: FactKey | undefined): string {
  const asked = asking && questions.find((one) => one.fact === asking)?.ask
  const open = asking && asked ? `Asked is: ${asked} It takes ${answersOf(asking)}. ` : ''
  return `${open}Of use is what belongs to the block, the main caps, their fasteners, the loads and the money, such as “4.03 bore”, “nodular iron caps” or “what if I ran 9 psi?”.`
}

/** Two or three answers that a question takes, or the units of its figure. */
function answersOf(key: FactKey): string {
  const entry = fact(key)
  switch (entry.kind) {
    case 'choice': {
      const labels = Object.values(entry.choices).slice(0, 3)
      return `an answer such as ${labels.map((label) => `“${label}”`).join(', ')}`
    }
    case 'thread':
      return 'a thread such as “1/2-13” or “M12x1.75”'
    case 'money':
      return 'an amount such as “950 USD”'
    case 'number':
      return 'a figure without a unit'
    default:
      return `a figure in ${entry.units.join(' or ')}`
  }
}
