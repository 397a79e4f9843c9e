import type { ShopSheet } from '../shop-sheet/blocks.ts'
import {
  artifact,
  finish,
  heightOf,
  MILLIMETRE,
  newPen,
  type Paper,
  type Pen,
  type PrintFonts,
  roomFor,
  write,
} from './pdf-pen.ts'
import { pdfBlock } from './sheet-pdf-blocks.ts'
import { qrCells, runs } from './sheet-qr.ts'

export interface SheetPdfView {
  readonly sheet: ShopSheet
  /** Leads back to this case, with its origin. */
  readonly address: string
  readonly hedge: string | undefined
  /** Who comes before the sheet, at the foot of every page. */
  readonly foot: string
  readonly paper: Paper
  /** Date of the rulebook that made it, `2026-01-31`. */
  readonly dated: string
  readonly fonts: PrintFonts
}

const CODE = 42 * MILLIMETRE

/** The shop sheet as a PDF: black on white, tagged, the same bytes for the same case. */
export function sheetPdf(view: SheetPdfView): Promise<Uint8Array<ArrayBuffer>> {
  const { sheet, paper, fonts } = view
  const pen = newPen(fonts, paper, `${sheet.title} · Mainstay`, view.dated)
  head(pen, view)
  for (const { id, title, blocks } of sheet.sections) {
    roomFor(pen, id === 'sign-off' ? 320 : 90)
    pen.y += 6
    heading(pen, title)
    for (const block of blocks) pdfBlock(pen, block)
  }
  foot(pen, view)
  return finish(pen)
}

function head(pen: Pen, { sheet, address, hedge }: SheetPdfView): void {
  const cells = qrCells(address)
  const width = cells ? pen.width - CODE - 12 : pen.width
  const top = pen.y
  write(pen, 'P', 'Mainstay · for the machine shop', { size: 9, grey: true, width }, 2)
  write(pen, 'H1', sheet.title, { face: 'strong', size: 19, width }, 4)
  write(pen, 'P', sheet.sentence, { size: 11, width }, 4)
  if (sheet.nothingToDo !== undefined) write(pen, 'P', sheet.nothingToDo, { size: 10, width }, 4)
  if (hedge !== undefined) write(pen, 'P', hedge, { size: 9, grey: true, width }, 4)
  if (cells) {
    code(pen, cells, top)
    pen.y = Math.max(pen.y, top + CODE + 2)
  }
  link(pen, address)
}

/** The address in full under the head: a code may not scan, and a PDF can be pressed. */
function link(pen: Pen, address: string): void {
  const style = { face: 'mono', size: 6.5 } as const
  const height = heightOf(pen, address, style)
  pen.doc.link(pen.left, pen.y, pen.width, height, address)
  write(pen, 'P', address, style, 6)
}

function code(pen: Pen, cells: readonly (readonly boolean[])[], top: number): void {
  const size = CODE / cells.length
  const left = pen.left + pen.width - CODE
  artifact(pen, (doc) => {
    cells.forEach((row, y) => {
      for (const [x, length] of runs(row)) {
        // A hair more than a cell, so that no viewer leaves a light seam.
        doc.rect(left + x * size, top + y * size, length * size, size + 0.05)
      }
    })
    doc.fill('#000')
  })
}

function heading(pen: Pen, title: string): void {
  const { left, width, y } = pen
  artifact(pen, (doc) => doc.rect(left, y, width, 1.2).fill('#000'))
  pen.y += 5
  write(pen, 'H2', title, { face: 'strong', size: 13 }, 5)
}

function foot(pen: Pen, { sheet: { title, rulebook }, foot: words }: SheetPdfView): void {
  const { doc } = pen
  const { start, count } = doc.bufferedPageRange()
  for (let page = start; page < start + count; page++) {
    doc.switchToPage(page)
    const rest = `rulebook ${rulebook} · page ${page + 1} of ${count} · ${words}`
    artifact(pen, () => {
      doc.font('serif').fontSize(8).fillColor('#444')
      const whole = `${title} · ${rest}`
      // A title that would push the caution off the line is left out: it heads the sheet.
      const text = doc.widthOfString(whole) > pen.width ? rest : whole
      doc
        // Below the page's own margin, where the library would begin a new page by itself.
        .text(text, pen.left, pen.bottom + 8, { width: pen.width, height: 12, lineBreak: false })
    })
  }
}
