import { type Html, html } from './html.ts'
import { box, circle, line, path } from './svg.ts'

/** A small drawing of an operation, 64 by 48; decoration beside words that say the same. */
export function workGlyph(id: string): Html {
  const found = GLYPHS.find(([pattern]) => pattern.test(id))
  const body = found ? found[1]() : cap()
  return html`<svg class="glyph" viewBox="0 0 64 48" width="64" height="48" aria-hidden="true" focusable="false">${body}</svg>`
}

const GLYPHS: readonly (readonly [RegExp, () => Html])[] = [
  [/send|ship|shop|crate/, crate],
  [/hone/, hone],
  [/bore|boring/, bore],
  [/order|mixed|mark|number/, numbered],
  [/clearance|measure|check/, gauge],
  [/stud|fastener|bolt|torque|tighten/, stud],
  [/clean|wash/, wash],
  [/strip|bare|tear/, bare],
]

/** Half circle cut into a block's web. */
function bare(): Html {
  return path('M4 6h56v24H46a14 14 0 0 0-28 0H4z', 'block')
}

function cap(): Html {
  return html`${path('M4 4h56v18H46a14 14 0 0 0-28 0H4z', 'block')}${path('M6 24h12a14 14 0 0 0 28 0h12v14l-4 6H10l-4-6z', 'cap')}`
}

function numbered(): Html {
  return html`${[0, 1, 2].map((index) => {
    const x = 2 + index * 21
    return html`${path(`M${x} 14h4a5 5 0 0 0 10 0h4v18H${x}z`, 'cap')}<text x="${x + 9}" y="30" class="middle small">${index + 1}</text>`
  })}`
}

function crate(): Html {
  return html`${box(6, 14, 34, 26, 'block')}${line(6, 14, 40, 40, 'ink-soft')}${line(40, 14, 6, 40, 'ink-soft')}${path('M44 27h14m-6-6 6 6-6 6', 'layout-blue')}`
}

/** A bar with one tool through a row of webs. */
function bore(): Html {
  return html`${[4, 24, 44].map((x) => html`${box(x, 4, 14, 12, 'block')}${box(x, 32, 14, 12, 'cap')}`)}${box(0, 20, 64, 8, 'fastener')}${path('M29 20l2-4 2 4z', 'force solid')}`
}

/** Stones pressed out against the bores. */
function hone(): Html {
  return html`${[4, 24, 44].map((x) => html`${box(x, 4, 14, 10, 'block')}${box(x, 34, 14, 10, 'cap')}`)}${box(2, 15, 60, 4, 'bearing')}${box(2, 29, 60, 4, 'bearing')}${line(0, 24, 64, 24, 'ink')}${line(20, 19, 20, 29, 'ink')}${line(44, 19, 44, 29, 'ink')}`
}

function stud(): Html {
  return html`${box(27, 4, 10, 40, 'fastener')}${box(20, 26, 24, 10, 'fastener')}${[7, 11, 15, 19].map((y) => line(27, y, 37, y - 2, 'ink-soft'))}`
}

function gauge(): Html {
  return html`${circle(32, 24, 20, 'bearing')}${circle(32, 24, 15, 'shaft')}${path('M32 2v9m-3-3 3 3 3-3M12 24h5m-3-3 3 3-3 3', 'force')}`
}

function wash(): Html {
  return html`${path('M4 30h56v12H4z', 'block')}${[14, 28, 42].map((x) => path(`M${x} 6c5 8 6 9 6 12a6 6 0 0 1-12 0c0-3 1-4 6-12z`, 'layout-blue'))}`
}
