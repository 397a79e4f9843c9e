import type { CapMap } from '../shop-sheet/blocks.ts'
import { type Html, html } from './html.ts'
import { arrow, box, circle, line, svg, words } from './svg.ts'

/** Cells of the map in the drawing's own units; the PDF draws the same figure. */
export const CAP_PITCH = 62
/** Height of the drawing, picture units. */
export const CAP_MAP_HEIGHT = 150
const LEFT = 64

/** Width of the drawing, picture units. */
export function capMapWidth({ mains }: CapMap): number {
  return LEFT + mains * CAP_PITCH + 8
}

/** The block seen from below, front to the left: every cap with its number, arrow and stamp. */
export function capMapDrawing(map: CapMap): Html {
  const width = capMapWidth(map)
  const middle = 62
  const places = Array.from({ length: map.mains }, (_, place) => place)
  return html`<figure class="figure cap-map">${svg({
    id: 'cap-map',
    width,
    height: CAP_MAP_HEIGHT,
    title: map.splitCase ? 'The mains from the front' : 'The caps from the front',
    text: capMapText(map),
    body: html`${box(LEFT - 10, 12, width - LEFT + 6, 100, 'block')}
${line(8, middle, width - 2, middle, 'centre-line')}
${arrow(50, 30, 10, 30, 'ink')}${words(8, 20, 'FRONT', 'small')}
${words(8, 141, 'stamp', 'small')}
${places.map((place) => cap(map, place, middle))}`,
  })}</figure>`
}

function cap(map: CapMap, place: number, middle: number): Html {
  const x = LEFT + place * CAP_PITCH
  const stamp = map.stamps[place] ?? null
  const offsets = map.fasteners === 4 ? [34, 24, -24, -34] : [30, -30]
  return html`${box(x + 8, middle - 42, 34, 84, 'cap')}
${map.splitCase ? html`` : html`${offsets.map((off) => circle(x + 25, middle + off, map.fasteners === 4 ? 4 : 6, 'fastener'))}${arrow(x + 36, middle - 13, x + 14, middle - 13, 'ink')}`}
${words(x + 25, middle + 16, `${place + 1}`, 'strong middle cap-number')}
${stamp === null ? line(x + 4, 142, x + 46, 142, 'ink') : words(x + 25, 141, stamp, 'middle')}`
}

/** The drawing in words. */
export function capMapText({ mains, fasteners, splitCase, stamps }: CapMap): string {
  const known = stamps.flatMap((stamp, place) => (stamp === null ? [] : `${place + 1}: ${stamp}`))
  const stamped = known.length === 0 ? 'Stamps: to be written in.' : `Stamps: ${known.join(', ')}.`
  return splitCase
    ? `${mains} mains between two case halves, main 1 at the front. ${stamped}`
    : `${mains} caps in a row seen from below, main 1 nearest the front, ${fasteners} upright fasteners each, an arrow to the front on every one. ${stamped}`
}
