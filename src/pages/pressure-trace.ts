import { scaleLinear } from 'd3-scale'
import { area, line as shapeLine } from 'd3-shape'
import type { LoadReport } from '../../shared/load-report.ts'
import { printNumber } from '../../shared/print.ts'
import { figure } from './figure.ts'
import { type Html, html } from './html.ts'
import { inUnits, printIn, printSpeed, type Units } from './person-units.ts'
import { circle, line, PICTURE_WIDTH, path, short, svg, words } from './svg.ts'

type Point = LoadReport['pressureTrace'][number]

const LEFT = 42
const RIGHT = PICTURE_WIDTH - 4
const TOP = 28
const BOTTOM = 196
const STROKES = ['intake', 'compression', 'power', 'exhaust'] as const
/** The table needs no more than a figure each so many degrees. */
const TABLE_STEP = 30

/** Cylinder pressure over the four strokes, firing dead centre in the middle. */
export function pressureTrace(loads: LoadReport, units: Units): Html {
  const { peakPressure } = loads
  const trace = centred(loads.pressureTrace)
  const peak = `${printIn(peakPressure.value, 'bar', units)} at ${Math.round(peakPressure.angle)}°`
  return figure({
    id: 'pressure',
    picture: svg({
      id: 'pressure-trace',
      height: BOTTOM + 40,
      title: 'Cylinder pressure against crank angle',
      text: `At ${printSpeed(peakPressure.rpm)} the pressure peaks with ${peak} after firing dead centre.`,
      body: traceBody(trace, loads, units, peak),
    }),
    caption: `Pressure in one cylinder at ${printSpeed(peakPressure.rpm)}, the speed at which it is highest. Absolute pressure; 0° is firing dead centre.${loads.knockLimited ? ' The burn is timed later than best torque, because knock would come first.' : ''}`,
    table: {
      caption: 'Cylinder pressure by crank angle',
      head: ['Crank angle', 'Pressure'],
      rows: thinned(trace).map(({ angle, pressure }) => [
        `${printNumber(Math.round(angle), 0)}°`,
        printIn(pressure, 'bar', units),
      ]),
    },
  })
}

/** Angles from −360° to 360° in order, however the trace counts them. */
function centred(trace: readonly Point[]): Point[] {
  return trace
    .map(({ angle, pressure }) => ({ angle: angle > 360 ? angle - 720 : angle, pressure }))
    .sort((a, b) => a.angle - b.angle)
}

function thinned(trace: readonly Point[]): Point[] {
  let next = Number.NEGATIVE_INFINITY
  return trace.filter(({ angle }) => {
    if (angle < next) return false
    next = (Math.floor(angle / TABLE_STEP) + 1) * TABLE_STEP
    return true
  })
}

function traceBody(
  trace: readonly Point[],
  { peakPressure }: LoadReport,
  units: Units,
  peak: string,
): Html {
  const own = (pressure: number): number => inUnits(pressure, 'bar', units).value
  const x = scaleLinear().domain([-360, 360]).range([LEFT, RIGHT])
  const y = scaleLinear()
    .domain([0, Math.max(own(peakPressure.value), ...trace.map((point) => own(point.pressure)))])
    .nice(4)
    .range([BOTTOM, TOP])
  const across = (point: Point): number => short(x(point.angle))
  const up = (point: Point): number => short(y(own(point.pressure)))
  const points = [...trace]
  const [peakX, peakY] = [x(peakPressure.angle), y(own(peakPressure.value))]
  return html`${y.ticks(4).map((tick) => html`${line(LEFT, y(tick), RIGHT, y(tick), 'grid')}${words(LEFT - 5, y(tick) + 4, printNumber(tick, 0), 'end small')}`)}
${STROKES.map((name, index) => strokeName(name, x(-360 + 180 * index), x(-180 + 180 * index)))}
${path(area<Point>().x(across).y0(BOTTOM).y1(up)(points) ?? '', 'wash-fill')}${path(shapeLine<Point>(across, up)(points) ?? '', 'layout-blue')}
${line(LEFT, BOTTOM, RIGHT, BOTTOM, 'ink')}${line(x(0), TOP, x(0), BOTTOM, 'centre-line')}
${circle(peakX, peakY, 4, 'worst-mark')}${words(peakX + 9, peakY + 4, peak, 'small strong halo')}
${words(0, 11, units === 'us' ? 'psi, absolute' : 'bar, absolute', 'small ink-soft')}`
}

function strokeName(name: string, left: number, right: number): Html {
  const angle = name === 'intake' ? '−360°' : name === 'power' ? '0°' : ''
  return html`${line(left, BOTTOM, left, BOTTOM + 6, 'ink-soft')}${line(right, BOTTOM, right, BOTTOM + 6, 'ink-soft')}
${words((left + right) / 2, BOTTOM + 17, name === 'compression' ? 'compress' : name, 'middle small')}
${angle === '' ? '' : words(left, BOTTOM + 34, angle, `small ink-soft${name === 'power' ? ' middle' : ''}`)}${name === 'exhaust' ? words(right, BOTTOM + 34, '360°', 'end small ink-soft') : ''}`
}
