import { type Html, html } from './html.ts'
import {
  blockPath,
  callout,
  capPath,
  cutFace,
  fastener,
  type LearnDrawing,
  linings,
  ring,
  type Section,
} from './learn-drawing-parts.ts'
import { arrow, box, circle, line, words } from './svg.ts'

const SMALL: Omit<Section, 'x' | 'y'> = {
  r: 22,
  cap: 46,
  block: 66,
  above: 42,
  below: 44,
  register: 7,
}

/** A small section without its fasteners. */
function small(id: string, section: Section): Html {
  return html`${cutFace(id, 'block', blockPath(section))}${cutFace(id, 'cap', capPath(section))}
${ring(section.x, section.y, section.r, section.r - 3, 'bearing')}${circle(section.x, section.y, section.r - 4, 'shaft')}`
}

const uprights = (x: number, y: number, at: readonly number[], below = 44) =>
  at.map((dx) => fastener({ x: x + dx, top: y - 26, seat: y + below, d: 9, thread: 18 }))

export const boltPatterns: LearnDrawing = {
  height: 330,
  title: 'Four ways to fasten a cap',
  text: 'Four small sections. Two-bolt: one fastener on each side of the bearing. Four-bolt straight: a second pair outside the first, in a wider cap. Four-bolt splayed: the outer pair leans outward into the thick of the web. Cross-bolted: two upright fasteners, and one through each side of a deep block into the cap.',
  caption:
    'Four patterns, to one scale. More fasteners give more clamp; where they stand decides what metal they hold on to.',
  body: (id) => {
    const at = (x: number, y: number, more: Partial<Section> = {}) => ({ ...SMALL, x, y, ...more })
    const wide = { cap: 64, block: 80 }
    return html`${linings(id)}
${small(id, at(88, 72))}${uprights(88, 72, [-33, 33])}${words(88, 150, 'two-bolt', 'label middle')}
${small(id, at(270, 72, wide))}${uprights(270, 72, [-53, -32, 32, 53])}${words(270, 150, 'four-bolt, straight', 'label middle')}
${small(id, at(88, 232, wide))}${splayed(88, 232)}${words(88, 318, 'four-bolt, splayed', 'label middle')}
${deep(id, 270, 232)}${words(270, 318, 'cross-bolted', 'label middle')}`
  },
}

function splayed(x: number, y: number): Html {
  const outer = (side: 1 | -1) =>
    html`<g transform="translate(${x + side * 47} ${y + 44}) rotate(${side * 16})">${fastener({ x: 0, top: -74, seat: 0, d: 9, thread: 18 })}</g>`
  return html`${uprights(x, y, [-29, 29])}${outer(1)}${outer(-1)}`
}

/** A deep skirt with cross bolts; the walls stand beside the cap. */
function deep(id: string, x: number, y: number): Html {
  const section = { ...SMALL, x, y, block: 72, register: 50 }
  return html`${small(id, section)}${uprights(x, y, [-31, 31])}${[-1, 1].map((side) => crossBolt(x, y + 20, side as 1 | -1, 46, 72))}`
}

function crossBolt(x: number, y: number, side: 1 | -1, cap: number, block: number): Html {
  const inner = x + side * (cap - 8)
  const outer = x + side * block
  const head = side > 0 ? outer : outer - 7
  return html`${box(Math.min(inner, outer), y - 4, Math.abs(outer - inner), 8, 'fastener')}${box(head, y - 8, 7, 16, 'fastener')}`
}

