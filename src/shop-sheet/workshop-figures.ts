import { fromSi } from '../../shared/units.ts'

/** The system that a person reads figures in. */
export type Units = 'us' | 'metric'

/**
 * A length as it is read in a workshop: four decimals of an inch or three of a millimetre, noughts
 * kept; a fifth decimal of an inch, or a fourth of a millimetre, where the figure is so small that
 * it would be lost.
 *
 * @param finer - so many decimals more than is usual, noughts kept
 */
export function lengthText(metres: number, units: Units, finer = 0): string {
  const symbol = units === 'us' ? 'in' : 'mm'
  const value = fromSi(metres, symbol)
  const usual = (units === 'us' ? 4 : 3) + finer
  const fine = value.toFixed(usual + 1)
  const isTiny = finer === 0 && Math.abs(value) < (units === 'us' ? 0.001 : 0.01)
  const text = isTiny && !fine.endsWith('0') ? fine : value.toFixed(usual)
  const isNought = Number(text) === 0
  return `${text.replace('-', isNought ? '' : '−')}\u00a0${symbol}`
}

/** The same without its unit, for a table that names it once. */
export function bareLength(metres: number, units: Units): string {
  return lengthText(metres, units).split('\u00a0')[0] as string
}

/** A pure number with so many decimals, its minus a true one. */
export function plainText(value: number, decimals: number): string {
  const text = value.toFixed(decimals)
  return Number(text) === 0 ? text.replace('-', '') : text.replace('-', '−')
}

/** "0.0010 to 0.0020 in", "at most 0.0005 in", "at least 0.0010 in". */
export function rangeText(
  { low, high }: { low: number; high: number },
  show: (value: number) => string,
): string {
  if (Number.isFinite(low) && Number.isFinite(high)) {
    const [from = '', unit] = show(low).split('\u00a0')
    const to = show(high)
    return unit !== undefined && to.endsWith(`\u00a0${unit}`)
      ? `${from} to ${to}`
      : `${show(low)} to ${to}`
  }
  return Number.isFinite(high) ? `at most ${show(high)}` : `at least ${show(low)}`
}
