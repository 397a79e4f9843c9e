import type { Uncertainty } from '../../shared/assessment.ts'
import { fact, isFactKey } from '../../shared/fact-keys.ts'
import type { RouteTrial } from '../facts/route-facts.ts'
import { type RankedInput, rankedInput, varianceShares } from '../mechanics/variance-share.ts'
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
  const drawn = samples()
  const names = [...drawn.keys()]
  const inputs = [...drawn.values()].map(rankedDraws)
  const { shares, explained } = varianceShares(inputs, result.cases[margin].slice(1))
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

const ranked = new WeakMap<Float64Array, RankedInput>()

/** Drawn values without the likely one, ranked; kept, since most are those of every build. */
function rankedDraws(values: Float64Array): RankedInput {
  let found = ranked.get(values)
  if (!found) {
    found = rankedInput(values.subarray(1))
    ranked.set(values, found)
  }
  return found
}

function labelOf(id: string, { scatter }: Rulebook): string {
  if (isFactKey(id)) return fact(id).short
  return scatter.find((item) => item.id === id)?.short ?? id
}
