import PDFDocument from 'pdfkit'

/** Open fonts as TrueType, which is what a PDF takes. */
export interface PrintFonts {
  readonly serif: Uint8Array
  readonly strong: Uint8Array
  readonly mono: Uint8Array
}

/** Sizes of paper that a sheet is made for. */
export type Paper = 'A4' | 'LETTER'
/** One of the faces of the printed sheet. */
export type Face = keyof PrintFonts

/** Where the next line goes. Lengths in points, from the top left. */
export interface Pen {
  readonly doc: PDFKit.PDFDocument
  readonly root: PDFKit.PDFStructureElement
  readonly left: number
  readonly width: number
  readonly top: number
  readonly bottom: number
  y: number
}

/** One millimetre in points, of which 72 make an inch. */
export const MILLIMETRE = 72 / 25.4
const MARGIN = 15 * MILLIMETRE
const FOOT = 22

/**
 * A new tagged document of black on white, its first page ready.
 *
 * @param dated - `2026-01-31`, written into the file in place of a clock's: the same sheet is the
 *   same file, byte for byte
 */
export function newPen(fonts: PrintFonts, paper: Paper, title: string, dated: string): Pen {
  const doc = new PDFDocument({
    size: paper,
    margin: MARGIN,
    bufferPages: true,
    tagged: true,
    lang: 'en',
    displayTitle: true,
    pdfVersion: '1.7',
    // A font given here keeps the library from reading one of its own from a disk.
    font: fonts.serif as unknown as string,
    info: { Title: title, Creator: 'Mainstay', CreationDate: new Date(`${dated}T00:00:00Z`) },
  })
  for (const face of ['serif', 'strong', 'mono'] as const) {
    doc.registerFont(face, fonts[face] as unknown as PDFKit.Mixins.PDFFontSource)
  }
  const root = doc.struct('Document')
  doc.addStructure(root)
  return {
    doc,
    root,
    left: MARGIN,
    width: doc.page.width - 2 * MARGIN,
    top: MARGIN,
    bottom: doc.page.height - MARGIN - FOOT,
    y: MARGIN,
  }
}

/** Begin a new page unless so much room is left on this one. */
export function roomFor(pen: Pen, height: number): void {
  if (pen.y + height <= pen.bottom) return
  pen.doc.addPage()
  pen.y = pen.top
}

/** How a text is set: face, size and place in points, the pen's own where left out. */
export interface Style {
  readonly face?: Face
  readonly size?: number
  readonly x?: number
  readonly width?: number
  readonly align?: 'left' | 'right' | 'center'
  readonly grey?: boolean
}

/** Height that a text takes in this style, points. */
export function heightOf(pen: Pen, text: string, { face, size, width }: Style = {}): number {
  pen.doc.font(face ?? 'serif').fontSize(size ?? 10)
  return pen.doc.heightOfString(text, { width: width ?? pen.width, lineGap: 1 })
}

/** Put a text at the pen's height without moving it, under a role of the document's structure. */
export function put(pen: Pen, role: string, text: string, style: Style = {}): void {
  const { face = 'serif', size = 10, x = pen.left, width = pen.width, align = 'left' } = style
  pen.root.add(
    pen.doc.struct(role, {}, () => {
      pen.doc
        .font(face)
        .fontSize(size)
        .fillColor(style.grey ? '#444' : '#000')
        .text(text, x, pen.y, { width, align, lineGap: 1 })
    }),
  )
}

/** Put a text and move below it, on a new page when it does not fit. */
export function write(pen: Pen, role: string, text: string, style: Style = {}, gap = 4): void {
  const height = heightOf(pen, text, style)
  roomFor(pen, height)
  put(pen, role, text, style)
  pen.y += height + gap
}

/** Lines and shapes that a screen reader passes over. */
export function artifact({ doc }: Pen, draw: (doc: PDFKit.PDFDocument) => void): void {
  doc.markContent('Artifact', { type: 'Layout' })
  doc.save()
  draw(doc)
  doc.restore()
  doc.endMarkedContent()
}

/** A line to write on. */
export function rule(pen: Pen, x: number, y: number, width: number): void {
  artifact(pen, (doc) => {
    doc
      .lineWidth(0.7)
      .strokeColor('#000')
      .moveTo(x, y)
      .lineTo(x + width, y)
      .stroke()
  })
}

/** The finished file. */
export function finish({ doc }: Pen): Promise<Uint8Array<ArrayBuffer>> {
  return new Promise((resolve, reject) => {
    const chunks: Buffer[] = []
    doc.on('data', (chunk: Buffer) => chunks.push(chunk))
    doc.on('end', () => resolve(new Uint8Array(Buffer.concat(chunks))))
    doc.on('error', reject)
    doc.end()
  })
}
