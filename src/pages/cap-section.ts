import type { CapShape } from './cap-shape.ts'
import { type Html, html } from './html.ts'
import { box, circle, line, outline, short } from './svg.ts'

/** Where a section stands on the picture: units per mm, the bore's centre. */
export interface Place {
  id: string
  scale: number
  x: number
  y: number
}

/** Outer fasteners of a splayed cap lean this far from upright; common practice. */
const SPLAY = 17
const GIRDLE_PLATE = 9
const BLOCK_ABOVE_BORE = 26

type Corner = readonly [number, number]

/** The outlines of a section in mm, x to the right and y down from the bore's centre. */
export interface Outlines {
  capHalf: number
  blockHalf: number
  top: number
  /** Lowest metal, fastener heads included. */
  bottom: number
  /** Where each upright fastener seats, and how it leans in degrees. */
  seats: readonly { x: number; y: number; lean: number }[]
  /** From the cap's own outline, right half, parting face to the middle of the crown. */
  rightEdge: readonly Corner[]
}

/** Outlines from the proportions of a build. Widths that are no fact follow the fastener's size. */
export function outlines(shape: CapShape): Outlines {
  const { span, capHeight: height, fastenerDiameter: d, pattern, boreRadius } = shape
  const half = span / 2
  const splayed = pattern === 'four-bolt-splayed'
  const outer = pattern === 'two-bolt' ? half : half + 2.4 * d
  const capHalf = splayed ? half + 3.4 * d : outer + 1.45 * d
  const plain = shape.girdle || shape.capMaterial === 'steel'
  const seatY = plain ? height : Math.max(0.74 * height, 0.62 * boreRadius + 8)
  const plate = shape.girdle ? GIRDLE_PLATE : 0
  const inner = [-half, half].map((x) => ({ x, y: (splayed ? height : seatY) + plate, lean: 0 }))
  const ear = { x: half + 2.25 * d, y: 0.62 * height, lean: SPLAY }
  const outers = splayed
    ? [{ x: -ear.x, y: ear.y, lean: -SPLAY }, ear]
    : pattern === 'two-bolt'
      ? []
      : [-outer, outer].map((x) => ({ x, y: seatY + plate, lean: 0 }))
  const skirt = isDeep(shape) ? (pattern === 'cross-bolted' ? 15 : 20) : 16
  return {
    capHalf,
    blockHalf: capHalf + skirt,
    top: -(boreRadius + BLOCK_ABOVE_BORE),
    bottom: height + plate + (plain || splayed ? 1.4 * d : 0.5 * d),
    seats: [...inner, ...outers],
    rightEdge: splayed
      ? splayedEdge(capHalf, height, half, d)
      : plain
        ? squareEdge(capHalf, height)
        : shoulderedEdge(capHalf, height, seatY, half - 1.15 * d),
  }
}

function isDeep(shape: CapShape): boolean {
  return shape.deepSkirt || shape.pattern === 'cross-bolted'
}

function squareEdge(half: number, height: number): Corner[] {
  const chamfer = 5
  return [
    [half, 0],
    [half, height - chamfer],
    [half - chamfer, height],
  ]
}

/** A cast cap: bosses under the fasteners, the crown standing proud between them. */
function shoulderedEdge(half: number, height: number, seat: number, boss: number): Corner[] {
  return [
    [half, 0],
    [half, seat],
    [boss, seat],
    [Math.max(4, boss - 5), height],
  ]
}

/** Ears whose seats lie square to the leaning fasteners. */
function splayedEdge(half: number, height: number, inner: number, d: number): Corner[] {
  const middle = inner + 2.25 * d
  const seat = (x: number): number =>
    0.62 * height + (x - middle) * Math.tan(SPLAY * (Math.PI / 180))
  return [
    [half, 0],
    [half, seat(half)],
    [inner + 1.15 * d, seat(inner + 1.15 * d)],
    [inner + 1.15 * d, height],
  ]
}

/** The section itself, without forces or words. */
export function capSection(shape: CapShape, lines: Outlines, place: Place): Html {
  const at = (corners: readonly Corner[]): string =>
    outline(corners.map(([x, y]) => [place.x + x * place.scale, place.y + y * place.scale]))
  const r = shape.boreRadius * place.scale
  const cap = [...lines.rightEdge, ...mirrored(lines.rightEdge)]
  const capPath = withBore(at(cap), place, r, 1)
  const blockPath = withBore(at(blockCorners(shape, lines)), place, r, 0)
  return html`${hatches(shape, place.id)}
${sectioned(blockPath, 'block', `${place.id}-block`)}${sectioned(capPath, 'cap', `${place.id}-cap`)}
${shape.girdle ? girdlePlate(shape, lines, place) : ''}
${shape.pattern === 'cross-bolted' ? crossBolts(shape, lines, place) : ''}
${lines.seats.map((seat) => fastener(shape, seat, place))}
${circle(place.x, place.y, r, 'bearing')}${circle(place.x, place.y, shape.journalRadius * place.scale, 'shaft')}
${line(place.x - r, place.y, place.x - shape.journalRadius * place.scale, place.y, 'ink')}
${line(place.x + shape.journalRadius * place.scale, place.y, place.x + r, place.y, 'ink')}`
}

