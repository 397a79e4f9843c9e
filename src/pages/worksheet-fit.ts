import type { FitPicture } from '../worksheets/picture.ts'
import { type Html, html } from './html.ts'
import { circle, line, PICTURE_WIDTH, path, words } from './svg.ts'

const CENTRE = { x: PICTURE_WIDTH / 2, y: 118 }
const JOURNAL = 70
const SEEN = 30

/** Journal and shells end on; the clearance is magnified, the journal is not. */
export function fitDrawing({ cold, warm, labels }: FitPicture): { height: number; body: Html } {
  const most = Math.max(
    ...[cold, ...(warm ? [warm] : [])].flatMap(({ vertical, horizontal }) => [
      vertical,
      horizontal,
    ]),
    1e-7,
  )
  const scale = SEEN / most
  return {
    height: 236 + 16 * labels.length,
    body: html`${oval(cold, scale, 'layout-blue')}${warm ? oval(warm, scale, 'force dashed') : ''}
${circle(CENTRE.x, CENTRE.y, JOURNAL, 'shaft')}
${line(CENTRE.x - 14, CENTRE.y, CENTRE.x + 14, CENTRE.y, 'centre-line')}${line(CENTRE.x, CENTRE.y - 14, CENTRE.x, CENTRE.y + 14, 'centre-line')}
${labels.map((label, index) => words(0, 240 + 16 * index, label, index === 1 ? 'small force' : 'small'))}`,
  }
}

function oval({ vertical, horizontal }: FitPicture['cold'], scale: number, classes: string): Html {
  const across = JOURNAL + Math.max(0, horizontal) * scale
  const up = JOURNAL + Math.max(0, vertical) * scale
  const { x, y } = CENTRE
  return path(
    `M${x - across} ${y}A${across} ${up} 0 0 1 ${x + across} ${y}A${across} ${up} 0 0 1 ${x - across} ${y}Z`,
    classes,
  )
}
