import { html } from './html.ts'
import {
  blockPath,
  callout,
  capPath,
  cutFace,
  fastener,
  type LearnDrawing,
  linings,
  measure,
  polyline,
  ring,
  type Section,
} from './learn-drawing-parts.ts'
import { arrow, box, circle, line, words } from './svg.ts'

const SECTION: Section = {
  x: 140,
  y: 118,
  r: 44,
  cap: 90,
  block: 124,
  above: 96,
  below: 84,
  register: 13,
}

export const mainCap: LearnDrawing = {
  height: 268,
  title: 'Section through one main bearing',
  text: 'The block’s web with its half bore, the saddle, is above. The cap with the other half is below, set between the two walls of the register and pulled up by a fastener on each side. Shells line the bore and the journal turns in them. The load pulls the journal down into the cap; the clamp of the fasteners presses the cap up.',
  caption:
    'A main, cut across. The load of the firing cylinders pulls down; only the fasteners’ clamp answers.',
  body: (id) => {
    const { x, y } = SECTION
    return html`${linings(id)}${cutFace(id, 'block', blockPath(SECTION))}${cutFace(id, 'cap', capPath(SECTION))}
${[-67, 67].map((dx) => fastener({ x: x + dx, top: y - 52, seat: y + 84, d: 17, thread: 36 }))}
${ring(x, y, 44, 39, 'bearing')}${circle(x, y, 37, 'shaft')}
${line(x - 124, y, x + 124, y, 'centre-line')}${line(x, 12, x, y + 100, 'centre-line')}
${arrow(x, y, x, y + 66, 'force thick')}
${[-67, 67].map((dx) => arrow(x + dx, y + 142, x + dx, y + 104, 'clamp thick'))}
${words(x + 9, y + 64, 'load', 'force strong')}${words(x, y + 140, 'clamp', 'clamp strong middle')}
${callout(276, 48, 'block web', [250, 44])}${callout(276, 82, 'saddle', [175, 88])}
${callout(276, 112, 'parting face', [215, 118])}${callout(276, 142, 'register', [231, 126])}
${callout(276, 176, 'cap', [224, 186])}${callout(276, 206, 'shell', [176, 142])}${callout(276, 236, 'fastener', [220, 209])}`
  },
}

export const capWalk: LearnDrawing = {
  height: 270,
  title: 'A cap that has walked',
  text: 'The journal pushes down and to the right. The cap has slid to the right until it meets the register wall. On the left a gap has opened. The two half bores no longer meet: there is a step at the parting face on each side, and the parting faces are worn where they rub.',
  caption:
    'Cap walk, many times enlarged. The push has slid the cap against one wall of its register; the bore now has a step on both sides, and the faces wear where they rub.',
  body: (id) => {
    const { x, y } = SECTION
    const moved = { ...SECTION, x: x + 7, cap: 83 }
    return html`${linings(id)}${cutFace(id, 'block', blockPath(SECTION))}${cutFace(id, 'cap', capPath(moved))}
${[-62, 62].map((dx) => fastener({ x: x + dx, top: y - 52, seat: y + 84, d: 17, thread: 36 }))}
${circle(x + 4, y + 3, 38, 'shaft')}
${[-1, 1].map((side) => polyline(wear(side < 0 ? x - 76 : x + 51), 'warn thick'))}
${line(x, 12, x, y + 100, 'centre-line')}
${arrow(x + 4, y + 3, x + 66, y + 58, 'force thick')}${words(x + 10, y + 66, 'push', 'force strong')}
${measure([x - 90, y + 108], [x - 76, y + 108])}${line(x - 90, y + 6, x - 90, y + 114, 'hair')}${line(x - 76, y + 6, x - 76, y + 114, 'hair')}
${words(x - 104, y + 132, 'gap', 'strong')}
${callout(276, 74, 'step in bore', [189, 117])}${callout(276, 112, 'worn face', [212, 119])}
${callout(276, 150, 'wall it hits', [230, 126])}`
  },
}

function wear(from: number): [number, number][] {
  return Array.from({ length: 9 }, (_, i) => [from + i * 3, 118 + (i % 2 === 0 ? -2 : 2)])
}

const FITS = [
  { name: 'Tight', note: 'tap it in', gap: -3 },
  { name: 'Snug', note: 'push it in', gap: 0 },
  { name: 'Loose', note: 'drops in', gap: 8 },
] as const

