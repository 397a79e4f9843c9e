import { scaleLinear } from 'd3-scale'
import { curveLinearClosed, line as shapeLine } from 'd3-shape'
import type { LoadReport, WorstLoad } from '../../shared/load-report.ts'
import { crankZero } from './crank-zero.ts'
import { figure } from './figure.ts'
import { type Html, html } from './html.ts'
import { inUnits, printIn, printSpeed, type Units } from './person-units.ts'
import { circle, line, path, short, svg, words } from './svg.ts'

type Main = LoadReport['mains'][number]
type Point = Main['polar'][number]

const SIZE = 160
const CENTRE = { x: 80, y: 80 }
const RADIUS = 66

/**
 * Load on each main over two turns, as small multiples of one scale. The cap is the lower half;
 * a point further out is a greater force in that direction.
 */
export function loadDiagram(loads: LoadReport, units: Units, layout?: unknown): Html {
  const most = Math.max(
    ...loads.mains.flatMap(({ polar }) => polar.map(({ x, y }) => Math.hypot(x, y))),
    1e-6,
  )
  const rings = ringsFor(most, units)
  const { worstPull } = loads
  const open = loads.mains.some(
    (main) => !(onCurve(main, main.worstPull) && onCurve(main, main.worstSide)),
  )
  return figure({
    id: 'load-diagrams',
    picture: html`<div class="figure-grid small">${loads.mains.map((main) => html`<div class="picture">${mainPicture(main, rings, loads, units)}</div>`)}</div>`,
    caption: html`Force of the crank on each main bearing through two turns, all to one scale; the outer ring is ${rings.outer}. The shaded half is the cap. <span class="key key-dot"></span> worst pull, <span class="key key-square"></span> worst side push${open ? ' (an open mark: found at another speed or with the throttle closed)' : ''}. Main ${worstPull.main} has the worst of all: ${printIn(worstPull.pull, 'kN', units)} at ${printSpeed(worstPull.rpm)}.`,
    table: {
      caption: `Worst loads of each main. ${crankZero(layout)}`,
      head: [
        'Main',
        'Worst pull',
        'at crank angle and speed',
        'Worst side push',
        'at crank angle and speed',
        'Bearing load',
      ],
      rows: loads.mains.map((main) => mainRow(main, units)),
    },
    classes: 'wide',
  })
}

interface Rings {
  /** Picture units per kN. */
  scale: number
  radii: readonly number[]
  outer: string
}

/** Round figures in the person's unit; the outermost holds every point. */
function ringsFor(most: number, units: Units): Rings {
  const own = inUnits(most, 'kN', units)
  const perUnit = most / own.value
  const [, top] = scaleLinear().domain([0, own.value]).nice(3).domain()
  const outer = (top ?? own.value) * perUnit
  const ticks = scaleLinear()
    .domain([0, outer / perUnit])
    .ticks(3)
    .filter((tick) => tick > 0)
  const scale = RADIUS / outer
  return {
    scale,
    radii: [...new Set([...ticks.map((tick) => tick * perUnit * scale), RADIUS])],
    outer: printIn(outer, 'kN', units, 0),
  }
}

function mainPicture(main: Main, rings: Rings, loads: LoadReport, units: Units): Html {
  const at = ({ x, y }: Point): [number, number] => [
    CENTRE.x + x * rings.scale,
    CENTRE.y - y * rings.scale,
  ]
  const curve = shapeLine<Point>()
    .x((point) => short(at(point)[0]))
    .y((point) => short(at(point)[1]))
    .curve(curveLinearClosed)
  const pull = printIn(main.worstPull.pull, 'kN', units)
  const side = printIn(main.worstSide.side, 'kN', units)
  const id = `main-${main.main}`
  const worst = loads.worstPull.main === main.main
  return svg({
    id,
    width: SIZE,
    height: 202,
    title: `Load on main ${main.main} over two turns`,
    text: `Worst pull ${pull} at ${where(main.worstPull)}; worst side push ${side} at ${where(main.worstSide)}.`,
    body: html`${dial(rings, id)}${path(curve(main.polar) ?? '', 'layout-blue')}
${mark(main, main.worstPull, at, 'dot')}${mark(main, main.worstSide, at, 'square')}
${words(CENTRE.x, 166, worst ? `main ${main.main}: the worst` : `main ${main.main}`, `middle${worst ? ' strong force' : ''}`)}
${words(CENTRE.x, 182, `pull ${pull}`, 'middle small')}${words(CENTRE.x, 197, `side ${side}`, 'middle small')}`,
  })
}

/** Rings, cross, and the cap's half shaded. */
function dial({ radii }: Rings, id: string): Html {
  const { x, y } = CENTRE
  const cap = `M${x - RADIUS} ${y}A${RADIUS} ${RADIUS} 0 0 0 ${x + RADIUS} ${y}Z`
  return html`<defs><pattern id="${id}-hatch" patternUnits="userSpaceOnUse" width="6" height="6" patternTransform="rotate(-45)">${line(0, 3, 6, 3, 'hatch-soft')}</pattern></defs>
<path d="${cap}" class="cap-half"/><path d="${cap}" fill="url(#${id}-hatch)" class="section"/>
${radii.map((radius) => circle(x, y, radius, 'hair'))}${line(x - RADIUS - 8, y, x + RADIUS + 8, y, 'ink')}${line(x, y - RADIUS, x, y + RADIUS, 'hair')}
${words(0, 12, 'block', 'small ink-soft')}${words(0, 148, 'cap', 'small ink-soft')}`
}

/** The worst point: filled when it lies on the drawn curve, open at the nearest angle otherwise. */
function mark(
  main: Main,
  worst: WorstLoad,
  at: (point: Point) => [number, number],
  kind: 'dot' | 'square',
): Html {
  const nearest = main.polar.reduce<Point | undefined>(
    (best, point) =>
      best && turned(best.angle, worst.angle) <= turned(point.angle, worst.angle) ? best : point,
    undefined,
  )
  if (!nearest) return html``
  const [x, y] = at(nearest)
  const look = `worst-mark${onCurve(main, worst) ? '' : ' open'}`
  if (kind === 'dot') return circle(x, y, 4.5, look)
  return html`<rect x="${short(x - 4)}" y="${short(y - 4)}" width="8" height="8" class="${look}"/>`
}

function onCurve(main: Main, worst: WorstLoad): boolean {
  return worst.rpm === main.rpm && worst.loadCase === 'full-load'
}

/** Degrees between two crank angles of a two-turn cycle. */
function turned(a: number, b: number): number {
  const apart = (((a - b) % 720) + 720) % 720
  return Math.min(apart, 720 - apart)
}

function where({ angle, rpm, loadCase }: WorstLoad): string {
  const throttle = loadCase === 'closed-throttle' ? ', throttle closed' : ''
  return `${Math.round(angle)}°, ${printSpeed(rpm)}${throttle}`
}

function mainRow(main: Main, units: Units): string[] {
  return [
    `Main ${main.main}`,
    printIn(main.worstPull.pull, 'kN', units),
    where(main.worstPull),
    printIn(main.worstSide.side, 'kN', units),
    where(main.worstSide),
    printIn(main.unitLoad, 'MPa', units),
  ]
}
