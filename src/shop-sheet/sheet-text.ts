import type { Block, Pair, ShopSheet, Tick } from './blocks.ts'

const BLANK = '______'

/**
 * A shop sheet as plain text, for a mail: every section with its heading, one line for each step,
 * figure and question; a blank is a line to write on. Tables of blanks are only named, and the
 * places of the caps are drawn on the sheet alone.
 *
 * @param leftOut - ids of sections that are told elsewhere
 */
export function sheetText({ sections }: ShopSheet, leftOut: readonly string[] = []): string {
  return sections
    .filter(({ id }) => !leftOut.includes(id))
    .map(({ title, blocks }) => [title.toUpperCase(), ...blocks.flatMap(linesOf)].join('\n'))
    .join('\n\n')
}

function linesOf(block: Block): string[] {
  switch (block.kind) {
    case 'text':
      return [block.text]
    case 'ticks':
      return block.items.map((item, at) => tickLine(item, block.numbered ? `${at + 1}.` : '-'))
    case 'pairs':
      return block.rows.map(pairLine)
    case 'table':
      return tableLines(block.table)
    case 'cap-map':
      return []
    case 'sign-off':
      return block.lines.map((line) => `- ${line}: ${BLANK}`)
  }
}

function tickLine({ text, note, fill }: Tick, mark: string): string {
  const more = note === undefined ? '' : `${/[.?!:]$/.test(text) ? '' : '.'} ${note}`
  return `${mark} ${text}${more}${fill === undefined ? '' : ` ${BLANK}`}`
}

function pairLine({ label, value, unit = '', note }: Pair): string {
  const blank = unit === '' ? BLANK : `${BLANK} ${unit}`
  return `- ${label}: ${value ?? blank}${note === undefined ? '' : ` (${note})`}`
}

function tableLines({ caption, head, rows }: Extract<Block, { kind: 'table' }>['table']): string[] {
  if (rows.some((row) => row.includes(null))) return [`${caption}: on the sheet, to be filled in.`]
  const named = rows.map(
    ([name, ...cells]) =>
      `- ${name}: ${cells.map((cell, at) => `${(head[at + 1] ?? '').toLowerCase()} ${cell}`).join(', ')}`,
  )
  return [`${caption}:`, ...named]
}
