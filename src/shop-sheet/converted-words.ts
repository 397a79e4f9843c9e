import type { CostItem } from '../../shared/assessment.ts'
import { printNumber } from '../../shared/print.ts'
import { shortSource } from './source-words.ts'

/** At which rate a shop's own prices were put into the bill's currency; empty where none were. */
export function convertedWords({
  items,
  currency,
}: {
  readonly items: readonly CostItem[]
  readonly currency: string
}): string {
  const converted = items.find((item) => item.converted !== undefined)?.converted
  if (!converted) return ''
  const { from, rate, source } = converted
  const decimals = Math.max(0, 2 - Math.floor(Math.log10(rate)))
  return `The shop’s list is in ${from}; 1 ${from} is taken as ${printNumber(rate, decimals)} ${currency} (rate: ${shortSource(source)}). The shop’s own bill will be in ${from}.`
}
