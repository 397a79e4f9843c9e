import { scaleLinear } from 'd3-scale'
import { printNumber } from '../../shared/print.ts'
import type { BarsPicture } from '../worksheets/picture.ts'
import { type Html, html } from './html.ts'
import { box, line, PICTURE_WIDTH, words } from './svg.ts'

const ROW = 44
const LEFT = 4
const RIGHT = PICTURE_WIDTH - 8

/** Bars on one scale from nought, each with a whisker from low to high; lines across all of them. */
export function barsDrawing({ bars, marks }: BarsPicture): { height: number; body: Html } {
  const most = Math.max(
    ...bars.map(({ value, high }) => Math.max(value, high ?? value)),
    ...marks.map(({ value }) => value),
    1e-9,
  )
  const x = scaleLinear().domain([0, most]).nice(4).range([LEFT, RIGHT])
  const top = 16 + 16 * marks.length
  const bottom = top + ROW * bars.length
  const grid = x
    .ticks(4)
    .map(
      (tick) =>
        html`${line(x(tick), top, x(tick), bottom, 'grid')}${words(x(tick), bottom + 15, printNumber(tick, 2), tick === 0 ? 'small' : x(tick) > RIGHT - 20 ? 'end small' : 'middle small')}`,
    )
  const rows = bars.map(({ label, value, low = value, high = value, text }, index) => {
    const y = top + ROW * index
    const middle = y + 29
    const whisker =
      high > low
        ? html`${line(x(low), middle, x(high), middle, 'ink')}${line(x(low), middle - 5, x(low), middle + 5, 'ink')}${line(x(high), middle - 5, x(high), middle + 5, 'ink')}`
        : html``
    return html`${words(LEFT, y + 14, `${label} ${text}`, 'small halo')}${box(LEFT, y + 20, x(value) - LEFT, 18, 'margin-good')}${whisker}`
  })
  const across = marks.map(({ label, value }, index) => {
    const at = x(value)
    const end = at > PICTURE_WIDTH / 2
    return html`${line(at, 8 + 16 * index, at, bottom, 'force dashed')}${words(at + (end ? -5 : 5), 13 + 16 * index, label, `small force halo${end ? ' end' : ''}`)}`
  })
  return {
    height: bottom + 22,
    body: html`${grid}${rows}${line(LEFT, top, LEFT, bottom, 'ink')}${across}`,
  }
}
