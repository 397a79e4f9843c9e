import { type Html, html } from './html.ts'
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
import { arrow, circle, line, path, short, words } from './svg.ts'

interface Halves {
  x: number
  y: number
  /** Block's half bore; the cap's; the bore to be cut and how far above the old centre it lies. */
  block: number
  cap: number
  capAside: number
  bore: number
  up: number
}

const BIG: Halves = { x: 140, y: 128, block: 70, cap: 58, capAside: 5, bore: 73, up: 2 }

/** The two halves as they meet, with nothing in the bore. */
function rough(id: string, h: Halves, frame: Omit<Section, 'x' | 'y' | 'r'>): Html {
  const block = { ...frame, x: h.x, y: h.y, r: h.block }
  const capOutline = capPath({ ...frame, x: h.x, y: h.y, r: h.cap })
  const arc = `H${h.x - h.cap}A${h.cap} ${h.cap} 0 0 0 ${h.x + h.cap} ${h.y}`
  const moved = `H${h.x + h.capAside - h.cap}A${h.cap} ${h.cap} 0 0 0 ${h.x + h.capAside + h.cap} ${h.y}`
  return html`${cutFace(id, 'block', blockPath(block))}${cutFace(id, 'cap', capOutline.replace(arc, moved))}`
}

/** Metal of the cap inside the new bore. */
function capMetal({ x, y, cap, capAside, bore, up }: Halves): string {
  const half = Math.sqrt(bore ** 2 - up ** 2)
  const c = x + capAside
  return `M${short(x - half)} ${y}A${bore} ${bore} 0 0 0 ${short(x + half)} ${y}H${c + cap}A${cap} ${cap} 0 0 1 ${c - cap} ${y}Z`
}

/** Metal of the block inside the new bore. */
function blockMetal({ x, y, block, bore, up }: Halves): string {
  const half = Math.sqrt(bore ** 2 - up ** 2)
  return `M${short(x - half)} ${y}A${bore} ${bore} 0 0 1 ${short(x + half)} ${y}H${x + block}A${block} ${block} 0 0 0 ${x - block} ${y}Z`
}

const BIG_FRAME = { cap: 100, block: 130, above: 104, below: 96, register: 13 }

export const lineBore: LearnDrawing = {
  height: 268,
  title: 'Two half circles that do not match',
  text: 'The block’s half bore is above. A new cap is bolted below it; its half circle is smaller and sits a little to one side, so there is a step at the parting face on each side. A dashed circle shows the round bore to be cut. Much metal comes off the cap all round, hatched crosswise, and a thin crescent off the block.',
  caption:
    'A new cap on an old block, the mismatch enlarged many times. The dashed circle is the bore to be cut; cross-hatched metal goes. Only a bar that is set to the crank axis can cut it.',
  body: (id) => {
    const { x, y, bore, up } = BIG
    return html`${linings(id)}${rough(id, BIG, BIG_FRAME)}
${[capMetal(BIG), blockMetal(BIG)].map((d) => html`${path(d, 'force-wash-fill')}<path d="${d}" fill="url(#${id}-cut)"/>`)}
${circle(x, y - up, bore, 'layout-blue dashed')}${line(4, y, 274, y, 'centre-line')}${line(x, 14, x, 238, 'centre-line')}
${[-85, 85].map((dx) => fastener({ x: x + dx, top: y - 56, seat: y + 96, d: 14, thread: 36 }))}
${words(x, 96, 'block’s half', 'small middle')}${words(x + 4, 160, 'cap’s half', 'small middle')}
${callout(280, 62, 'new bore', [199, 79])}${callout(280, 96, 'thin cut', [209, 112])}
${callout(280, 140, 'step', [207, 129])}${callout(280, 176, 'metal to cut', [190, 178])}${callout(280, 214, 'new cap', [236, 206])}`
  },
}

const PANEL_FRAME = { cap: 46, block: 54, above: 54, below: 50, register: 6 }