export const register: LearnDrawing = {
  height: 196,
  title: 'Three fits of a cap in its register',
  text: 'Three enlarged corners of a cap in the block. Tight: the cap is a little wider than its channel and is held from the first load. Snug: they are equal. Loose: there is a gap, and the cap can slide by that much before the wall stops it.',
  caption:
    'The corner of a cap against its register wall, enlarged. Tight holds from the first load; loose lets the cap slide before the wall helps.',
  body: (id) =>
    html`${linings(id)}${FITS.map(({ name, note, gap }, i) => {
      const x = 12 + i * 120
      const wall = x + 70
      const cap = `M${x} 84H${wall - gap}V150H${x}Z`
      const block = `M${x} 40H${x + 100}V116H${wall}V84H${x}Z`
      return html`${cutFace(id, 'block', block)}${cutFace(id, 'cap', cap)}
${gap < 0 ? box(wall, 84, 3, 32, 'warn-fill') : ''}${gap > 0 ? html`${line(wall - gap, 116, wall - gap, 164, 'hair')}${line(wall, 116, wall, 164, 'hair')}${words(wall - 24, 176, 'gap', 'small')}` : ''}
${words(x, 18, name, 'label strong')}${words(x, 33, note, 'small ink-soft')}
${words(x + 8, 62, 'block', 'small')}${words(x + 8, 134, 'cap', 'small')}`
    })}${words(12, 192, 'One side of a cap, cut across and enlarged.', 'small ink-soft')}`,
}

/** MPa and GPa, as in the page's table; low to high. */
const METALS = [
  { name: 'Gray iron', strength: [205, 275], stiffness: [90, 125] },
  { name: 'Ductile iron', strength: [450, 550], stiffness: [169, 169] },
  { name: 'Sintered steel', strength: [410, 540], stiffness: [120, 160] },
  { name: 'Steel bar', strength: [570, 570], stiffness: [207, 207] },
  { name: 'Aluminium', strength: [470, 570], stiffness: [72, 72] },
] as const

export const capMaterials: LearnDrawing = {
  height: 262,
  title: 'Strength and stiffness of cap materials',
  text: 'Bars for five metals. Tensile strength: gray iron 205 to 275 MPa, ductile iron 450 to 550, sintered steel 410 to 540, plain steel bar 570, strong aluminium 470 to 570. Stiffness: gray iron 90 to 125 GPa, ductile iron 169, sintered steel 120 to 160, steel 207, aluminium 72.',
  caption:
    'Strength (upper bar of each pair, to 600 MPa or 87 ksi) and stiffness (lower bar, to 210 GPa or 30 million psi). The hatched end is the range. Strong is not stiff: see aluminium.',
  body: (id) => html`${linings(id)}
${[0, 0.5, 1].map((share) => line(112 + share * 236, 14, 112 + share * 236, 232, 'grid'))}
${METALS.map(({ name, strength, stiffness }, i) => {
  const y = 22 + i * 43
  return html`${words(104, y + 18, name, 'label end')}${bar(id, y, strength, 600, 'cap')}${bar(id, y + 15, stiffness, 210, 'bearing')}`
})}${words(112, 248, '0', 'small middle')}${words(230, 248, '300 MPa · 105 GPa', 'small middle')}${words(356, 248, '600 · 210', 'small end')}`,
}

function bar(
  id: string,
  y: number,
  [low, high]: readonly [number, number],
  full: number,
  fill: string,
) {
  const [a, b] = [(low / full) * 236, (high / full) * 236]
  return html`${box(112, y, b, 13, fill)}<rect x="${112 + a}" y="${y}" width="${Math.max(0, b - a)}" height="13" fill="url(#${id}-cut)"/>`
}

export const capOrder: LearnDrawing = {
  height: 196,
  title: 'Block from below, caps numbered',
  text: 'The block seen from below. Five caps lie across the crank, numbered 1 to 5 from the front. Each carries an arrow that points to the front, and the same number is stamped on the block beside it. The fifth cap is wider and takes the thrust.',
  caption:
    'From below: number and arrow on every cap, the same number on the block beside it. Here cap 5 is the wide one that takes the thrust; in other engines it is another.',
  body: () => html`${box(40, 18, 312, 144, 'block')}${box(56, 38, 280, 104, 'sheet')}
${[0, 1, 2, 3, 4].map((i) => cap(i))}
${box(34, 84, 312, 12, 'shaft')}${[0, 1, 2, 3, 4].map((i) => capFace(i))}
${arrow(30, 90, 6, 90, 'layout-blue')}${words(1, 76, 'front', 'strong')}
${words(44, 180, 'stamp cap and block alike, before strip-down', 'small ink-soft')}`,
}

const PITCH = 62
const capWidth = (i: number) => (i === 4 ? 42 : 26)

function cap(i: number) {
  return box(74 + i * PITCH - capWidth(i) / 2, 40, capWidth(i), 100, 'cap')
}

/** What lies over the crank: the cap's middle, its fasteners, number and arrow. */
function capFace(i: number) {
  const x = 74 + i * PITCH
  const w = capWidth(i)
  return html`${box(x - w / 2, 62, w, 56, 'cap')}${circle(x, 51, 6, 'fastener')}${circle(x, 129, 6, 'fastener')}
${words(x, 82, String(i + 1), 'strong middle')}${arrow(x + 9, 100, x - 9, 100, 'ink')}${words(x, 33, String(i + 1), 'small middle')}`
}
