import type { Assessment, RouteReport } from '../../shared/assessment.ts'
import type { LoadReport } from '../../shared/load-report.ts'
import { capSection, type Outlines, outlines, type Place } from './cap-section.ts'
import { type CapShape, capShape, uprightFasteners } from './cap-shape.ts'
import { crankZero } from './crank-zero.ts'
import { figure } from './figure.ts'
import { forceLedger, LEDGER_HEIGHT, type Ledger } from './force-ledger.ts'
import { type Html, html } from './html.ts'
import { printIn, printSpeed, type Units } from './person-units.ts'
import { arrow, line, PICTURE_WIDTH, svg, words } from './svg.ts'

export interface CapView {
  id: string
  /** Which hardware: "As it is now", "As called: …". */
  title: string
  shape: CapShape
  joint: RouteReport['joint']
}

export interface MainCapView {
  caps: readonly CapView[]
  worstPull: LoadReport['worstPull']
  worstSide: LoadReport['worstSide']
  /** Answer to `layout`: it says what crank angles count from. */
  layout?: unknown
  units: Units
}

const MIDDLE = PICTURE_WIDTH / 2
/** Room for the metal on either side of the bore; the rest is for words. */
const HALF_ROOM = 110
const METAL_TOP = 34
/** Least radius of a journal, as drawn, that the words beside the arrows fit into. */
const ROOM_FOR_WORDS = 28
/** Keeps a scale when there is no force at all, kN. */
const LEAST_FORCE = 1e-6
const LONGEST_ARROW = 56

/** The cap as it is, and as the call has it when that changes anything that is drawn. */
export function capViews(assessment: Assessment): CapView[] {
  const { routes, build, call } = assessment
  const present = routes.find(({ id }) => id === 'keep-caps-and-bolts') ?? routes[0]
  const called = routes.find(({ id }) => id === call.route)
  const now = present && {
    id: 'cap-now',
    title: 'As it is now',
    shape: capShape(build, null),
    joint: present.joint,
  }
  const same = !called || called === present || called.id === 'lower-the-target'
  const then = same
    ? undefined
    : {
        id: 'cap-called',
        title: `As called: ${called.title}`,
        shape: capShape(build, called.id),
        joint: called.joint,
      }
  return [now, then].filter((view) => view !== undefined)
}

/** Section through the worst main's cap, to the build's proportions, with its forces to one scale. */
export function mainCapDrawing(view: MainCapView): Html {
  const { caps, worstPull, worstSide, units } = view
  const drawn = caps.map((cap) => ({ cap, lines: outlines(cap.shape) }))
  const scale = Math.min(
    ...drawn.map(({ cap, lines }) =>
      Math.min(HALF_ROOM / lines.blockHalf, 200 / (cap.shape.capHeight - lines.top)),
    ),
  )
  const forces = caps.map((cap) => forcesOf(cap, view))
  const newton = LONGEST_ARROW / Math.max(LEAST_FORCE, ...forces.flatMap(({ arrows }) => arrows))
  const most = Math.max(LEAST_FORCE, ...forces.map(({ ledger }) => ledger.most))
  const ledgerTop = Math.max(
    ...drawn.map(({ cap, lines }) => {
      const each = cap.joint.clamp / uprightFasteners(cap.shape)
      return METAL_TOP + (lines.bottom - lines.top) * scale + Math.max(each * newton, 20) + 26
    }),
  )
  const pictures = drawn.map(({ cap, lines }, index) => {
    const ledger = { ...(forces[index] as { ledger: Ledger }).ledger, most }
    return html`<div class="picture"><p class="picture-title">${cap.title}</p>${capPicture(cap, lines, { scale, newton, view, ledger, ledgerTop })}</div>`
  })
  return figure({
    id: 'cap-section',
    picture: html`<div class="figure-grid pair">${pictures}</div>`,
    caption: `Section through one main cap, seen along the crank. Worst pull is on main ${worstPull.main} at ${printSpeed(worstPull.rpm)}, ${Math.round(worstPull.angle)}°; worst side push on main ${worstSide.main} at ${printSpeed(worstSide.rpm)}, ${Math.round(worstSide.angle)}°. ${crankZero(view.layout)} Arrows and bars are to one scale. Widths that the guide does not ask for are drawn at usual proportions.`,
    table: {
      caption: 'Forces on the worst main cap and what holds it',
      head: ['Force', ...caps.map(({ title }) => title)],
      rows: forceRows(view, units),
    },
    classes: 'wide',
  })
}

function forcesOf(cap: CapView, { worstPull, worstSide }: MainCapView) {
  const { clamp, friction, registerCapacity, crossCapacity } = cap.joint
  const ledger: Ledger = {
    pull: worstPull.pull,
    clamp,
    side: worstSide.side,
    friction,
    register: registerCapacity,
    cross: crossCapacity,
    most: Math.max(
      worstPull.pull,
      clamp,
      worstSide.side,
      friction + registerCapacity + crossCapacity,
    ),
  }
  return {
    ledger,
    arrows: [worstPull.pull, worstSide.side, clamp / uprightFasteners(cap.shape), friction / 2],
  }
}

