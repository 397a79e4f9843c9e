import type { CheckInReport, MainReport } from '../check-in/check-in.ts'
import { bareLength, type Units } from '../shop-sheet/workshop-figures.ts'
import { type Html, html, NOTHING } from './html.ts'
import { circle, line, path, svg, words } from './svg.ts'

const PITCH = 66
const LEFT = 30
const MIDDLE = 44

/**
 * The mains in a row from the front, each with the mark of its verdict: a tick, a plus-minus
 * where the gauge cannot tell, a question, a cross; no mark where nothing says what its size should be. How far its centre stands off the straight axis is written below it.
 */
export function mainsDrawing({ mains, offAxis }: CheckInReport, units: Units): Html {
  const width = 2 * LEFT + (mains.length - 1) * PITCH + 20
  const said = mains.map((one) => `main ${one.main} ${one.words.toLowerCase()}`)
  return html`<figure class="figure mains">${svg({
    id: 'mains-drawing',
    width,
    height: offAxis.length > 0 ? 120 : 100,
    title: 'The mains from the front',
    text: `${said.join(', ')}.`,
    body: html`${line(4, MIDDLE, width - 4, MIDDLE, 'centre-line')}
${mains.map((one, place) => {
  const x = LEFT + 10 + place * PITCH
  return html`${circle(x, MIDDLE, 19, 'sheet')}${circle(x, MIDDLE, 19, strokeOf(one))}${mark(one, x)}
${words(x, 14, `${one.main}`, 'strong middle')}${words(x, 86, one.short, 'small middle label')}
${offAxis[place] === undefined ? html`` : words(x, 106, bareLength(offAxis[place], units), 'small middle')}`
})}`,
  })}${offAxis.length > 0 ? html`<figcaption>Below each main: how far its centre stands off the best straight axis, ${units === 'us' ? 'in' : 'mm'}.</figcaption>` : html``}</figure>`
}

function strokeOf({ verdict, sizeOpen }: MainReport): string {
  if (verdict === null || (verdict === 'pass' && sizeOpen)) return 'hair'
  return { pass: 'good', 'too-near': 'warn', 'look-again': 'warn', 'send-back': 'force' }[verdict]
}

function mark({ verdict, sizeOpen }: MainReport, x: number): Html {
  if (verdict === 'pass')
    return sizeOpen ? NOTHING : path(`M${x - 8} ${MIDDLE}l6 7l11 -14`, 'good mark')
  if (verdict === 'send-back') {
    return path(`M${x - 8} ${MIDDLE - 8}l16 16M${x + 8} ${MIDDLE - 8}l-16 16`, 'force mark')
  }
  if (verdict === null) return NOTHING
  return words(x, MIDDLE + 7, verdict === 'too-near' ? '±' : '?', 'strong middle query')
}
