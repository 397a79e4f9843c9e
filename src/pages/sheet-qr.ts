import { encode } from 'uqr'
import { type Html, html } from './html.ts'

/** Longest text that a code still holds at a density that a phone reads from paper. */
const LONGEST = 2200

/** Rows of dark and light cells, a quiet border of four around them; undefined when too long. */
export function qrCells(text: string): readonly (readonly boolean[])[] | undefined {
  if (text.length > LONGEST) return undefined
  return encode(text, { ecc: text.length > 900 ? 'L' : 'M', border: 4 }).data
}

/** A code that leads back to this very case: a picture of squares, dark on white in every theme. */
export function qrDrawing(text: string): Html {
  const cells = qrCells(text)
  if (!cells) return html``
  const size = cells.length
  const d = cells.flatMap((row, y) =>
    runs(row).map(([x, length]) => `M${x} ${y}h${length}v1h-${length}z`),
  )
  return html`<svg class="qr" role="img" aria-label="Code that leads back to this case" viewBox="0 0 ${size} ${size}" shape-rendering="crispEdges"><rect width="${size}" height="${size}" fill="#fff"/><path fill="#000" d="${d.join('')}"/></svg>`
}

/** Runs of dark cells: start and length. */
export function runs(row: readonly boolean[]): [number, number][] {
  const found: [number, number][] = []
  row.forEach((dark, x) => {
    const last = found.at(-1)
    if (!dark) return
    if (last && last[0] + last[1] === x) last[1] += 1
    else found.push([x, 1])
  })
  return found
}
