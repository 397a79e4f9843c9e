import type { JobCost } from '../mechanics/job-cost.ts'
import { breakEvenChance, costLoss, stake } from '../mechanics/stake.ts'
import { InputError } from './input.ts'
import type { JobCostInputs } from './job-cost-fields.ts'
import type { MoneyPrint } from './money-print.ts'
import type { Print } from './print.ts'
import { fromMemory, geometry, present, type Result, type Step } from './worksheet.ts'

/** Stake, break-even chance, and the cost–loss rule, as far as their figures are given. */
export function weigh(
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
  const worked = { likely: gross.likely, cheaper, atStake, even }
  const steps = stakeSteps({ invested, salvage, besides, protection }, worked, money, print)
  const results = [
    money.result('stake', 'At stake', atStake),
    print.result('breakEvenChance', 'Break-even chance of a failure', even, 'share'),
  ]
  if (chance === undefined) return { results, steps }
  const weighed = costLoss({ extraCost, atStake, chance, ...present({ protection }) })
  results.push(
    money.result('leave', 'Expected outlay without the work', weighed.leave),
    money.result('protect', 'Expected outlay with it', weighed.protect),
    money.result('saving', 'The work saves, on your estimate', weighed.saving),
  )
  return { results, steps }
}

function stakeSteps(
  { invested, salvage, besides, protection }: Partial<JobCostInputs>,
  { likely, cheaper, atStake, even }: Record<'likely' | 'cheaper' | 'atStake' | 'even', number>,
  money: MoneyPrint,
  print: Print,
): Step[] {
  return [
    {
      title: 'What is at stake',
      formula: 'stake = invested (1 − salvage) + besides',
      withNumbers: `stake = ${money.text(invested?.value ?? 0)} × (1 − ${print.figure(salvage ?? 0, 'share')}) + ${money.text(besides?.value ?? 0)}`,
      result: money.text(atStake),
      source: geometry('Definition'),
    },
    {
      title: 'Break-even chance',
      formula: 'chance = extra cost / (stake × protection)',
      withNumbers: `chance = (${money.text(likely)} − ${money.text(cheaper)}) / (${money.text(atStake)} × ${print.figure(protection ?? 1, 'share')})`,
      result: print.figure(even, 'share'),
      source: fromMemory('Murphy, Monthly Weather Review 113 (1985) 362–369: cost–loss ratio'),
    },
  ]
}
