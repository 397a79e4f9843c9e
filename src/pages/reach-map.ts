import { scaleLinear } from 'd3-scale'
import { area, line as shapeLine } from 'd3-shape'
import { printFigure, printNumber } from '../../shared/print.ts'
import type { RouteId } from '../../shared/route-ids.ts'
import { figure } from './figure.ts'
import { type Html, html } from './html.ts'
import { inUnits, printIn, printSpeed, type Units } from './person-units.ts'
import { routeNumber, SHORT_TITLES } from './route-names.ts'
import { circle, line, PICTURE_WIDTH, path, short, svg, words } from './svg.ts'

/** How far each route goes. Boost in psi, gauge; 0 is naturally aspirated. */
export interface Reach {
  boundaries: readonly {
    route: RouteId
    /** The highest boost that holds at each speed, in order of speed. */
    boundary: readonly { rpm: number; boost: number }[]
  }[]
  /** This build. */
  here: { rpm: number; boost: number }
  /** The highest boost tried: a route that holds it may hold more. */
  tried: number
}

const LEFT = 40
const RIGHT = PICTURE_WIDTH - 112
const TOP = 26
const BOTTOM = 236
const LINE = 14

interface Point {
  rpm: number
  boost: number
}

/** How far each route carries the build: below and left of its line it holds. */
export function reachMap(reach: Reach, called: RouteId | null, units: Units): Html {
  const { boundaries, here, tried } = reach
  const drawn = boundaries.filter(({ boundary }) => boundary.length > 1)
  const without = boundaries.filter(({ boundary }) => boundary.length <= 1)
  const beyond = drawn.some(({ boundary }) => boundary.some(({ boost }) => boost >= tried))
  const none = without.map(({ route }) => SHORT_TITLES[route].toLowerCase())
  return figure({
    id: 'reach',
    picture: svg({
      id: 'reach-map',
      height: BOTTOM + 36,
      title: 'How far each route goes: boost against engine speed',
      text: `This build is at ${printSpeed(here.rpm)} and ${printIn(here.boost, 'psi', units)}. ${drawn.map(({ route, boundary }) => `${SHORT_TITLES[route]} holds to ${reachText(boundary, tried, units)}.`).join(' ')}`,
      body: reachBody(drawn, here, called, units),
    }),
    caption: `Under its line a route holds; above it, it does not. Which route is called rests on practice and money too. The cross is this build.${beyond ? ` Nothing above ${printIn(tried, 'psi', units)} was tried: a line that lies there may go higher.` : ''}${none.length > 0 ? ` Not drawn, because nowhere here does it hold: ${none.join(', ')}.` : ''}`,
    table: reachTable(drawn, tried, units),
  })
}

function reachText(boundary: readonly Point[], tried: number, units: Units): string {
  const [first, last] = [boundary[0], boundary.at(-1)] as [Point, Point]
  return `${boostText(first, tried, units)} at ${printSpeed(first.rpm)} and ${boostText(last, tried, units)} at ${printSpeed(last.rpm)}`
}

/** A limit is never rounded up; the end of the search is no limit, and says so. */
function boostText({ boost }: Point, tried: number, units: Units): string {
  const { value, unit } = inUnits(boost, 'psi', units)
  const decimals = units === 'us' ? 1 : 2
  const below = Math.floor(value * 10 ** decimals + 1e-9) / 10 ** decimals
  return `${printFigure(below, unit, decimals)}${boost >= tried ? ' or more' : ''}`
}

function reachBody(
  drawn: Reach['boundaries'],
  here: Point,
  called: RouteId | null,
  units: Units,
): Html {
  const all = [here, ...drawn.flatMap(({ boundary }) => boundary)]
  const own = (boost: number): number => inUnits(boost, 'psi', units).value
  const speeds = all.map(({ rpm }) => rpm)
  const x = scaleLinear()
    .domain([Math.min(...speeds), Math.max(...speeds)])
    .range([LEFT, RIGHT])
  const y = scaleLinear()
    .domain([0, Math.max(...all.map(({ boost }) => own(boost)), own(1))])
    .nice(4)
    .range([BOTTOM, TOP])
  const at = ({ rpm, boost }: Point): [number, number] => [short(x(rpm)), short(y(own(boost)))]
  const curve = shapeLine<Point>(
    (point) => at(point)[0],
    (point) => at(point)[1],
  )
  const under = area<Point>()
    .x((point) => at(point)[0])
    .y1((point) => at(point)[1])
    .y0(BOTTOM)
  const ends = drawn.map(({ route, boundary }) => ({ route, y: at(boundary.at(-1) as Point)[1] }))
  return html`${axes(x, y, units)}
${drawn.filter(({ route }) => route === called).map(({ boundary }) => path(under([...boundary]) ?? '', 'wash-fill'))}
${drawn.map(({ route, boundary }) => path(curve([...boundary]) ?? '', `route-${routeNumber(route)} dash-${routeNumber(route)}${route === called ? ' called' : ''}`))}
${endLabels(ends, called)}${hereMark(at(here))}`
}

