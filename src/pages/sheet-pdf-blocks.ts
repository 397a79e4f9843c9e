import type { Block, Pair, SheetTable, Tick } from '../shop-sheet/blocks.ts'
import { artifact, heightOf, type Pen, put, roomFor, rule, write } from './pdf-pen.ts'
import { pdfCapMap } from './sheet-pdf-cap-map.ts'

const BOX = 12
const INDENT = 24
const NOTE = { size: 8.5, grey: true } as const

/** Draw one block of the sheet below what is there. */
export function pdfBlock(pen: Pen, block: Block): void {
  switch (block.kind) {
    case 'text':
      text(pen, block.text, block.tone)
      break
    case 'ticks':
      for (const [place, item] of block.items.entries()) {
        tick(pen, item, block.numbered ? `${place + 1}. ` : '')
      }
      pen.y += 4
      break
    case 'pairs':
      for (const row of block.rows) pair(pen, row)
      pen.y += 6
      break
    case 'table':
      table(pen, block.table)
      break
    case 'cap-map':
      pdfCapMap(pen, block.map)
      break
    case 'sign-off':
      // Names stand together, so that one page can be copied for both sides.
      roomFor(pen, 66 * block.lines.length)
      for (const line of block.lines) signLine(pen, line)
  }
}

function text(pen: Pen, words: string, tone: 'note' | 'caution' | undefined): void {
  if (tone !== 'caution') {
    write(pen, 'P', words, tone === 'note' ? NOTE : {}, 6)
    return
  }
  const style = { x: pen.left + 10, width: pen.width - 10 }
  const height = heightOf(pen, words, style)
  roomFor(pen, height)
  const { left, y } = pen
  artifact(pen, (doc) => doc.rect(left, y, 4, height).fill('#000'))
  write(pen, 'P', words, style, 6)
}

/** A box to tick, the words, a smaller line of why, and a line to write on where one is wanted. */
function tick(pen: Pen, { text: words, note, fill }: Tick, number: string): void {
  const style = { x: pen.left + INDENT, width: pen.width - INDENT, face: 'strong' as const }
  const small = { ...style, ...NOTE, face: 'serif' as const }
  const height =
    heightOf(pen, number + words, style) +
    (note === undefined ? 0 : heightOf(pen, note, small)) +
    (fill === undefined ? 0 : 20)
  roomFor(pen, height + 4)
  const { left, y } = pen
  artifact(pen, (doc) =>
    doc
      .lineWidth(1)
      .strokeColor('#000')
      .rect(left, y + 1, BOX, BOX)
      .stroke(),
  )
  write(pen, 'LI', number + words, note === undefined ? { ...style, face: 'serif' } : style, 1)
  if (note !== undefined) write(pen, 'P', note, small, 1)
  if (fill !== undefined) {
    pen.y += 17
    rule(pen, pen.left + INDENT, pen.y, pen.width - INDENT)
  }
  pen.y += 6
}

/** Label on the left; on the right the value, or a line to write on with its unit behind it. */
function pair(pen: Pen, { label, value, unit = '', note }: Pair): void {
  const split = 0.4 * pen.width
  const right = { x: pen.left + split, width: pen.width - split }
  const own = { width: split - 10 }
  const said = { ...right, face: 'mono' as const }
  const small = { ...right, ...NOTE }
  const valueHeight = value === null ? 16 : heightOf(pen, value, said)
  const noteHeight = note === undefined ? 0 : heightOf(pen, note, small)
  const height = Math.max(heightOf(pen, label, own), valueHeight + noteHeight) + 5
  roomFor(pen, height)
  const top = pen.y
  put(pen, 'P', label, own)
  if (value === null) {
    const line = Math.min(right.width, 200)
    rule(pen, right.x, top + 13, line)
    if (unit !== '') put(pen, 'P', unit, { ...said, x: right.x + line + 6, width: 40 })
  } else put(pen, 'P', value, said)
  pen.y = top + valueHeight
  if (note !== undefined) put(pen, 'P', note, small)
  pen.y = top + height
  const { left, width, y } = pen
  artifact(pen, (doc) =>
    doc
      .lineWidth(0.3)
      .strokeColor('#888')
      .moveTo(left, y - 2)
      .lineTo(left + width, y - 2)
      .stroke(),
  )
}

function signLine(pen: Pen, words: string): void {
  roomFor(pen, 44)
  write(pen, 'LI', words, {}, 20)
  const name = 0.62 * pen.width
  rule(pen, pen.left, pen.y, name)
  rule(pen, pen.left + name + 12, pen.y, pen.width - name - 12)
  pen.y += 1
  put(pen, 'P', 'Name', NOTE)
  put(pen, 'P', 'Date', { ...NOTE, x: pen.left + name + 12 })
  pen.y += 18
}

function table(pen: Pen, { caption, head, rows, numbers }: SheetTable): void {
  const widths = columnWidths(pen, head.length, numbers === true)
  const heightOfRow = (cells: readonly (string | null)[]) =>
    cells.includes(null) ? 22 : rowHeight(pen, cells, widths)
  roomFor(pen, 20 + rowHeight(pen, head, widths, true) + 2 * 22)
  write(pen, 'Caption', caption, { face: 'strong' }, 3)
  row(pen, head, widths, rowHeight(pen, head, widths, true), numbers === true, true)
  for (const cells of rows) {
    const height = heightOfRow(cells)
    if (pen.y + height > pen.bottom) {
      roomFor(pen, height + pen.bottom)
      row(pen, head, widths, rowHeight(pen, head, widths, true), numbers === true, true)
    }
    row(pen, cells, widths, height, numbers === true, false)
  }
  pen.y += 8
}

const CELL = { size: 8.5 } as const

function columnWidths({ width }: Pen, count: number, isBill: boolean): number[] {
  if (isBill) return [0.36, 0.16, 0.1, 0.1, 0.1, 0.18].map((share) => share * width)
  const first = 36
  return [first, ...Array.from({ length: count - 1 }, () => (width - first) / (count - 1))]
}

/** The face of a cell: heads and the first of each row, which names it, stand out. */
function faceOf(at: number, isHead: boolean): 'strong' | 'serif' {
  return isHead || at === 0 ? 'strong' : 'serif'
}

function rowHeight(
  pen: Pen,
  cells: readonly (string | null)[],
  widths: readonly number[],
  isHead = false,
): number {
  // Measured in the face it is drawn in: a strong one runs wider and may take another line.
  const heights = cells.map((cell, at) =>
    heightOf(pen, cell ?? '', {
      ...CELL,
      face: faceOf(at, isHead),
      width: (widths[at] ?? 0) - 6,
    }),
  )
  return Math.max(...heights) + 5
}

function row(
  pen: Pen,
  cells: readonly (string | null)[],
  widths: readonly number[],
  height: number,
  isBill: boolean,
  isHead: boolean,
): void {
  let x = pen.left
  const top = pen.y
  for (const [at, cell] of cells.entries()) {
    const width = widths[at] ?? 0
    const place = x
    artifact(pen, (doc) =>
      doc.lineWidth(0.5).strokeColor('#000').rect(place, top, width, height).stroke(),
    )
    if (cell !== null && cell !== '') {
      pen.y = top + 2
      const align = isBill && at > 1 && at < 5 ? 'right' : 'left'
      const face = faceOf(at, isHead)
      put(pen, isHead ? 'TH' : 'TD', cell, { ...CELL, face, x: x + 3, width: width - 6, align })
    }
    x += width
  }
  pen.y = top + height
}
