import type { Assessment } from '../../shared/assessment.ts'
import { printMoney } from '../../shared/print.ts'
import type { RouteId } from '../../shared/route-ids.ts'
import { capSection, type Outlines, outlines, type Place } from '../pages/cap-section.ts'
import { type CapShape, capShape, uprightFasteners } from '../pages/cap-shape.ts'
import { each, type Html, html, NOTHING, raw } from '../pages/html.ts'
import { marginText } from '../pages/margin-bars.ts'
import { printIn, type Units } from '../pages/person-units.ts'
import { arrow, line, short } from '../pages/svg.ts'
import { weakestMargin } from '../pages/weakest-margin.ts'
import { CARD_STYLE } from './card-style.ts'
import { roughWidth, wrapWords } from './wrap.ts'

/** Size that forums and messengers show whole, px. */
const CARD_WIDTH = 1200
const CARD_HEIGHT = 630

export interface CardView {
  readonly assessment: Assessment
  /** Answers in the link; none draws the card of the guide itself. */
  readonly answers: number
  /** Whether the call may be shown: never before the answers that it rests on. */
  readonly mayShow: boolean
  readonly units: Units
}

interface CardFigure {
  readonly name: string
  readonly value: string
  readonly isShort: boolean
}

const LEFT = 64
/** The picture's own frame. */
const SHEET = { x: 738, y: 112, width: 404, height: 452 }
/** Length of the greatest force, px. */
const LONGEST_ARROW = 66
const TEXT_WIDTH = SHEET.x - LEFT - 40

/** The card of a link as SVG: the call, the cap in section with its forces, the figures that decide. */
export function cardSvg(view: CardView): string {
  const shown = view.answers > 0 && view.mayShow
  return String(html`<svg xmlns="http://www.w3.org/2000/svg" width="${CARD_WIDTH}" height="${CARD_HEIGHT}" viewBox="0 0 ${CARD_WIDTH} ${CARD_HEIGHT}"><style>${raw(CARD_STYLE)}</style>
${ground()}${heading(view)}${shown ? figures(view.assessment) : NOTHING}${section(view)}
<text x="${LEFT}" y="600" font-size="19" class="mono">An estimate by handbook methods. The machinist comes first.</text></svg>`)
}

function ground(): Html {
  const across = Array.from({ length: 39 }, (_, index) => 30 * (index + 1))
  const down = Array.from({ length: 20 }, (_, index) => 30 * (index + 1))
  return html`<rect width="${CARD_WIDTH}" height="${CARD_HEIGHT}" class="paper"/>
${each(across, (x) => line(x, 0, x, CARD_HEIGHT, 'rule'))}${each(down, (y) => line(0, y, CARD_WIDTH, y, 'rule'))}
<rect width="${CARD_WIDTH}" height="76" class="plate"/><rect y="80" width="${CARD_WIDTH}" height="2" class="plate-line"/>
<text x="${LEFT}" y="51" font-size="36" class="on-plate strong">Mainstay</text>
<text x="${CARD_WIDTH - LEFT}" y="48" font-size="20" class="mono on-plate end">how the crankshaft is held</text>`
}

const SURE = { settled: 'settled', likely: 'likely', withheld: 'withheld' } as const

/** The words of the card: the call, or what the link is before there is one. */
function cardWords({ assessment, answers, mayShow }: CardView): {
  kicker: string
  text: string
} {
  const { call } = assessment
  if (answers === 0) {
    return {
      kicker: 'A guide for engine builders',
      text: 'How should the crankshaft be held in this block?',
    }
  }
  if (mayShow) return { kicker: `The call · ${SURE[call.confidence]}`, text: call.sentence }
  const count = answers === 1 ? 'One answer' : `${answers} answers`
  return { kicker: 'A case in progress', text: `${count} so far. The call needs a few more.` }
}

function heading(view: CardView): Html {
  const { kicker, text } = cardWords(view)
  const size = text.length > 150 ? 33 : text.length > 90 ? 39 : 48
  const step = size * 1.2
  const lines = wrapWords(text.replaceAll('\u00a0', ' '), TEXT_WIDTH / size, size < 39 ? 7 : 5)
  return html`<text x="${LEFT}" y="140" font-size="22" class="mono">${kicker}</text>
${each(lines, (words, index) => html`<text x="${LEFT}" y="${short(146 + step * (index + 1))}" font-size="${size}" class="strong">${words}</text>`)}${view.answers === 0 ? promise() : NOTHING}`
}

