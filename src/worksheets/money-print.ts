import { printNumber } from '../../shared/print.ts'
import type { Result } from './worksheet.ts'

/** Prints amounts of one currency. */
export interface MoneyPrint {
  readonly text: (amount: number) => string
  readonly result: (id: string, label: string, amount: number) => Result
  readonly currency: string
}

/** A printer of amounts in one currency: cents below a thousand, none above. */
export function printMoneyIn(currency: string): MoneyPrint {
  const print = (amount: number): string =>
    `${printNumber(amount, Math.abs(amount) < 1000 ? 2 : 0)}\u00a0${currency}`
  return {
    currency,
    text: print,
    result: (id, label, amount) => ({
      id,
      label,
      value: amount,
      unit: currency,
      text: print(amount),
    }),
  }
}
