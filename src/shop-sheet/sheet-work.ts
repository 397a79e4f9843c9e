import type { SheetSection, SheetTable } from './blocks.ts'
import { TABLES } from './fields.ts'
import { fitsRoute, type SheetCase } from './sheet-case.ts'
import type { AskRule } from './shop-rules.ts'

/** What to do in order, each step to be ticked off. */
export function orderOfWork({ steps, route, assessment }: SheetCase): SheetSection {
  const label = (id: string) =>
    assessment.cost.items.find((item) => item.id === id)?.label ?? id.replaceAll('-', ' ')
  const told = new Set(steps.map(({ id }) => id))
  const rest = route.work.filter((id) => !told.has(id)).map(label)
  return {
    id: 'order',
    title: 'What to do, in order',
    blocks: [
      {
        kind: 'ticks',
        numbered: true,
        items: steps.map(({ title, at, note }) => ({
          text: `${title} (${at === 'shop' ? 'at the shop' : 'at home'})`,
          note,
        })),
      },
      ...(rest.length === 0
        ? []
        : [
            {
              kind: 'ticks' as const,
              items: rest.map((text) => ({ text, note: 'At the shop, in its place among these' })),
            },
          ]),
    ],
  }
}

/** What to measure before anything is cut and after all is done, with a table to write into. */
export function measuring(sheet: SheetCase): SheetSection {
  const { before, after } = sheet.rules.often
  const fitting = (rules: readonly AskRule[]) =>
    rules.filter(({ when }) => fitsRoute(when, sheet.route)).map(({ text }) => ({ text }))
  return {
    id: 'measure',
    title: 'What to measure',
    blocks: [
      { kind: 'text', text: 'Before anything is cut:' },
      { kind: 'ticks', items: fitting(before) },
      { kind: 'text', text: 'When the work is done:' },
      { kind: 'ticks', items: fitting(after) },
      { kind: 'table', table: housingTable(sheet, 'before') },
      { kind: 'table', table: housingTable(sheet, 'after') },
      {
        kind: 'text',
        tone: 'note',
        text: 'The check-in page takes these readings, works out what follows, and judges each main.',
      },
    ],
  }
}

function housingTable({ engine, units }: SheetCase, when: 'before' | 'after'): SheetTable {
  const columns = TABLES.find(({ id }) => id === 'housing')?.columns ?? []
  return {
    caption: `Housing bores ${when} the work, ${units === 'us' ? 'in' : 'mm'}`,
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
export function signOff(): SheetSection {
  return {
    id: 'sign-off',
    title: 'Signed off',
    blocks: [
      {
        kind: 'sign-off',
        lines: [
          'Handed over: block, caps in order, fasteners, lubricant, this sheet',
          'Machined: sizes written above are as measured',
          'Measured by a second person, with another gauge',
          'Taken back: numbers and arrows seen, galleries clean',
        ],
      },
    ],
  }
}
