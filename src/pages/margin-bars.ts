import { scaleLinear } from 'd3-scale'
import type { RouteReport, Spread } from '../../shared/assessment.ts'
import { MARGIN_IDS, type MarginId } from '../../shared/route-ids.ts'
import { figure } from './figure.ts'
import { type Html, html } from './html.ts'
import { SHORT_TITLES } from './route-names.ts'
import { box, circle, line, outline, PICTURE_WIDTH, path, svg, words } from './svg.ts'

/** Each margin in words: its name, and what happens below 1. */
export const MARGIN_WORDS: Readonly<Record<MarginId, { name: string; below: string }>> = {
  hold: { name: 'Hold', below: 'below 1 the cap walks sideways' },
  grip: { name: 'Grip', below: 'friction alone; below 1 the faces fret' },
  separation: { name: 'Separation', below: 'below 1 the joint opens' },
  capFatigue: { name: 'Cap strength', below: 'below 1 the cap cracks in time' },
  fastenerProof: { name: 'Fastener proof', below: 'below 1 it stretches for good' },
  threadStrip: { name: 'Threads in the block', below: 'below 1 they strip' },
}

const LEFT = 128
const RIGHT = PICTURE_WIDTH - 42
const ROW = 22
const TOP = 26
const END = 3

/** Margins of every route with their spread against 1: one panel for each margin, one scale. */
export function marginBars(routes: readonly RouteReport[], called: string | null): Html {
  const cut = MARGIN_IDS.some((id) => routes.some(({ margins }) => margins[id].high > END))
  return figure({
    id: 'margins',
    picture: html`<div class="figure-grid panels">${MARGIN_IDS.map((id) => html`<div class="picture"><p class="picture-title">${MARGIN_WORDS[id].name}<span class="with">: ${MARGIN_WORDS[id].below}</span></p>${panel(id, routes, called)}</div>`)}</div>`,
    caption: `Each bar runs from the low to the high of the sampled cases, the mark is the likely value, and the upright line is 1: enough, and no more. Left of the line that margin is not enough.${cut ? ` Bars that run past ${END} end in an arrow.` : ''} The figure on the right is the likely value.`,
    table: {
      caption: 'Margins of every route: likely (low to high)',
      head: ['Route', ...MARGIN_IDS.map((id) => MARGIN_WORDS[id].name), 'Holds in'],
      rows: routes.map((route) => [
        route.title,
        ...MARGIN_IDS.map((id) => spreadText(route.margins[id])),
        `${route.holdsIn} of 100`,
      ]),
    },
    classes: 'wide',
  })
}

/** A margin as "likely (low to high)", two decimals each. */
export function spreadText({ low, likely, high }: Spread): string {
  return `${marginText(likely)} (${marginText(low)} to ${marginText(high)})`
}

/** Two decimals; what is below 1 never reads as 1.00. */
export function marginText(margin: number): string {
  return margin < 1 ? Math.min(margin, 0.99).toFixed(2) : margin.toFixed(2)
}

function panel(id: MarginId, routes: readonly RouteReport[], called: string | null): Html {
  const x = scaleLinear().domain([0, END]).range([LEFT, RIGHT]).clamp(true)
  const bottom = TOP + routes.length * ROW
  return svg({
    id: `margin-${id}`,
    height: bottom + 4,
    title: `${MARGIN_WORDS[id].name} margin of every route`,
    text: routes.map((route) => `${route.title}: ${spreadText(route.margins[id])}.`).join(' '),
    body: html`${[0, 2, 3].map((tick) => html`${line(x(tick), TOP - 6, x(tick), bottom, 'grid')}${words(x(tick), TOP - 12, String(tick), 'middle small ink-soft')}`)}
${line(x(1), TOP - 8, x(1), bottom, 'ink thick-line')}${words(x(1), TOP - 12, '1', 'middle strong')}
${routes.map((route, index) => row(route, route.margins[id], TOP + index * ROW + 10, x, route.id === called))}`,
  })
}

type Scale = (value: number) => number

function row(route: RouteReport, spread: Spread, y: number, x: Scale, called: boolean): Html {
  const [left, right] = [x(spread.low), x(spread.high)]
  const short = spread.likely < 1
  const look = `${short ? 'margin-short' : 'margin-good'}${route.possible ? '' : ' not-possible'}`
  const past = spread.high > END
  const name = `${called ? '▸ ' : ''}${SHORT_TITLES[route.id]}`
  return html`${words(0, y + 4, name, called ? 'small strong' : 'small')}
${box(left, y - 5, Math.max(1.5, right - left), 10, look)}
${
  past
    ? path(
        outline([
          [RIGHT + 7, y],
          [RIGHT, y - 5],
          [RIGHT, y + 5],
        ]),
        `${look} tip`,
      )
    : ''
}
${spread.likely > END ? '' : short ? box(x(spread.likely) - 2, y - 8, 4, 16, 'force-fill') : circle(x(spread.likely), y, 4, 'likely-mark')}
${words(PICTURE_WIDTH, y + 4, marginText(spread.likely), `end small${short ? ' force strong' : ''}`)}`
}
