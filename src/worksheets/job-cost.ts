import { type CostItem, type JobCost, jobCost } from '../mechanics/job-cost.ts'
import { InputError } from './input.ts'
import { type Item, type JobCostInputs, jobCostFields } from './job-cost-fields.ts'
import { weigh } from './job-cost-stake.ts'
import type { Amount } from './money.ts'
import { type MoneyPrint, printMoneyIn } from './money-print.ts'
import type { BarsPicture } from './picture.ts'
import type { Print } from './print.ts'
import {
  type BuildSource,
  fromMemory,
  geometry,
  present,
  published,
  type Result,
  type Step,
  type Worked,
  worksheet,
} from './worksheet.ts'

/** A job's price with its spread, against what is at stake. */
export const jobCostSheet = worksheet({
  name: 'job-cost',
  title: 'Price of the job',
  summary:
    'Low, likely and high of every line, their sum with its spread, and the chance it pays at.',
  fields: jobCostFields,
  groups: [
    { title: 'Lines', fields: ['items', 'taxRate'] },
    {
      title: 'What is at stake',
      fields: ['invested', 'salvage', 'besides', 'instead', 'protection', 'chance'],
    },
    { title: 'Prices together', fields: ['correlation'], folded: true },
  ],
  example: {
    items: [
      { label: 'Steel caps', likely: '380 USD', low: '300 USD', high: '520 USD' },
      { label: 'Main studs', likely: '240 USD', low: '180 USD', high: '300 USD' },
      { label: 'Line bore', likely: '450 USD', low: '350 USD', high: '700 USD', taxable: 'no' },
      { label: 'Line hone', likely: '250 USD', low: '200 USD', high: '350 USD', taxable: 'no' },
    ],
    taxRate: '8 %',
    invested: '9500 USD',
    salvage: '25 %',
  },
  names: { 'net.low': 'items', extraCost: 'instead', atStake: 'invested' },
  work,
  fromBuild,
})

function work(input: JobCostInputs, print: Print): Worked {
  const currency = oneCurrency(input)
  const money = printMoneyIn(currency)
  const { taxRate, correlation } = input
  const items = input.items.map(itemOf)
  const cost = jobCost({ items, ...present({ taxRate, correlation }) })
  const worth = weigh(input, cost, money, print)
  return {
    results: [...costResults(cost, money), ...worth.results],
    steps: [...costSteps(input, items, cost, money, print), ...worth.steps],
    notes: [
      'A quotation comes before any of these figures.',
      ...(worth.results.length > 0
        ? [
            'The break-even chance is a line to hold your own judgement against. It says nothing about how likely a failure is.',
          ]
        : []),
    ],
    picture: picture(input, cost, money),
  }
}

/** The one currency of all amounts. */
function oneCurrency(input: JobCostInputs): string {
  const currency = input.items[0]?.likely.currency ?? 'USD'
  const { invested, besides, instead } = input
  const named: [string, Amount | undefined][] = [
    ...input.items.flatMap(({ low, likely, high }, index): [string, Amount | undefined][] => [
      [`items.${index}.likely`, likely],
      [`items.${index}.low`, low],
      [`items.${index}.high`, high],
    ]),
    ['invested', invested],
    ['besides', besides],
    ['instead', instead],
  ]
  const other = named.find(([, amount]) => amount && amount.currency !== currency)
  if (other) throw new InputError(other[0], `give all amounts in ${currency}`, other[1]?.currency)
  return currency
}

function itemOf({ low, likely, high, quantity, taxable }: Item): CostItem {
  return {
    low: low?.value ?? likely.value,
    likely: likely.value,
    high: high?.value ?? likely.value,
    taxable: taxable !== 'no',
    ...present({ quantity }),
  }
}

function costResults({ gross, tax, items }: JobCost, money: MoneyPrint): Result[] {
  return [
    money.result('likely', 'Likely, tax included', gross.likely),
    money.result('low', 'Low', gross.low),
    money.result('high', 'High', gross.high),
    money.result('mean', 'Mean', gross.mean),
    money.result('deviation', 'Standard deviation', gross.deviation),
    money.result('p10', 'Not exceeded in 1 case of 10', gross.p10),
    money.result('p50', 'Not exceeded in 5 cases of 10', gross.p50),
    money.result('p90', 'Not exceeded in 9 cases of 10', gross.p90),
    money.result('tax', 'Tax in it, likely', tax.likely),
    ...items.map((item, index) =>
      money.result(`item${index + 1}Mean`, `Mean of line ${index + 1}`, item.mean),
    ),
  ]
}