function mirrored(corners: readonly Corner[]): Corner[] {
  return [...corners].reverse().map(([x, y]) => [-x, y])
}

/** The bore is a circle cut from both parts; drawn over them, it needs no arc in the outline. */
function withBore(d: string, place: Place, r: number, sweep: 0 | 1): string {
  const [left, right] = [short(place.x - r), short(place.x + r)]
  const y = short(place.y)
  return `${d}M${left} ${y}A${short(r)} ${short(r)} 0 0 ${sweep === 1 ? 0 : 1} ${right} ${y}Z`
}

function blockCorners(shape: CapShape, lines: Outlines): Corner[] {
  const { capHalf, blockHalf, top } = lines
  const step = shape.registerHeight
  const right: Corner[] = [[blockHalf, top]]
  if (isDeep(shape)) {
    const wall = shape.pattern === 'cross-bolted' ? capHalf + 0.8 : blockHalf - 14
    const depth = shape.capHeight * 0.98
    right.push([blockHalf, depth], [wall, depth], [wall, step])
  } else {
    right.push([blockHalf, step])
  }
  right.push([capHalf, step], [capHalf, 0])
  return [...right, ...mirrored(right)]
}

function sectioned(d: string, part: string, hatch: string): Html {
  return html`<path d="${d}" fill-rule="evenodd" class="${part}"/><path d="${d}" fill-rule="evenodd" fill="url(#${hatch})" class="section"/>`
}

/** Section lining tells materials apart without colour: iron single, steel in pairs, aluminium dashed. */
function hatches(shape: CapShape, id: string): Html {
  return html`<defs>${hatch(`${id}-block`, shape.blockMaterial, 45, 'hatch-block')}${hatch(`${id}-cap`, shape.capMaterial, -45, 'hatch-cap')}</defs>`
}

function hatch(id: string, material: string, turn: number, classes: string): Html {
  const pair = material.includes('steel')
  const dashes = material === 'aluminium' ? ' dashed' : ''
  const lines = pair ? [2, 4.5] : [3]
  return html`<pattern id="${id}" patternUnits="userSpaceOnUse" width="8" height="${pair ? 10 : 7}" patternTransform="rotate(${turn})">${lines.map((y) => line(0, y, 8, y, classes + dashes))}</pattern>`
}

/** Head or nut, shank and thread; by drafting custom a fastener is not sectioned. */
function fastener(
  shape: CapShape,
  seat: { x: number; y: number; lean: number },
  place: Place,
): Html {
  const k = place.scale
  const d = shape.fastenerDiameter * k
  const grip = seat.y * k
  const thread = 1.9 * d
  const [x, y] = [place.x + seat.x * k, place.y + seat.y * k]
  return html`<g transform="translate(${short(x)} ${short(y)}) rotate(${seat.lean})">
${box(-d / 2, -grip - thread, d, grip + thread, 'fastener')}
${[-0.32, 0.32].map((side) => line(side * d, -grip - thread, side * d, -grip, 'thread'))}
${shape.studs ? nut(d) : box(-0.8 * d, 0, 1.6 * d, 0.7 * d, 'fastener')}
${line(0, -grip - thread - 9, 0, 1.6 * d, 'centre-line')}</g>`
}

function nut(d: number): Html {
  return html`${box(-0.43 * d, 0, 0.86 * d, 1.4 * d, 'fastener')}${box(-0.95 * d, 0, 1.9 * d, 0.2 * d, 'fastener')}${box(-0.8 * d, 0.2 * d, 1.6 * d, 0.85 * d, 'fastener')}`
}

function crossBolts(shape: CapShape, lines: Outlines, { x, y, scale: k }: Place): Html {
  const d = 0.8 * shape.fastenerDiameter * k
  const height = y + 0.5 * shape.capHeight * k
  const reach = (lines.blockHalf - lines.capHalf) * k + 1.2 * d
  return html`${[-1, 1].map((side) => {
    const wall = x + side * lines.blockHalf * k
    const left = side > 0 ? wall - reach : wall
    const head = side > 0 ? wall : wall - 0.6 * d
    return html`${box(left, height - d / 2, reach, d, 'fastener')}${box(head, height - 0.8 * d, 0.6 * d, 1.6 * d, 'fastener')}`
  })}`
}

function girdlePlate(shape: CapShape, lines: Outlines, { x, y, scale: k }: Place): Html {
  const half = (isDeep(shape) ? lines.capHalf : lines.blockHalf) * k
  const under = y + shape.capHeight * k
  const post = 9 * k
  const rail = y + shape.registerHeight * k
  const posts = isDeep(shape) ? [] : [x - half, x + half - post]
  return html`${posts.map((left) => box(left, rail, post, under - rail, 'cap'))}${box(x - half, under, 2 * half, GIRDLE_PLATE * k, 'cap')}`
}
