import type { OrderRule } from '../shop-sheet/sheet-rules.ts'
import { figure } from './figure.ts'
import { type Html, html } from './html.ts'
import { box, circle, line, path, short, svg, words } from './svg.ts'

const PANEL = 120
const MIDDLE = { x: 60, y: 62 }
/** Finished size as drawn; the rest is drawn many times larger than life. */
const FINISHED = 36

type Says = OrderRule['mainBore']
type Stage = keyof Says['stages']

/**
 * Why boring comes before honing, as three stages of one bore; without new caps, why honing
 * is needed at all, as two.
 */
export function boreAndHone(isBored: boolean, { bored, honed, stages: named }: Says): Html {
  const why = isBored ? bored : honed
  const stages: Stage[] = isBored ? ['fitted', 'bored', 'honed'] : ['pulled', 'honed']
  const said = stages.map((stage) => `${named[stage].name}: ${named[stage].leaves}`)
  return figure({
    id: 'bore-and-hone',
    picture: svg({
      id: 'bore-stages',
      height: 150,
      title: why.title,
      text: `${said.join('; ')}.`,
      body: html`${stages.map((stage, index) => panel(stage, `${index + 1} ${named[stage].name}`, (360 - stages.length * PANEL) / 2 + index * PANEL))}`,
    }),
    caption: why.text,
    table: {
      caption: 'The stages of one main bore',
      head: ['Stage', 'What it leaves'],
      rows: stages.map((stage) => [named[stage].name, named[stage].leaves]),
    },
    classes: 'picture-beside',
  })
}

function panel(stage: Stage, name: string, left: number): Html {
  const { x, y } = MIDDLE
  return html`<g transform="translate(${left} 0)">${box(6, 8, 108, y - 8, 'block')}${box(16, y, 88, 50, 'cap')}
${hole(stage)}${circle(x, y, FINISHED, 'ink dashed')}${line(6, y, 114, y, 'ink-soft')}${tool(stage)}
${words(x, 134, name, 'middle small')}</g>`
}

function hole(stage: Stage): Html {
  const { x, y } = MIDDLE
  if (stage === 'honed') return circle(x, y, FINISHED, 'shaft')
  if (stage === 'bored') return circle(x, y, FINISHED - 3, 'shaft')
  if (stage === 'pulled') {
    return html`<ellipse cx="${x}" cy="${y}" rx="${FINISHED - 4}" ry="${FINISHED}" class="shaft"/>`
  }
  return html`${path(half(x, FINISHED - 1, 1), 'shaft')}${path(half(x + 5, FINISHED - 6, 0), 'shaft')}`
}

/** Half a circle above (1) or below (0) the parting face. */
function half(x: number, radius: number, above: 0 | 1): string {
  return `M${short(x - radius)} ${MIDDLE.y}A${radius} ${radius} 0 0 ${above} ${short(x + radius)} ${MIDDLE.y}Z`
}

function tool(stage: Stage): Html {
  const { x, y } = MIDDLE
  if (stage === 'bored') {
    return html`${circle(x, y, 18, 'fastener')}${path(`M${x - 4} ${y - 17}L${x} ${y - FINISHED + 3}L${x + 4} ${y - 17}Z`, 'force solid')}`
  }
  if (stage !== 'honed') return html``
  return html`${circle(x, y, 11, 'fastener')}${[45, 135, 225, 315].map((turn) => html`<g transform="rotate(${turn} ${x} ${y})">${box(x - 9, y - FINISHED + 2, 18, 7, 'bearing')}${line(x, y - 11, x, y - FINISHED + 9, 'ink')}</g>`)}`
}