function costSteps(
  input: JobCostInputs,
  items: readonly CostItem[],
  cost: JobCost,
  money: MoneyPrint,
  print: Print,
): Step[] {
  const means = cost.items.map(({ mean }) => money.text(mean))
  const first = items[0]
  return [
    {
      title: 'Mean of a line, such as the first',
      formula: 'mean = (low + 4 likely + high) / 6, times how many, with tax',
      withNumbers: `mean = (${money.text(first?.low ?? 0)} + 4 × ${money.text(first?.likely ?? 0)} + ${money.text(first?.high ?? 0)}) / 6 × ${print.number(first?.quantity ?? 1)} × (1 + ${print.figure(first?.taxable ? (input.taxRate ?? 0) : 0, 'share')})`,
      result: means[0] ?? '',
      source: published(
        'Malcolm, Roseboom, Clark & Fazar, Operations Research 7 (1959) 646–669 (PERT)',
      ),
    },
    {
      title: 'Sum and its spread',
      formula: 'mean = Σ means; σ² = Σ σ² + ρ (cross terms); σ of a line by its beta distribution',
      withNumbers: `${means.join(' + ')}; ρ = ${print.number(input.correlation ?? 0)}`,
      result: `mean ${money.text(cost.gross.mean)}, σ ${money.text(cost.gross.deviation)}`,
      source: fromMemory('Vose, Risk Analysis, 3rd ed. (2008): sums of cost items'),
    },
    {
      title: 'Nine cases of ten',
      formula: 'beta between low and high with that mean and σ, at 0.1, 0.5 and 0.9',
      withNumbers: `between ${money.text(cost.gross.low)} and ${money.text(cost.gross.high)}`,
      result: `${money.text(cost.gross.p10)} to ${money.text(cost.gross.p90)}`,
      source: geometry('Moment match; exact for one line'),
    },
  ]
}

function picture(input: JobCostInputs, cost: JobCost, money: MoneyPrint): BarsPicture {
  const bars = [
    ...cost.items.map((item, index) => ({
      label: input.items[index]?.label ?? '',
      value: item.likely,
      low: item.low,
      high: item.high,
      text: money.text(item.likely),
    })),
    {
      label: 'all, with tax',
      value: cost.gross.likely,
      low: cost.gross.low,
      high: cost.gross.high,
      text: money.text(cost.gross.likely),
    },
  ]
  return {
    kind: 'bars',
    title: 'Lines of the price and their sum',
    text: `In all ${money.text(cost.gross.likely)} is likely, ${money.text(cost.gross.low)} to ${money.text(cost.gross.high)}.`,
    caption: 'Each bar is the likely price with tax, its whisker low to high.',
    bars,
    marks: [],
    table: {
      caption: 'Prices with tax',
      head: ['Line', 'Low', 'Likely', 'High', 'Mean'],
      rows: [
        ...cost.items.map((item, index) => [
          input.items[index]?.label ?? '',
          ...[item.low, item.likely, item.high, item.mean].map(money.text),
        ]),
        [
          'All',
          ...[cost.gross.low, cost.gross.likely, cost.gross.high, cost.gross.mean].map(money.text),
        ],
      ],
    },
  }
}

function fromBuild({ assessment }: BuildSource): Record<string, unknown> {
  const { cost } = assessment
  const of = (value: number) => ({ value: Math.round(value * 100) / 100, currency: cost.currency })
  const items = cost.items.slice(0, 12).map(({ label, low, likely, high }) => ({
    label,
    likely: of(likely),
    low: of(low),
    high: of(high),
  }))
  // Where nothing is at stake there is no chance to weigh; the example's stake is nobody's.
  const invested = cost.stake > 0 ? of(cost.stake) : undefined
  const lines = items.length > 0 ? { items } : jobCostSheet.example
  return present({ ...lines, invested })
}
