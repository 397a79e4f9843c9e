import { type Html, html } from './html.ts'
import { box, line, path, short, words } from './svg.ts'

/** A drawing without its frame: what it shows in words, and its body. */
export interface LearnDrawing {
  readonly height: number
  readonly title: string
  /** What a person who cannot see the picture should know. */
  readonly text: string
  readonly caption: string
  readonly body: (id: string) => unknown
}

/** A section through one main, y down; everything from the middle of the bore. */
export interface Section {
  readonly x: number
  readonly y: number
  readonly r: number
  /** Half widths of the cap and of the block. */
  readonly cap: number
  readonly block: number
  readonly above: number
  readonly below: number
  /** Height of the register's walls. */
  readonly register: number
}

/** The block's half: web, saddle and the two walls of the register. */
export function blockPath({ x, y, r, cap, block, above, register }: Section): string {
  const step = y + register
  return `M${x - block} ${y - above}H${x + block}V${step}H${x + cap}V${y}H${x + r}A${r} ${r} 0 0 0 ${x - r} ${y}H${x - cap}V${step}H${x - block}Z`
}

/** The cap's half. */
export function capPath({ x, y, r, cap, below }: Section): string {
  const corner = Math.min(8, below / 6)
  return `M${x - cap} ${y}H${x - r}A${r} ${r} 0 0 0 ${x + r} ${y}H${x + cap}V${y + below - corner}L${x + cap - corner} ${y + below}H${x - cap + corner}L${x - cap} ${y + below - corner}Z`
}

/** Section lining: iron block to the left, cap to the right. Ids are made unique by the drawing's own. */
export function linings(id: string): Html {
  return html`<defs><pattern id="${id}-block" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(-45)"><path d="M0 0V7" class="hatch-block"/></pattern><pattern id="${id}-cap" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path d="M0 0V6" class="hatch-cap"/></pattern><pattern id="${id}-cut" width="4" height="4" patternUnits="userSpaceOnUse"><path d="M0 0L4 4M4 0L0 4" class="hatch-block"/></pattern></defs>`
}

/** A cut face: flat colour, then its lining. */
export function cutFace(id: string, part: 'block' | 'cap', d: string): Html {
  return html`${path(d, part)}<path d="${d}" fill="url(#${id}-${part})"/>`
}

/** An upright fastener: from `top` in the block down to its seat, head or nut below. */
export function fastener(view: {
  x: number
  top: number
  seat: number
  d: number
  /** Height of the thread in the block. */
  thread?: number
  nut?: boolean
}): Html {
  const { x, top, seat, d, thread = 0, nut = false } = view
  const turns = Math.floor(thread / 4)
  const crests = Array.from({ length: turns }, (_, i) => top + 2 + i * 4)
  const head = 0.75 * d
  const tail = nut ? box(x - d / 2, seat, d, head + 5, 'fastener') : ''
  return html`${box(x - d / 2, top, d, seat - top, 'fastener')}${tail}${box(x - 0.95 * d, seat, 1.9 * d, head, 'fastener')}
${crests.map((y) => line(x - d / 2 - 1.5, y, x + d / 2 + 1.5, y + 2, 'ink-soft'))}`
}

/** A name beside the picture with a thin line to what it names. */
export function callout(
  x: number,
  y: number,
  text: string,
  tip: readonly [number, number],
  side: 'left' | 'right' = 'right',
): Html {
  const from = side === 'right' ? x - 4 : x + 4
  return html`${line(from, y - 4, tip[0], tip[1], 'hair')}${words(x, y, text, side === 'right' ? 'label' : 'label end')}`
}

/** Ring between two circles of one centre. */
export function ring(x: number, y: number, outer: number, inner: number, classes: string): Html {
  const whole = (r: number) =>
    `M${short(x - r)} ${y}A${short(r)} ${short(r)} 0 1 0 ${short(x + r)} ${y}A${short(r)} ${short(r)} 0 1 0 ${short(x - r)} ${y}Z`
  return html`<path d="${whole(outer)}${whole(inner)}" fill-rule="evenodd" class="${classes}"/>`
}

/** A curve through points. */
export function polyline(points: readonly (readonly [number, number])[], classes: string): Html {
  return path(`M${points.map(([x, y]) => `${short(x)} ${short(y)}`).join('L')}`, classes)
}

/** A measure with an arrowhead at both ends. */
export function measure(
  [x1, y1]: readonly [number, number],
  [x2, y2]: readonly [number, number],
  classes = 'ink',
): Html {
  const length = Math.hypot(x2 - x1, y2 - y1)
  const [ux, uy] = [(x2 - x1) / length, (y2 - y1) / length]
  const head = (x: number, y: number, way: number) =>
    path(
      `M${short(x)} ${short(y)}L${short(x + way * (6 * ux - 2.5 * uy))} ${short(y + way * (6 * uy + 2.5 * ux))}L${short(x + way * (6 * ux + 2.5 * uy))} ${short(y + way * (6 * uy - 2.5 * ux))}Z`,
      `solid ${classes}`,
    )
  return html`${line(x1, y1, x2, y2, classes)}${head(x1, y1, 1)}${head(x2, y2, -1)}`
}
