import { curveLinearClosed, line as shapeLine } from 'd3-shape'
import type { PolarPicture } from '../worksheets/picture.ts'
import { type Html, html } from './html.ts'
import { circle, line, path, short, svg, words } from './svg.ts'

const SIZE = 160
const CENTRE = 80
const RADIUS = 66

/** One dial a main, all to one scale; the shaded half is the cap. */
export function polarDrawings({ mains, title }: PolarPicture): Html[] {
  const most = Math.max(
    1e-9,
    ...mains.flatMap(({ points }) => points.map(([x, y]) => Math.hypot(x, y))),
  )
  const scale = RADIUS / most
  const shape = shapeLine<readonly [number, number]>(
    ([x]) => short(CENTRE + x * scale),
    ([, y]) => short(CENTRE - y * scale),
  ).curve(curveLinearClosed)
  return mains.map(({ label, points, lines }, index) => {
    const half = `M${CENTRE - RADIUS} ${CENTRE}A${RADIUS} ${RADIUS} 0 0 0 ${CENTRE + RADIUS} ${CENTRE}Z`
    const body = html`${path(half, 'cap-half')}${circle(CENTRE, CENTRE, RADIUS, 'hair')}${circle(CENTRE, CENTRE, RADIUS / 2, 'hair')}
${line(CENTRE - RADIUS - 8, CENTRE, CENTRE + RADIUS + 8, CENTRE, 'ink')}${line(CENTRE, CENTRE - RADIUS, CENTRE, CENTRE + RADIUS, 'hair')}
${words(0, 12, 'block', 'small ink-soft')}${words(0, 148, 'cap', 'small ink-soft')}
${path(shape([...points]) ?? '', 'layout-blue')}${words(CENTRE, 166, label, 'middle')}
${lines.map((one, place) => words(CENTRE, 182 + 15 * place, one, 'middle small'))}`
    return html`<div class="picture">${svg({
      id: `main-${index + 1}`,
      width: SIZE,
      height: 172 + 15 * lines.length,
      title: `${title}: ${label}`,
      text: lines.join('; '),
      body,
    })}</div>`
  })
}
