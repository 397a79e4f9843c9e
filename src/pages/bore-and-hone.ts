import { figure } from './figure.ts'
import { type Html, html } from './html.ts'
import { box, circle, line, path, short, svg, words } from './svg.ts'

const PANEL = 120
const MIDDLE = { x: 60, y: 62 }
/** Finished size as drawn; the rest is drawn many times larger than life. */
const FINISHED = 36

type Stage = 'fitted' | 'bored' | 'pulled' | 'honed'

const STAGES: Readonly<Record<Stage, { name: string; words: string }>> = {
  fitted: { name: 'new caps fitted', words: 'the half circles do not meet' },
  bored: { name: 'line bored', words: 'one tool, one straight row of holes, still small' },
  pulled: { name: 'new clamp', words: 'other fasteners pull the bore out of round' },
  honed: { name: 'line honed', words: 'stones bring it to size, round and smooth' },
}

/**
 * Why boring comes before honing, as three stages of one bore; without new caps, why honing
 * is needed at all, as two.
 */
export function boreAndHone(bored: boolean): Html {
  const stages: Stage[] = bored ? ['fitted', 'bored', 'honed'] : ['pulled', 'honed']
  const said = stages.map((stage) => `${STAGES[stage].name}: ${STAGES[stage].words}`)
  return figure({
    id: 'bore-and-hone',
    picture: svg({
      id: 'bore-stages',
      height: 150,
      title: bored ? 'Why line boring comes before line honing' : 'Why the bores are line honed',
      text: `${said.join('; ')}.`,
      body: html`${stages.map((stage, index) => panel(stage, index, (360 - stages.length * PANEL) / 2))}`,
    }),
    caption: bored
      ? 'Errors drawn many times larger than life; the dashed circle is the finished size. New caps never sit exactly where the old ones were, so the two half circles miss each other. A hone follows the hole it is put into and takes off very little: it cannot move a bore sideways. So a boring bar first cuts one straight row of holes, a little small, and the hone then brings them to size.'
      : 'Errors drawn many times larger than life; the dashed circle is the finished size. Other fasteners clamp harder and in another way, and the bore changes its shape. The hone takes off what stands inside the finished circle.',
    table: {
      caption: 'The stages of one main bore',
      head: ['Stage', 'What it leaves'],
      rows: stages.map((stage) => [STAGES[stage].name, STAGES[stage].words]),
    },
    classes: 'picture-beside',
  })
}

function panel(stage: Stage, index: number, left: number): Html {
  const { x, y } = MIDDLE
  return html`<g transform="translate(${left + index * PANEL} 0)">${box(6, 8, 108, y - 8, 'block')}${box(16, y, 88, 50, 'cap')}
${hole(stage)}${circle(x, y, FINISHED, 'ink dashed')}${line(6, y, 114, y, 'ink-soft')}${tool(stage)}
${words(x, 134, `${index + 1} ${STAGES[stage].name}`, 'middle small')}</g>`
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