type Axis = ((value: number) => number) & { ticks: (count: number) => number[] }

function axes(x: Axis, y: Axis, units: Units): Html {
  return html`${y.ticks(4).map((tick) => html`${line(LEFT, y(tick), RIGHT, y(tick), 'grid')}${words(LEFT - 5, y(tick) + 4, printNumber(tick, 1), 'end small')}`)}
${x.ticks(3).map((tick) => html`${line(x(tick), BOTTOM, x(tick), BOTTOM + 4, 'ink-soft')}${words(x(tick), BOTTOM + 17, printNumber(tick, 0), 'middle small')}`)}
${line(LEFT, BOTTOM, RIGHT, BOTTOM, 'ink')}${line(LEFT, TOP - 4, LEFT, BOTTOM, 'ink')}
${words(0, 11, `boost, ${units === 'us' ? 'psi' : 'bar'}`, 'small ink-soft')}${words(RIGHT, BOTTOM + 32, 'rpm', 'end small ink-soft')}`
}

/** Names at the ends of the lines, moved apart where they would touch. */
function endLabels(ends: readonly { route: RouteId; y: number }[], called: RouteId | null): Html[] {
  const placed = spreadOut(
    [...ends].sort((a, b) => a.y - b.y),
    TOP,
    BOTTOM,
  )
  return placed.map(({ route, y, at }) => {
    const name = SHORT_TITLES[route]
    return html`${line(RIGHT + 2, y, RIGHT + 9, at, 'hair')}${words(RIGHT + 12, at + 4, name, route === called ? 'small strong' : 'small')}`
  })
}

/** Each label as near to its own height as it can be, with a line's height between any two. */
export function spreadOut<T extends { y: number }>(
  sorted: readonly T[],
  top: number,
  bottom: number,
): (T & { at: number })[] {
  const heights = sorted.map(({ y }) => y)
  for (let i = 0; i < heights.length; i++) {
    const least = i === 0 ? top : (heights[i - 1] as number) + LINE
    heights[i] = Math.max(heights[i] as number, least)
  }
  for (let i = heights.length - 1; i >= 0; i--) {
    const most = i === heights.length - 1 ? bottom : (heights[i + 1] as number) - LINE
    heights[i] = Math.min(heights[i] as number, most)
  }
  return sorted.map((item, index) => ({ ...item, at: heights[index] as number }))
}

function hereMark([x, y]: [number, number]): Html {
  const leftward = x > (LEFT + RIGHT) / 2
  const above = y > TOP + 24
  return html`${circle(x, y, 6, 'worst-mark')}${line(x - 11, y, x + 11, y, 'force')}${line(x, y - 11, x, y + 11, 'force')}
${words(leftward ? x - 10 : x + 10, above ? y - 10 : y + 20, 'this build', `small strong halo${leftward ? ' end' : ''}`)}`
}

function reachTable(drawn: Reach['boundaries'], tried: number, units: Units) {
  const speeds = [...new Set(drawn.flatMap(({ boundary }) => boundary.map(({ rpm }) => rpm)))].sort(
    (a, b) => a - b,
  )
  return {
    caption: 'Highest boost that holds, by engine speed',
    head: ['Route', ...speeds.map((rpm) => `${printSpeed(rpm)}`)],
    rows: drawn.map(({ route, boundary }) => [
      SHORT_TITLES[route],
      ...speeds.map((speed) => {
        const point = boundary.find(({ rpm }) => rpm === speed)
        return point ? boostText(point, tried, units) : 'holds none'
      }),
    ]),
  }
}
