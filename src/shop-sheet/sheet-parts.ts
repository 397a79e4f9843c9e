import { printMoney, printNumber } from '../../shared/print.ts'
import type { Block, SheetSection } from './blocks.ts'
import { convertedWords } from './converted-words.ts'
import type { PartRule } from './part-rules.ts'
import { fitsRoute, type SheetCase } from './sheet-case.ts'
import { shortSource } from './source-words.ts'

/** Parts and work with quantities and prices, then what is often forgotten. */
export function partsAndWork(sheet: SheetCase): SheetSection {
  const { assessment, rules, route } = sheet
  const { cost } = assessment
  const amount = (value: number) => printNumber(Math.round(value), 0)
  const forgotten = rules.often.parts.filter(({ when }) => fitsRoute(when, route))
  const bill = cost.items.map((item) => [
    item.label,
    quantityOf(item.id, sheet),
    amount(item.low),
    amount(item.likely),
    amount(item.high),
    item.state === 'said' ? 'As you said' : shortSource(item.source),
  ])
  const blocks: Block[] = [
    { kind: 'text', text: priceSentence(sheet, forgotten) },
    ...(bill.length === 0
      ? [{ kind: 'text' as const, text: 'The route itself needs no parts and no machine work.' }]
      : [{ kind: 'table' as const, table: priced(`The route’s bill, ${cost.currency}`, bill) }]),
    {
      kind: 'table',
      table: priced(
        `Often forgotten, ${cost.currency}`,
        forgotten.map((part) => forgottenRow(part, sheet)),
      ),
    },
    {
      kind: 'ticks',
      items: forgotten.map(({ title, because }) => ({ text: title, note: because })),
    },
  ]
  return { id: 'parts', title: 'Parts and work', blocks }
}

function priced(caption: string, rows: readonly (readonly string[])[]) {
  return {
    caption,
    head: ['Item', 'How many', 'Low', 'Likely', 'High', 'Where from'],
    rows,
    numbers: true,
  }
}

function forgottenRow(part: PartRule, sheet: SheetCase): string[] {
  const money = (value: number | undefined) =>
    value === undefined ? '–' : printNumber(Math.round(value * sheet.rate), 0)
  return [
    part.title,
    PER[part.per],
    money(part.price?.low),
    money(part.price?.likely),
    money(part.price?.high),
    part.kind === 'check' ? 'A check, no price' : shortSource(part.source),
  ]
}

const PER: Readonly<Record<PartRule['per'], string>> = { engine: '1', set: '1 set', pair: '1 pair' }

/** Caps and main fasteners are counted from the layout, where it was said; the rest goes once. */
function quantityOf(id: string, { engine, assessment }: SheetCase): string {
  const isSaid = assessment.build.layout?.state !== 'assumed'
  if (!isSaid || engine.splitCase)
    return id.endsWith('-set') || id.startsWith('main-studs') ? '1 set' : '1'
  if (id === 'main-studs') return `1 set: ${2 * engine.mains}`
  if (id === 'main-studs-four') return `1 set: ${4 * engine.mains}`
  if (id === 'main-studs-long') return `1 set: count by its supplier`
  if (id === 'steel-cap-set' || id === 'four-bolt-cap-set') return `1 set: ${engine.mains}`
  if (id === 'line-bore' || id.startsWith('line-hone') || id === 'bore-check') {
    return `1 (${engine.mains} mains)`
  }
  return '1'
}

function priceSentence(sheet: SheetCase, forgotten: readonly PartRule[]): string {
  const { cost } = sheet.assessment
  const sum = (end: 'low' | 'likely' | 'high') =>
    forgotten.reduce((all, { price }) => all + (price?.[end] ?? 0), 0) * sheet.rate
  const show = (value: number) => printMoney(value, cost.currency)
  const tax = cost.beforeTax ? ', before tax' : ''
  return `The route’s own bill: likely ${show(cost.likely)}, from ${show(cost.low)} to ${show(cost.high)}${tax}. What is often forgotten may add ${show(sum('low'))} to ${show(sum('high'))}, likely ${show(sum('likely'))}. ${sheet.rules.sheet.parts.quoted} ${convertedWords(cost)}`.trimEnd()
}
