import { scaleLinear } from 'd3-scale'
import { line as shapeLine } from 'd3-shape'
import { printNumber } from '../../shared/print.ts'
import type { CurvesPicture } from '../worksheets/picture.ts'
import { type Html, html } from './html.ts'
import { circle, line, PICTURE_WIDTH, path, short, words } from './svg.ts'

const LEFT = 52
const RIGHT = PICTURE_WIDTH - 10
const TOP = 22
const BOTTOM = 210
const LOOKS = { main: 'layout-blue', second: 'force', faint: 'hidden-line' } as const

/** Curves over one axis, with a key below and marks on them. */
export function curvesDrawing({ x: xName, y: yName, ticks, curves, marks }: CurvesPicture): {
  height: number
  body: Html
} {
  const all = [...curves.flatMap(({ points }) => points), ...marks.map(({ at }) => at)]
  const [xs, ys] = [all.map(([x]) => x), all.map(([, y]) => y)]
  const x = scaleLinear([Math.min(...xs), Math.max(...xs)], [LEFT, RIGHT])
  const y = scaleLinear([Math.min(0, ...ys), Math.max(...ys, 1e-9)], [BOTTOM, TOP]).nice(4)
  const shape = shapeLine<readonly [number, number]>(
    ([at]) => short(x(at)),
    ([, at]) => short(y(at)),
  )
  const up = y
    .ticks(4)
    .map(
      (tick) =>
        html`${line(LEFT, y(tick), RIGHT, y(tick), 'grid')}${words(LEFT - 5, y(tick) + 4, printNumber(tick, 2), 'end small')}`,
    )
  const along = (ticks ?? x.ticks(4)).map(
    (tick) =>
      html`${line(x(tick), BOTTOM, x(tick), BOTTOM + 5, 'ink-soft')}${words(x(tick), BOTTOM + 17, printNumber(tick, 2), 'middle small')}`,
  )
  const drawn = curves.map(({ points, look }) => path(shape([...points]) ?? '', LOOKS[look]))
  const spots = marks.map(({ label, at: [atX, atY] }) => {
    const end = x(atX) > (LEFT + RIGHT) / 2
    return html`${circle(x(atX), y(atY), 4.5, 'worst-mark')}${words(x(atX) + (end ? -9 : 9), y(atY) - 6, label, `small strong halo${end ? ' end' : ''}`)}`
  })
  const key = curves.length > 1 ? curves : []
  return {
    height: BOTTOM + 42 + 18 * key.length,
    body: html`${up}${along}${line(LEFT, BOTTOM, RIGHT, BOTTOM, 'ink')}${line(LEFT, TOP, LEFT, BOTTOM, 'ink')}
${drawn}${spots}${words(0, 12, yName, 'small ink-soft')}${words(RIGHT, BOTTOM + 34, xName, 'end small ink-soft')}
${key.map(({ label, look }, index) => html`${line(LEFT, BOTTOM + 48 + 18 * index, LEFT + 28, BOTTOM + 48 + 18 * index, LOOKS[look])}${words(LEFT + 36, BOTTOM + 52 + 18 * index, label, 'small')}`)}`,
  }
}
