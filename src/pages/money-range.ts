import { printMoney, printNumber } from '../../shared/print.ts'

/**
 * Both ends of a spread of money, such as "1,850 to 2,130 USD"; a spread of
 * nothing is one amount. An end is sampled, so that single units would say more
 * than is known: thousands are rounded to tens.
 */
export function moneyRange(
  { low, high }: { readonly low: number; readonly high: number },
  currency: string,
): string {
  if (rounded(low) === rounded(high)) return printMoney(rounded(low), currency)
  return `${printNumber(rounded(low), 0)} to ${printMoney(rounded(high), currency)}`
}

function rounded(amount: number): number {
  const step = Math.abs(amount) >= 1000 ? 10 : 1
  return Math.round(amount / step) * step
}