function forceRows({ caps, worstPull, worstSide }: MainCapView, units: Units): string[][] {
  const row = (name: string, value: (cap: CapView) => number): string[] => [
    name,
    ...caps.map((cap) => printIn(value(cap), 'kN', units)),
  ]
  return [
    row('Pull away from the block', () => worstPull.pull),
    row('Clamp of all fasteners', ({ joint }) => joint.clamp),
    row('Side push', () => worstSide.side),
    row('Friction at the parting faces', ({ joint }) => joint.friction),
    row('Register', ({ joint }) => joint.registerCapacity),
    row('Cross bolts', ({ joint }) => joint.crossCapacity),
  ]
}

interface Setting {
  scale: number
  /** Picture units per kN. */
  newton: number
  view: MainCapView
  ledger: Ledger
  ledgerTop: number
}

function capPicture(cap: CapView, lines: Outlines, setting: Setting): Html {
  const { scale, view, ledger, ledgerTop } = setting
  const place: Place = { id: cap.id, scale, x: MIDDLE, y: METAL_TOP - lines.top * scale }
  return svg({
    id: cap.id,
    height: ledgerTop + LEDGER_HEIGHT,
    title: `Section through the main cap: ${cap.title}`,
    text: spoken(cap, view),
    body: html`${capSection(cap.shape, lines, place)}${dimensions(cap.shape, lines, place, view.units)}${forceArrows(cap, lines, place, setting)}${forceLedger(ledger, ledgerTop, view.units)}`,
  })
}

function spoken({ shape, joint }: CapView, { worstPull, worstSide, units }: MainCapView): string {
  const force = (value: number): string => printIn(value, 'kN', units)
  const sideways = [
    `friction of ${force(joint.friction)}`,
    ...(joint.registerCapacity > 0 ? [`a register good for ${force(joint.registerCapacity)}`] : []),
    ...(joint.crossCapacity > 0 ? [`cross bolts good for ${force(joint.crossCapacity)}`] : []),
  ]
  return `${uprightFasteners(shape)} ${shape.studs ? 'studs' : 'bolts'}${shape.pattern === 'cross-bolted' ? ' and cross bolts' : ''}${shape.girdle ? ' and a girdle' : ''} hold a ${shape.capMaterial.replace('-', ' ')} cap. The crank pulls with ${force(worstPull.pull)} against a clamp of ${force(joint.clamp)}, and pushes sideways with ${force(worstSide.side)} against ${sideways.join(', and ')}.`
}

function dimensions(shape: CapShape, lines: Outlines, place: Place, units: Units): Html {
  const { x, y, scale: k } = place
  const half = (shape.span / 2) * k
  const left = x - lines.blockHalf * k - (shape.pattern === 'cross-bolted' ? 16 : 9)
  const crown = y + shape.capHeight * k
  const size = (value: number): string => printIn(value, 'mm', units, units === 'us' ? 2 : 0)
  const wall = x + lines.capHalf * k
  const register =
    shape.registerHeight > 0 ? ['register', size(shape.registerHeight)] : ['no', 'register']
  return html`${line(x - half, 20, x + half, 20, 'hair')}${ticks([x - half, x + half], 20)}
${words(x, 14, `${size(shape.span)} between fasteners`, 'middle small')}
${line(left, y, left, crown, 'hair')}${line(left - 4, y, left + 4, y, 'hair')}${line(left - 4, crown, x - 0.6 * half, crown, 'hair')}
${words(left - 5, (y + crown) / 2 + 16, size(shape.capHeight), 'end small')}
${line(wall, y + (shape.registerHeight * k) / 2, PICTURE_WIDTH - 34, y - 26, 'hair')}
${register.map((text, index) => words(PICTURE_WIDTH, y - 43 + 13 * index, text, 'end small'))}`
}

function ticks(xs: readonly number[], y: number): Html[] {
  return xs.map((x) => line(x - 3, y + 3, x + 3, y - 3, 'ink'))
}

function forceArrows(cap: CapView, lines: Outlines, place: Place, setting: Setting): Html {
  const { x, y, scale: k } = place
  const { newton, view } = setting
  const { pull } = view.worstPull
  const { side } = view.worstSide
  const each = (cap.joint.clamp / uprightFasteners(cap.shape)) * newton
  const drag = (cap.joint.friction / 2) * newton
  const d = cap.shape.fastenerDiameter * k
  const clamps = lines.seats.map((seat) => {
    const turn = (seat.lean * Math.PI) / 180
    const [ux, uy] = [Math.sin(turn), -Math.cos(turn)]
    const [hx, hy] = [x + seat.x * k - ux * 1.55 * d, y + seat.y * k - uy * 1.55 * d]
    return arrow(hx - ux * each, hy - uy * each, hx, hy, 'clamp')
  })
  const face = x - ((cap.shape.boreRadius + lines.capHalf) / 2) * k
  return html`${arrow(x, y, x, y + pull * newton, 'force')}${arrow(x, y, x + side * newton, y, 'force')}
${cap.shape.journalRadius * k < ROOM_FOR_WORDS ? '' : html`${words(x - 3, y + 12, 'pull', 'end small')}${words(x, y - 7, 'side', 'middle small')}`}
${clamps}${words(x, y + lines.bottom * k + 22, 'clamp', 'middle small halo')}
${[-1, 1].map((way) => {
  const middle = x + way * ((cap.shape.boreRadius + lines.capHalf) / 2) * k
  return arrow(middle + drag / 2, y, middle - drag / 2, y, 'clamp')
})}
${line(52, y - 30, face, y - 3, 'hair')}${words(0, y - 34, 'friction', 'small')}`
}
