import { printNumber } from '../../shared/print.ts'
import { type CostItem, type JobCost, jobCost } from '../mechanics/job-cost.ts'
import { breakEvenChance, costLoss, stake } from '../mechanics/stake.ts'
import { choice, list, optional, pure, quantity, text, type Values } from './fields.ts'
import { InputError } from './input.ts'
import { type Amount, money } from './money.ts'
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

const itemFields = {
  label: text('What'),
  likely: money('Likely price of one'),
  low: optional(money('Low'), 'Left out: as likely.'),
  high: optional(money('High'), 'Left out: as likely.'),
  quantity: optional(pure('How many'), 'Left out: 1.'),
  taxable: optional(choice('Taxed', { yes: 'Yes', no: 'No' }), 'Left out: yes.'),
}

const jobCostFields = {
  items: list('Lines of the price', itemFields, {
    least: 1,
    most: 12,
    row: 'Line',
    open: ['label', 'likely', 'low', 'high'],
  }),
  taxRate: optional(quantity('share', 'Tax'), 'Left out: none.'),
  correlation: optional(
    pure('How far prices rise together', '0 each on its own, 1 all dear or all cheap at once.'),
    'Left out: 0.',
  ),
  invested: optional(money('Money in the engine', 'What would be lost with it.')),
  salvage: optional(quantity('share', 'Share that could still be used or sold'), 'Left out: none.'),
  besides: optional(money('Lost besides', 'Towing, clean-up, a missed season.'), 'Left out: none.'),
  instead: optional(money('Cost of the cheaper course'), 'Left out: 0, doing nothing.'),
  protection: optional(
    quantity('share', 'Share of failures that this work prevents'),
    'Left out: all.',
  ),
  chance: optional(
    quantity('share', 'Your own estimate of the chance that it lets go without the work'),
  ),
}
type JobCostInputs = Values<typeof jobCostFields>
type Item = JobCostInputs['items'][number]

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
  const money = printer(currency)
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

interface MoneyPrint {
  readonly text: (amount: number) => string
  readonly result: (id: string, label: string, amount: number) => Result
  readonly currency: string
}

function printer(currency: string): MoneyPrint {
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

/** Stake, break-even chance, and the cost–loss rule, as far as their figures are given. */
function weigh(
  { invested, salvage, besides, instead, protection, chance }: JobCostInputs,
  { gross }: JobCost,
  money: MoneyPrint,
  print: Print,
): { results: Result[]; steps: Step[] } {
  if (invested === undefined) return { results: [], steps: [] }
  const amount = { invested: invested.value, ...present({ salvage, besides: besides?.value }) }
  const atStake = stake(amount)
  const cheaper = instead?.value ?? 0
  const extraCost = gross.likely - cheaper
  if (extraCost < 0) throw new InputError('instead', 'give less than the likely price of the job')
  const even = breakEvenChance(extraCost, atStake, protection)
  const steps: Step[] = [
    {
      title: 'What is at stake',
      formula: 'stake = invested (1 − salvage) + besides',
      withNumbers: `stake = ${money.text(invested.value)} × (1 − ${print.figure(salvage ?? 0, 'share')}) + ${money.text(besides?.value ?? 0)}`,
      result: money.text(atStake),
      source: geometry('Definition'),
    },
    {
      title: 'Break-even chance',
      formula: 'chance = extra cost / (stake × protection)',
      withNumbers: `chance = (${money.text(gross.likely)} − ${money.text(cheaper)}) / (${money.text(atStake)} × ${print.figure(protection ?? 1, 'share')})`,
      result: print.figure(even, 'share'),
      source: fromMemory('Murphy, Monthly Weather Review 113 (1985) 362–369: cost–loss ratio'),
    },
  ]
  const results = [
    money.result('stake', 'At stake', atStake),
    print.result('breakEvenChance', 'Break-even chance of a failure', even, 'share'),
  ]
  if (chance === undefined) return { results, steps }
  const { leave, protect, saving } = costLoss({
    extraCost,
    atStake,
    chance,
    ...present({ protection }),
  })
  results.push(
    money.result('leave', 'Expected outlay without the work', leave),
    money.result('protect', 'Expected outlay with it', protect),
    money.result('saving', 'The work saves, on your estimate', saving),
  )
  return { results, steps }
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
  if (items.length === 0) return { ...jobCostSheet.example, invested: of(cost.stake) }
  return { items, invested: of(cost.stake) }
}
