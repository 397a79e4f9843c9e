import { type Html, html } from './html.ts'

/** Width of most pictures in their own units: narrow, so that words stay legible on a phone. */
export const PICTURE_WIDTH = 360

/** A coordinate with at most one decimal: finer is never seen and costs bytes. */
export function short(value: number): number {
  return Math.round(value * 10) / 10 + 0
}

/**
 * A drawing with its text equivalent. Everything inside is one image to a screen reader.
 *
 * @param view - `id` is unique on the page; `title` names the picture, `text` says what it shows
 */
export function svg(view: {
  id: string
  width?: number
  height: number
  title: string
  text: string
  body: unknown
}): Html {
  const { id, width = PICTURE_WIDTH, height, title, text, body } = view
  return html`<svg role="img" aria-labelledby="${id}-title ${id}-text" viewBox="0 0 ${width} ${short(height)}" xmlns="http://www.w3.org/2000/svg"><title id="${id}-title">${title}</title><desc id="${id}-text">${text}</desc>${body}</svg>`
}

/** A text at a point of a picture, escaped. */
export function words(x: number, y: number, text: string, classes = ''): Html {
  return html`<text x="${short(x)}" y="${short(y)}" class="${classes}">${text}</text>`
}

/** A straight line of a picture. */
export function line(x1: number, y1: number, x2: number, y2: number, classes: string): Html {
  return html`<line x1="${short(x1)}" y1="${short(y1)}" x2="${short(x2)}" y2="${short(y2)}" class="${classes}"/>`
}

/** An upright rectangle from its top left corner. */
export function box(x: number, y: number, width: number, height: number, classes: string): Html {
  return html`<rect x="${short(x)}" y="${short(y)}" width="${short(Math.max(0, width))}" height="${short(height)}" class="${classes}"/>`
}

/** A path from its data. */
export function path(d: string, classes: string): Html {
  return html`<path d="${d}" class="${classes}"/>`
}

/** A circle about a point. */
export function circle(x: number, y: number, radius: number, classes: string): Html {
  return html`<circle cx="${short(x)}" cy="${short(y)}" r="${short(radius)}" class="${classes}"/>`
}

/** Corners to path data, closed. */
export function outline(corners: readonly (readonly [number, number])[]): string {
  return `M${corners.map(([x, y]) => `${short(x)} ${short(y)}`).join('L')}Z`
}

/**
 * A force arrow from tail to tip, its length exactly the distance between them. The
 * head shrinks with a short arrow, so that a small force still points somewhere.
 */
export function arrow(x1: number, y1: number, x2: number, y2: number, classes: string): Html {
  const length = Math.hypot(x2 - x1, y2 - y1)
  if (length < 0.5) return html``
  const head = Math.min(9, 0.55 * length)
  const [ux, uy] = [(x2 - x1) / length, (y2 - y1) / length]
  const [bx, by] = [x2 - ux * head, y2 - uy * head]
  const half = 0.42 * head
  const tip = outline([
    [x2, y2],
    [bx - uy * half, by + ux * half],
    [bx + uy * half, by - ux * half],
  ])
  return html`${line(x1, y1, bx, by, classes)}${path(tip, `${classes} solid tip`)}`
}
