import { scaleLinear } from 'd3-scale'
import { line as shapeLine } from 'd3-shape'
import type { LoadReport } from '../../shared/load-report.ts'
import { printNumber } from '../../shared/print.ts'
import { figure } from './figure.ts'
import { type Html, html } from './html.ts'
import { inUnits, printIn, printSpeed, type Units } from './person-units.ts'
import { spreadOut } from './reach-map.ts'
import { circle, line, PICTURE_WIDTH, path, short, svg, words } from './svg.ts'

const LEFT = 52
const RIGHT = PICTURE_WIDTH - 82
const TOP = 28
const BOTTOM = 196

type Row = LoadReport['curve'][number]

const LINES = [
  { key: 'worstPull', name: 'pull', look: 'force' },
  { key: 'worstSide', name: 'side push', look: 'layout-blue dashed' },
] as const

/** The worst pull and side push on any cap at full load, over engine speed. */
export function loadBySpeed(loads: LoadReport, units: Units): Html {
  const rows = [...loads.curve].sort((a, b) => a.rpm - b.rpm)
  return figure({
    id: 'load-by-speed',
    picture: svg({
      id: 'speed-curve',
      height: BOTTOM + 40,
      title: 'Worst pull and side push over engine speed',
      text: rows
        .map(
          (row) =>
            `${printSpeed(row.rpm)}: pull ${printIn(row.worstPull, 'kN', units)}, side push ${printIn(row.worstSide, 'kN', units)}.`,
        )
        .join(' '),
      body: rows.length > 1 ? curves(rows, units) : html``,
    }),
    caption:
      'The greatest load on any cap at full load, speed by speed. The dots mark the worst of each.',
    table: {
      caption: 'Worst loads by engine speed',
      head: ['Speed', 'Pull', 'Side push'],
      rows: rows.map((row) => [
        `${printSpeed(row.rpm)}`,
        printIn(row.worstPull, 'kN', units),
        printIn(row.worstSide, 'kN', units),
      ]),
    },
  })
}

function curves(rows: readonly Row[], units: Units): Html {
  const own = (force: number): number => inUnits(force, 'kN', units).value
  const [first, last] = [rows[0], rows.at(-1)] as [Row, Row]
  const x = scaleLinear().domain([first.rpm, last.rpm]).range([LEFT, RIGHT])
  const most = Math.max(...rows.flatMap((row) => LINES.map(({ key }) => own(row[key]))), 1e-6)
  const y = scaleLinear().domain([0, most]).nice(4).range([BOTTOM, TOP])
  const ends = LINES.map((one) => ({ ...one, y: y(own(last[one.key])) }))
  return html`${y.ticks(4).map((tick) => html`${line(LEFT, y(tick), RIGHT, y(tick), 'grid')}${words(LEFT - 5, y(tick) + 4, printNumber(tick, 0), 'end small')}`)}
${x.ticks(3).map((tick) => html`${line(x(tick), BOTTOM, x(tick), BOTTOM + 4, 'ink-soft')}${words(x(tick), BOTTOM + 17, printNumber(tick, 0), 'middle small')}`)}
${line(LEFT, BOTTOM, RIGHT, BOTTOM, 'ink')}${line(LEFT, TOP - 4, LEFT, BOTTOM, 'ink')}
${LINES.map(({ key, look }) => {
  const at = (row: Row): [number, number] => [short(x(row.rpm)), short(y(own(row[key])))]
  const curve = shapeLine<Row>(
    (row) => at(row)[0],
    (row) => at(row)[1],
  )
  const top = rows.reduce((best, row) => (row[key] > best[key] ? row : best))
  return html`${path(curve([...rows]) ?? '', look)}${circle(...at(top), 4, 'worst-mark')}`
})}
${spreadOut(
  [...ends].sort((a, b) => a.y - b.y),
  TOP,
  BOTTOM,
).map(
  ({ name, at, y: end }) =>
    html`${line(RIGHT + 2, end, RIGHT + 8, at, 'hair')}${words(RIGHT + 11, at + 4, name, 'small')}`,
)}
${words(0, 11, units === 'us' ? 'lbf' : 'kN', 'small ink-soft')}${words(RIGHT, BOTTOM + 32, 'rpm', 'end small ink-soft')}`
}
