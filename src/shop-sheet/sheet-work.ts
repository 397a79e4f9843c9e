import { printFigure } from '../../shared/print.ts'
import { fromSi, preferredUnit, toSi } from '../../shared/units.ts'
import type { Block, SheetSection, SheetTable } from './blocks.ts'
import { TABLES } from './fields.ts'
import type { AskRule } from './part-rules.ts'
import { withRouteWork } from './route-steps.ts'
import { fitsRoute, type SheetCase } from './sheet-case.ts'

/** What to do in order, each step to be ticked off. */
export function orderOfWork(sheet: SheetCase): SheetSection {
  return {
    id: 'order',
    title: 'What to do, in order',
    blocks: [
      {
        kind: 'ticks',
        numbered: true,
        items: [
          ...withRouteWork(sheet.steps, sheet.route, sheet.rules.sheet.order).map(
            ({ id, title, at, note }) => ({
              text: `${title}${id === 'set-the-limits' ? loweredTo(sheet) : ''} (${at === 'shop' ? 'at the shop' : 'at home'})`,
              note,
            }),
          ),
        ],
      },
    ],
  }
}

/** The figures of a lower target; empty where the call is another. */
function loweredTo({ route, units }: SheetCase): string {
  if (!route.lowered) return ''
  const { boost, rpm } = route.lowered
  const unit = preferredUnit(boost.unit, units)
  const pressure = printFigure(fromSi(toSi(boost.value, boost.unit), unit), unit)
  return `: at most ${pressure} of boost and ${printFigure(rpm, 'rpm', 0)}`
}

/** What to measure before anything is cut and after all is done, with a table to write into. */
export function measuring(sheet: SheetCase): SheetSection {
  const { before, after } = sheet.rules.often
  const fitting = (rules: readonly AskRule[]) =>
    rules.filter(({ when }) => fitsRoute(when, sheet.route)).map(({ text }) => ({ text }))
  const isWorkedOn = sheet.route.work.length + sheet.route.parts.length > 0
  // Where nothing changes, the bores are the same before and after: once is enough.
  const once = fitting(before.filter(({ id }) => id !== 'bores-before'))
  const blocks: Block[] = isWorkedOn
    ? [
        { kind: 'text', text: 'Before anything is cut:' },
        { kind: 'ticks', items: fitting(before) },
        { kind: 'text', text: 'When the work is done:' },
        { kind: 'ticks', items: fitting(after) },
        { kind: 'table', table: housingTable(sheet, ' before the work') },
        { kind: 'table', table: housingTable(sheet, ' after the work') },
      ]
    : [
        { kind: 'text', text: 'While the engine is apart:' },
        { kind: 'ticks', items: [...once, ...fitting(after)] },
        { kind: 'table', table: housingTable(sheet, '') },
      ]
  return {
    id: 'measure',
    title: 'What to measure',
    blocks: [
      ...blocks,
      {
        kind: 'text',
        tone: 'note',
        text: sheet.rules.sheet.measure.note,
      },
    ],
  }
}

function housingTable({ engine, units }: SheetCase, when: string): SheetTable {
  const columns = TABLES.find(({ id }) => id === 'housing')?.columns ?? []
  return {
    caption: `Housing bores${when}, ${units === 'us' ? 'in' : 'mm'}`,
    head: ['Main', ...columns.map(({ label }) => label)],
    rows: Array.from({ length: engine.mains }, (_, place) => [
      `${place + 1}`,
      ...columns.map(() => null),
    ]),
  }
}

/** Questions that tell a shop that can from one that cannot. */
export function questions({ rules, route }: SheetCase): SheetSection {
  return {
    id: 'questions',
    title: 'Ask before you choose a shop',
    blocks: [
      {
        kind: 'ticks',
        items: rules.often.questions
          .filter(({ when }) => fitsRoute(when, route))
          .map(({ text }) => ({ text, fill: '' })),
      },
    ],
  }
}

/** Names under what was done. */
export function signOff({ rules }: SheetCase): SheetSection {
  return {
    id: 'sign-off',
    title: 'Signed off',
    blocks: [{ kind: 'sign-off', lines: rules.sheet.signOff }],
  }
}
