import { fact, isFactKey } from '../../shared/fact-keys.ts'
import type { Rulebook } from './load.ts'
import type { Basis, Take } from './schema-tables.ts'

/**
 * Assumed figures that a person could not have said, in the usual unit of their fact: outside its
 * range, or not in their order. Each fault names file, entry and what would fit.
 */
export function assumedFaults({ assumptions }: Pick<Rulebook, 'assumptions'>): string[] {
  return Object.entries(assumptions).flatMap(([key, { take }]) => {
    const entry = isFactKey(key) ? fact(key) : undefined
    if (!entry || !('low' in entry)) return []
    return basesOf(take).flatMap((basis) => {
      const figures = figuresOf(basis)
      const [low = 0, value = 0, high = 0] = figures
      const isInOrder = figures.length === 0 || (low <= value && value <= high)
      return [
        ...figures
          .filter((figure) => figure < entry.low || figure > entry.high)
          .map((figure) => `${figure} is not from ${entry.low} to ${entry.high}`),
        ...(isInOrder ? [] : [`${low}, ${value}, ${high}: low ≤ value ≤ high`]),
      ].map((fault) => `assumptions.json: ${key}: take: ${fault}`)
    })
  })
}

function basesOf(take: Take): Basis[] {
  if ('given' in take)
    return [...take.given.map((one) => one.take), take.otherwise].flatMap(basesOf)
  if ('by' in take) return [...Object.values(take.cases), take.otherwise].flatMap(basesOf)
  return [take]
}

/** Low, value and high of a figure that stands by itself; nothing for what is worked out. */
function figuresOf(basis: Basis): number[] {
  if (!('value' in basis) || typeof basis.value !== 'number') return []
  const { low = basis.value, value, high = value } = basis
  return [low, value, high]
}
