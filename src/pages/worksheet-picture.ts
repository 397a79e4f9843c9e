import type { Picture } from '../worksheets/picture.ts'
import { figure } from './figure.ts'
import { type Html, html } from './html.ts'
import { svg } from './svg.ts'
import { barsDrawing } from './worksheet-bars.ts'
import { boresDrawing } from './worksheet-bores.ts'
import { curvesDrawing } from './worksheet-curves.ts'
import { fitDrawing } from './worksheet-fit.ts'
import { polarDrawings } from './worksheet-polar.ts'

/** The picture of a worksheet, with its text equivalent and its figures as a table. */
export function worksheetPicture(picture: Picture): Html {
  const { title, text, caption, table } = picture
  if (picture.kind === 'polar') {
    const drawings = html`<div class="figure-grid small">${polarDrawings(picture)}</div>`
    return figure({ id: 'picture', picture: drawings, caption, table })
  }
  const { height, body } = drawingOf(picture)
  return figure({
    id: 'picture',
    picture: svg({ id: 'drawing', height, title, text, body }),
    caption,
    table,
  })
}

function drawingOf(picture: Exclude<Picture, { kind: 'polar' }>): { height: number; body: Html } {
  switch (picture.kind) {
    case 'bars':
      return barsDrawing(picture)
    case 'curves':
      return curvesDrawing(picture)
    case 'bores':
      return boresDrawing(picture)
    case 'fit':
      return fitDrawing(picture)
  }
}
