import { choice, optional, pure, quantity, text, type Values } from './fields.ts'
import { money } from './money.ts'
import { list } from './read-record.ts'

const itemFields = {
  label: text('What'),
  likely: money('Likely price of one'),
  low: optional(money('Low'), 'Left out: as likely.'),
  high: optional(money('High'), 'Left out: as likely.'),
  quantity: optional(pure('How many'), 'Left out: 1.'),
  taxable: optional(choice('Taxed', { yes: 'Yes', no: 'No' }), 'Left out: yes.'),
}

export const jobCostFields = {
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

export type JobCostInputs = Values<typeof jobCostFields>

export type Item = JobCostInputs['items'][number]