/** What the guide works out, on the card that no case has yet. */
function promise(): Html {
  const text =
    'Caps and bolts, studs, steel caps, another block or a lower target: the loads, the margins, the work that follows and what it costs.'
  const lines = wrapWords(text, TEXT_WIDTH / 29, 5)
  return html`${each(lines, (words, index) => html`<text x="${LEFT}" y="${330 + 40 * index}" font-size="29">${words}</text>`)}`
}

function figures({ routes, call, cost }: Assessment): Html {
  const keep = routes.find(({ id }) => id === 'keep-caps-and-bolts')
  const called = routes.find(({ id }) => id === call.route)
  if (!keep || !called) return NOTHING
  const { name, spread } = weakestMargin(keep.margins)
  const cells: CardFigure[] = [
    {
      name: 'weakest as it is',
      value: `${name.toLowerCase()} ${marginText(spread.likely)}`,
      isShort: spread.likely < 1,
    },
    { name: 'as called, holds in', value: `${called.holdsIn} of 100`, isShort: !called.holds },
    { name: 'likely cost', value: printMoney(cost.likely, cost.currency), isShort: false },
  ]
  const width = (TEXT_WIDTH + 20) / cells.length
  return html`${line(LEFT, 470, LEFT + TEXT_WIDTH, 470, 'scribe')}${each(
    cells,
    ({ name: label, value, isShort }, index) => {
      const x = LEFT + index * width
      // A long name of a margin gets smaller letters, so that it stays in its own cell.
      const size = Math.min(29, (width - 16) / roughWidth(value))
      return html`<text x="${short(x)}" y="502" font-size="17" class="mono">${label}</text><text x="${short(x)}" y="540" font-size="${short(size)}" class="${isShort ? 'strong warn' : 'strong'}">${value}</text>`
    },
  )}`
}

/** The cap as called, with the worst pull, the worst side push and the clamp to one scale. */
function section(view: CardView): Html {
  const { assessment, mayShow, answers } = view
  const route = answers > 0 && mayShow ? assessment.call.route : null
  const shape = capShape(assessment.build, route)
  const lines = outlines(shape)
  const room = { width: SHEET.width - 60, height: SHEET.height - (answers > 0 ? 190 : 68) }
  const height = lines.bottom - lines.top
  const scale = Math.min(room.width / (2 * lines.blockHalf), room.height / height)
  const x = SHEET.x + SHEET.width / 2
  const top = SHEET.y + 34 + (room.height - height * scale) / 2
  const place = { id: 'card', scale, x, y: top - lines.top * scale }
  return html`<rect x="${SHEET.x}" y="${SHEET.y}" width="${SHEET.width}" height="${SHEET.height}" class="sheet"/>
<rect x="${SHEET.x + 8}" y="${SHEET.y + 8}" width="${SHEET.width - 16}" height="${SHEET.height - 16}" class="frame"/>
${capSection(shape, lines, place)}${answers > 0 ? forces(view, route, shape, lines, place) : NOTHING}`
}

function forces(
  { assessment, units }: CardView,
  route: RouteId | null,
  shape: CapShape,
  lines: Outlines,
  { x, y, scale }: Place,
): Html {
  const { routes, loads } = assessment
  const clamp = (routes.find(({ id }) => id === route) ?? routes[0])?.joint.clamp ?? 0
  const { pull } = loads.worstPull
  const { side } = loads.worstSide
  const each = clamp / uprightFasteners(shape)
  const perKn = LONGEST_ARROW / Math.max(1e-6, pull, side, each)
  const d = shape.fastenerDiameter * scale
  // One unit at the end keeps the line inside the frame.
  const bare = (force: number): string => printIn(force, 'kN', units).split('\u00a0')[0] ?? ''
  const legend = [
    ['force', `pull ${bare(pull)}, side ${printIn(side, 'kN', units)}`],
    ['clamp', `clamp ${printIn(clamp, 'kN', units)}`],
  ] as const
  return html`${arrow(x, y, x, y + pull * perKn, 'force')}${arrow(x, y, x + side * perKn, y, 'force')}
${lines.seats.map((seat) => {
  const turn = (seat.lean * Math.PI) / 180
  const [ux, uy] = [Math.sin(turn), -Math.cos(turn)]
  const [hx, hy] = [x + seat.x * scale - ux * 1.6 * d, y + seat.y * scale - uy * 1.6 * d]
  return arrow(hx - ux * each * perKn, hy - uy * each * perKn, hx, hy, 'clamp')
})}
${legend.map(([look, text], index) => {
  const base = SHEET.y + SHEET.height - 54 + 28 * index
  return html`${line(SHEET.x + 30, base - 6, SHEET.x + 58, base - 6, look)}<text x="${SHEET.x + 70}" y="${base}" font-size="18" class="mono">${text}</text>`
})}`
}
