import type { CapMap } from '../shop-sheet/blocks.ts'
import { artifact, type Pen, put, roomFor, write } from './pdf-pen.ts'
import { CAP_MAP_HEIGHT, CAP_PITCH, capMapText, capMapWidth } from './sheet-cap-map.ts'

const LEFT = 64

/** The caps from below, front to the left, as the page draws them. */
export function pdfCapMap(pen: Pen, map: CapMap): void {
  const scale = Math.min(1.15, pen.width / capMapWidth(map))
  roomFor(pen, CAP_MAP_HEIGHT * scale + 4)
  const top = pen.y
  const at = (x: number, y: number): [number, number] => [pen.left + x * scale, top + y * scale]
  artifact(pen, (doc) => {
    doc.lineWidth(1).strokeColor('#000')
    doc.rect(...at(LEFT - 10, 12), (capMapWidth(map) - LEFT + 6) * scale, 100 * scale).stroke()
    arrow(doc, at(50, 30), at(10, 30))
    for (let place = 0; place < map.mains; place++) cap(doc, map, place, at, scale)
  })
  const label = (text: string, x: number, y: number, size: number, width = 60) => {
    const [left, height] = at(x, y)
    pen.y = height
    put(pen, 'P', text, { face: 'mono', size, x: left, width })
  }
  label('FRONT', 8, 10, 8)
  label('stamp', 8, 132, 8)
  for (let place = 0; place < map.mains; place++) {
    const x = LEFT + place * CAP_PITCH
    label(`${place + 1}`, x + 20, 66, 12, 20)
    const stamp = map.stamps[place]
    if (stamp) label(stamp, x + 6, 131, 9)
  }
  pen.y = top + CAP_MAP_HEIGHT * scale + 4
  write(pen, 'P', capMapText(map), { size: 8.5, grey: true }, 3)
}

type Place = (x: number, y: number) => [number, number]

function cap(doc: PDFKit.PDFDocument, map: CapMap, place: number, at: Place, scale: number): void {
  const x = LEFT + place * CAP_PITCH
  doc.rect(...at(x + 8, 20), 34 * scale, 84 * scale).fillAndStroke('#e4e4e4', '#000')
  if (!map.splitCase) {
    const isFour = map.fasteners === 4
    for (const off of isFour ? [34, 24, -24, -34] : [30, -30]) {
      doc.circle(...at(x + 25, 62 + off), (isFour ? 4 : 6) * scale).fillAndStroke('#fff', '#000')
    }
    arrow(doc, at(x + 36, 49), at(x + 14, 49))
  }
  if (!map.stamps[place]) {
    doc
      .moveTo(...at(x + 4, 142))
      .lineTo(...at(x + 46, 142))
      .stroke()
  }
}

function arrow(doc: PDFKit.PDFDocument, [x1, y]: [number, number], [x2]: [number, number]): void {
  doc
    .moveTo(x1, y)
    .lineTo(x2 + 6, y)
    .stroke()
  doc.polygon([x2, y], [x2 + 8, y - 3.5], [x2 + 8, y + 3.5]).fill('#000')
}
