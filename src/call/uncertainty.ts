import type { Uncertainty } from '../../shared/assessment.ts'
import { fact, isFactKey } from '../../shared/fact-keys.ts'
import type { RouteTrial } from '../facts/route-facts.ts'
import { varianceShares } from '../mechanics/variance-share.ts'
import type { Rulebook } from '../rulebook/load.ts'
import { MARGIN_NAMES } from './tables.ts'

/** Shares below this are not worth a line. */
const LEAST_SHARE = 0.01

/**
 * What makes the estimate unsure: of everything that was sampled, how much of the
 * spread of the route's weakest margin each accounts for. It costs no further runs.
 */
export function uncertaintyOf({ result, samples }: RouteTrial, rulebook: Rulebook): Uncertainty {
  const margin = result.weakest
  const names = [...samples.of.keys()]
  const rows = samples.count - 1
  const inputs = new Float64Array(rows * names.length)
  names.forEach((name, column) => {
    const values = samples.of.get(name) as Float64Array
    for (let row = 0; row < rows; row++) {
      inputs[row * names.length + column] = values[row + 1] as number
    }
  })
  const { shares, explained } = varianceShares(inputs, result.cases[margin].slice(1), names.length)
  return {
    margin,
    label: MARGIN_NAMES[margin] ?? margin,
    explained: Number(explained.toFixed(3)),
    shares: shares
      .filter(({ share }) => share >= LEAST_SHARE)
      .map(({ input, share }) => {
        const id = names[input] as string
        return { id, label: labelOf(id, rulebook), share: Number(share.toFixed(3)) }
      }),
  }
}

function labelOf(id: string, { scatter }: Rulebook): string {
  if (isFactKey(id)) return fact(id).short
  return scatter.find((item) => item.id === id)?.short ?? id
}
