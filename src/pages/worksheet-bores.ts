import type { BoresPicture } from '../worksheets/picture.ts'
import { type Html, html } from './html.ts'
import { circle, line, PICTURE_WIDTH, path, words } from './svg.ts'

const CENTRE = { x: PICTURE_WIDTH / 2, y: 130 }
const RADIUS = 96
/** Size of the greatest difference on the paper, so that thousandths can be seen. */
const SEEN = 26

/** The two halves, the bore that is to come, and the parting face; differences are magnified. */
export function boresDrawing(view: BoresPicture): { height: number; body: Html } {
  const { block, cap, finished, partingFace, labels } = view
  const base = finished.radius
  const differences = [
    block.radius - base,
    cap.radius - base,
    cap.x,
    cap.y,
    finished.y,
    partingFace,
  ].map(Math.abs)
  const scale = SEEN / Math.max(...differences, 1e-7)
  const size = (radius: number): number => RADIUS + (radius - base) * scale
  const face = CENTRE.y - partingFace * scale
  const blockR = size(block.radius)
  const capR = size(cap.radius)
  const [capX, capY] = [CENTRE.x + cap.x * scale, CENTRE.y - cap.y * scale]
  const [blockY, boreY] = [CENTRE.y - block.y * scale, CENTRE.y - finished.y * scale]
  const upper = `M${CENTRE.x - blockR} ${face}V${Math.min(face, blockY)}A${blockR} ${blockR} 0 0 1 ${CENTRE.x + blockR} ${Math.min(face, blockY)}V${face}`
  const lower = `M${capX - capR} ${face}V${Math.max(face, capY)}A${capR} ${capR} 0 0 0 ${capX + capR} ${Math.max(face, capY)}V${face}`
  return {
    height: 268 + 16 * labels.length,
    body: html`${words(0, 14, 'block', 'small ink-soft')}${words(0, 250, 'cap', 'small ink-soft')}
${line(14, face, PICTURE_WIDTH - 14, face, 'ink')}${path(upper, 'ink')}${path(lower, 'ink')}
${circle(CENTRE.x, boreY, RADIUS, 'layout-blue')}
${line(CENTRE.x - 12, CENTRE.y, CENTRE.x + 12, CENTRE.y, 'ink')}${line(CENTRE.x, CENTRE.y - 12, CENTRE.x, CENTRE.y + 12, 'ink')}
${line(CENTRE.x - 12, boreY, CENTRE.x + 12, boreY, 'force')}${line(CENTRE.x, boreY - 12, CENTRE.x, boreY + 12, 'force')}
${labels.map((label, index) => words(0, 270 + 16 * index, label, 'small'))}`,
  }
}
