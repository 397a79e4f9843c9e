import type { CheckInReport } from '../check-in/check-in.ts'
import type { Verdict } from '../check-in/judge.ts'
import { VERDICT_WORDS } from '../check-in/verdicts.ts'
import { bareLength, type Units } from '../shop-sheet/workshop-figures.ts'
import { type Html, html } from './html.ts'
import { circle, line, path, svg, words } from './svg.ts'

const PITCH = 66
const LEFT = 30
const MIDDLE = 44

/**
 * The mains in a row from the front, each with the mark of its verdict: a tick, a question, a
 * cross. How far its centre stands off the straight axis is written below it.
 */
export function mainsDrawing({ mains, offAxis }: CheckInReport, units: Units): Html {
  const width = 2 * LEFT + (mains.length - 1) * PITCH + 20
  const said = mains.map(({ main, verdict }) => `main ${main} ${nameOf(verdict)}`)
  return html`<figure class="figure mains">${svg({
    id: 'mains-drawing',
    width,
    height: offAxis.length > 0 ? 120 : 100,
    title: 'The mains from the front',
    text: `${said.join(', ')}.`,
    body: html`${line(4, MIDDLE, width - 4, MIDDLE, 'centre-line')}
${mains.map(({ main, verdict }, place) => {
  const x = LEFT + 10 + place * PITCH
  return html`${circle(x, MIDDLE, 19, 'sheet')}${circle(x, MIDDLE, 19, strokeOf(verdict))}${mark(verdict, x)}
${words(x, 14, `${main}`, 'strong middle')}${words(x, 86, shortName(verdict), 'small middle label')}
${offAxis[place] === undefined ? html`` : words(x, 106, bareLength(offAxis[place], units), 'small middle')}`
})}`,
  })}${offAxis.length > 0 ? html`<figcaption>Below each main: how far its centre stands off the best straight axis, ${units === 'us' ? 'in' : 'mm'}.</figcaption>` : html``}</figure>`
}

function nameOf(verdict: Verdict | null): string {
  return verdict === null ? 'not judged' : VERDICT_WORDS[verdict].toLowerCase()
}

function shortName(verdict: Verdict | null): string {
  return verdict === null ? 'open' : VERDICT_WORDS[verdict].toLowerCase()
}

function strokeOf(verdict: Verdict | null): string {
  if (verdict === null) return 'hair'
  return { pass: 'good', 'look-again': 'warn', 'send-back': 'force' }[verdict]
}

function mark(verdict: Verdict | null, x: number): Html {
  if (verdict === 'pass') return path(`M${x - 8} ${MIDDLE}l6 7l11 -14`, 'good mark')
  if (verdict === 'send-back') {
    return path(`M${x - 8} ${MIDDLE - 8}l16 16M${x + 8} ${MIDDLE - 8}l-16 16`, 'force mark')
  }
  return verdict === 'look-again' ? words(x, MIDDLE + 7, '?', 'strong middle query') : html``
}