export const boreThenHone: LearnDrawing = {
  height: 200,
  title: 'Fitted, bored, honed',
  text: 'Three stages. First, the cap as fitted: two half circles that do not match. Second, bored: one round hole on the right axis, a little small, with the grooves of the tool. Third, honed: the exact size, smooth, with fine crossed scratches.',
  caption:
    'Boring makes one circle on the right axis, a little small. Honing takes the last few thousandths, to the exact size.',
  body: (id) => {
    const at = (x: number) => ({ x, y: 86, block: 32, cap: 26, capAside: 3, bore: 34, up: 1 })
    const whole = (x: number, r: number) => {
      const section = { ...PANEL_FRAME, x, y: 86, r }
      return html`${cutFace(id, 'block', blockPath(section))}${cutFace(id, 'cap', capPath(section))}`
    }
    return html`${linings(id)}${rough(id, at(60), PANEL_FRAME)}
${whole(180, 33)}${toolMarks(180, 86, 33)}${whole(300, 35)}${circle(300, 86, 35, 'layout-blue')}${crosshatch(300, 86, 35)}
${arrow(117, 86, 124, 86, 'ink')}${arrow(237, 86, 244, 86, 'ink')}
${[
  [60, '1 fitted', 'no match'],
  [180, '2 bored', 'round, small'],
  [300, '3 honed', 'exact size'],
].map(
  ([x, name, note]) =>
    html`${words(Number(x), 162, String(name), 'label middle strong')}${words(Number(x), 178, String(note), 'small middle ink-soft')}`,
)}`
  },
}

function toolMarks(x: number, y: number, r: number): Html {
  const points = Array.from({ length: 73 }, (_, i): [number, number] => {
    const angle = (i * Math.PI) / 36
    const size = r - (i % 2 === 0 ? 0 : 2.2)
    return [x + size * Math.cos(angle), y + size * Math.sin(angle)]
  })
  return polyline(points, 'ink-soft')
}

function crosshatch(x: number, y: number, r: number): Html[] {
  return Array.from({ length: 24 }, (_, i) => {
    const a = (i * Math.PI) / 12
    const b = a + 0.16
    const [inner, outer] = [r - 5, r]
    return html`${line(x + outer * Math.cos(a), y + outer * Math.sin(a), x + inner * Math.cos(b), y + inner * Math.sin(b), 'hair')}${line(x + outer * Math.cos(b), y + outer * Math.sin(b), x + inner * Math.cos(a), y + inner * Math.sin(a), 'hair')}`
  })
}

export const torqueDistortion: LearnDrawing = {
  height: 318,
  title: 'The bore keeps its shape only under the torque it was cut at',
  text: 'Two rows. Upper row: a bore is cut round with the fasteners slack or with other fasteners; when the final fasteners are tightened it goes out of round. Lower row: a bore is cut round with the final fasteners tight; slackened it is out of round, and tightened again in the same way it is round.',
  caption:
    'Distortion, hundreds of times enlarged. Above: cut with the wrong clamp, round only until the right one is applied. Below: cut with the final fasteners at their final torque, round when it runs.',
  body: () => html`${words(10, 22, 'honed with the old bolts', 'label strong')}
${shaped(90, 84, 0)}${arrow(158, 84, 200, 84, 'ink')}${shaped(268, 84, 5)}
${words(90, 146, 'at the shop: round', 'small middle')}${words(268, 146, 'with new studs: not round', 'small middle warn')}
${line(10, 162, 350, 162, 'hair')}${words(10, 184, 'honed with the final studs', 'label strong')}
${shaped(90, 246, 0)}${arrow(158, 246, 200, 246, 'ink')}${shaped(268, 246, 0)}
${words(90, 308, 'at the shop: round', 'small middle')}${words(268, 308, 'assembled: round', 'small middle good')}`,
}

/** A bore with its two fasteners; `squeeze` is how far it leaves the round, in the picture's units. */
function shaped(x: number, y: number, squeeze: number): Html {
  const points = Array.from({ length: 73 }, (_, i): [number, number] => {
    const angle = (i * Math.PI) / 36
    const r = 36 + squeeze * Math.cos(2 * angle) + 0.4 * squeeze * Math.cos(4 * angle)
    return [x + r * Math.cos(angle), y + r * Math.sin(angle)]
  })
  return html`${[-56, 56].map((dx) => html`${line(x + dx, y - 40, x + dx, y + 40, 'ink thick')}${line(x + dx - 7, y + 40, x + dx + 7, y + 40, 'ink thick')}`)}
${line(x - 64, y, x + 64, y, 'centre-line')}${squeeze === 0 ? '' : circle(x, y, 36, 'hidden-line')}${polyline(points, squeeze === 0 ? 'good' : 'warn')}`
}