export const crossBolts: LearnDrawing = {
  height: 236,
  title: 'Short skirt and deep skirt',
  text: 'Left: a short-skirt block ends just below the parting face; its cap hangs free and only friction and the low register hold it sideways. Right: a deep-skirt block reaches down past the cap on both sides; bolts through its walls go into the cap, so a sideways push is carried into the wall.',
  caption:
    'The same push to the right. On a short skirt, friction and a low wall must hold it; on a deep skirt the cross bolts and the far wall take it.',
  body: (id) => {
    const y = 92
    return html`${linings(id)}
${small(id, { ...SMALL, x: 84, y, r: 26, below: 58, cap: 52, block: 72, above: 56, register: 8 })}${uprights(84, y, [-38, 38], 58)}
${arrow(84, y, 128, y + 22, 'force')}${words(84, 186, 'short skirt', 'label middle')}
${small(id, { ...SMALL, x: 268, y, r: 26, below: 58, cap: 52, block: 76, above: 56, register: 72 })}${uprights(268, y, [-38, 38], 58)}
${[-1, 1].map((side) => crossBolt(268, y + 36, side as 1 | -1, 52, 76))}
${arrow(268, y, 312, y + 22, 'force')}${words(268, 186, 'deep skirt', 'label middle')}
${words(84, 206, 'held by friction', 'small middle ink-soft')}${words(84, 220, 'and a low wall', 'small middle ink-soft')}
${words(268, 206, 'held by both sides', 'small middle ink-soft')}${words(268, 220, 'of the box', 'small middle ink-soft')}`
  },
}

export const girdle: LearnDrawing = {
  height: 216,
  title: 'A girdle over five caps, from the side',
  text: 'Seen from the side, five webs of the block with their caps below, the crank running through all. A plate is bolted over the backs of all five caps on long studs. A push on one cap is shared with its neighbours through the plate.',
  caption:
    'From the side: a plate on long studs ties the backs of all caps into one row. A push on one is shared by its neighbours.',
  body: () => {
    const webs = [40, 110, 180, 250, 320]
    return html`${box(14, 20, 332, 24, 'block')}${webs.map((x) => box(x - 17, 44, 34, 42, 'block'))}
${box(8, 74, 344, 24, 'shaft')}${line(4, 86, 356, 86, 'centre-line')}
${webs.map((x) => html`${box(x - 17, 62, 34, 24, 'block')}${box(x - 17, 86, 34, 44, 'cap')}${box(x - 4, 50, 8, 98, 'fastener')}`)}
${box(14, 130, 332, 12, 'bearing')}${webs.map((x) => box(x - 9, 142, 18, 9, 'fastener'))}
${circle(180, 110, 10, 'force paper')}${circle(180, 110, 10, 'force')}${circle(180, 110, 3, 'force-fill')}${arrow(188, 136, 232, 136, 'layout-blue')}${arrow(172, 136, 128, 136, 'layout-blue')}
${callout(20, 172, 'girdle', [30, 137])}${callout(92, 172, 'cap', [103, 124])}${callout(142, 172, 'long stud', [110, 146])}${callout(228, 172, 'push, towards you', [189, 115])}
${words(20, 200, 'must touch every cap without bending any', 'small ink-soft')}`
  },
}

export const splitCase: LearnDrawing = {
  height: 208,
  title: 'A split case, cut across a main',
  text: 'Two halves of a crankcase meet on a vertical line through the crank axis. Each carries half of the main bore. Long through bolts above and below the bore pull the halves together. The cylinders lie to the left and right, so the load pulls the halves apart.',
  caption:
    'No caps: two half cases with a main bore between them, pulled together by through bolts. The load goes straight across the split.',
  body: (id) => {
    const half = (side: 1 | -1) =>
      `M180 22H${180 + side * 104}V62H${180 + side * 128}V136H${180 + side * 104}V176H180V139A40 40 0 0 ${side > 0 ? 0 : 1} 180 59Z`
    return html`${linings(id)}${cutFace(id, 'block', half(-1))}${cutFace(id, 'cap', half(1))}
${[42, 156].map((y) => html`${box(66, y - 5, 228, 10, 'fastener')}${box(56, y - 9, 10, 18, 'fastener')}${box(294, y - 9, 10, 18, 'fastener')}`)}
${ring(180, 99, 40, 36, 'bearing')}${circle(180, 99, 34, 'shaft')}${line(180, 8, 180, 190, 'centre-line')}
${arrow(180, 99, 246, 99, 'force')}${arrow(180, 99, 114, 99, 'force')}
${words(180, 204, 'through bolts above and below every main', 'small middle ink-soft')}`
  },
}