export const axisShift: LearnDrawing = {
  height: 276,
  title: 'The crank axis has moved up',
  text: 'The crank sprocket is drawn dashed where it was and solid where it is, a little higher and nearer to the camshaft sprocket. The distance between the two is shorter, and the slack side of the chain bows out. Beside it, a piston at the top of its stroke stands nearer to the deck by the same amount.',
  caption:
    'The shift, enlarged. Crank and camshaft come nearer, so the chain goes slack; the piston comes up higher, so the deck clearance shrinks.',
  body: () => {
    const shift = 12
    const crank = { x: 110, y: 218 }
    return html`${circle(110, 66, 44, 'cap')}${circle(110, 66, 4, 'ink')}
${circle(crank.x, crank.y, 24, 'hidden-line')}${circle(crank.x, crank.y - shift, 24, 'cap')}${circle(crank.x, crank.y - shift, 4, 'ink')}
${line(66, 68, 86, 204, 'layout-blue')}${path('M154 66Q156 140 134 206', 'layout-blue')}${line(154, 66, 134, 206, 'hair')}
${line(24, crank.y, 330, crank.y, 'centre-line')}${line(24, crank.y - shift, 330, crank.y - shift, 'centre-line')}
${measure([200, 66], [200, crank.y - shift])}${line(112, 66, 206, 66, 'hair')}${words(206, 130, 'shorter', 'label')}
${callout(176, 42, 'cam', [126, 50])}${words(160, 176, 'slack', 'label layout-blue')}
${words(24, 240, 'was', 'small')}${words(24, 200, 'is', 'small')}${measure([60, crank.y], [60, crank.y - shift], 'force')}${words(24, 262, 'shift', 'label force strong')}${line(50, 254, 60, 222, 'hair')}
${path('M272 60V150M340 60V150', 'ink')}${line(256, 60, 356, 60, 'ink')}${path('M274 70H338V118H274Z', 'cap')}${path('M274 82H338', 'hidden-line')}
${measure([306, 60], [306, 70], 'force')}${words(356, 48, 'deck clearance', 'small end')}${words(306, 106, 'piston', 'small middle')}
${arrow(306, 198, 306, 158, 'ink')}`
  },
}

export const clearance: LearnDrawing = {
  height: 264,
  title: 'Where running clearance is measured',
  text: 'A journal in its two shells, the gap greatly enlarged. Measure vertically, at right angles to the parting line. Near the parting line the shells are thinner on purpose, so the gap there is larger and a horizontal reading misleads.',
  caption:
    'The gap, enlarged about a hundred times. The vertical is the one that counts; shells are thinner at the parting line on purpose.',
  body: () => {
    const { x, y } = { x: 140, y: 124 }
    const shell = (side: 1 | -1) =>
      `M${x - 96} ${y}A96 96 0 0 ${side > 0 ? 0 : 1} ${x + 96} ${y}H${x + 88}A88 ${82} 0 0 ${side > 0 ? 1 : 0} ${x - 88} ${y}Z`
    return html`${ring(x, y, 112, 96, 'block')}${path(shell(-1), 'bearing')}${path(shell(1), 'bearing')}
${circle(x, y, 70, 'shaft')}${line(x - 124, y, x + 124, y, 'centre-line')}${line(x, 4, x, 246, 'centre-line')}
${measure([x, y - 82], [x, y - 70], 'force')}${measure([x, y + 70], [x, y + 82], 'force')}
${measure([x + 70, y], [x + 88, y], 'ink-soft')}${words(x, y - 30, 'journal', 'label middle')}
${callout(262, 34, 'this gap', [x + 4, y - 76])}${words(262, 50, 'counts', 'label')}
${callout(262, 118, 'wider here', [x + 82, y - 2])}${words(262, 134, 'on purpose', 'label')}
${callout(262, 186, 'shell', [x + 66, y + 62])}${callout(262, 226, 'housing', [x + 66, y + 82])}`
  },
}
