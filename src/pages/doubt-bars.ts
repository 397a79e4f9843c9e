import type { Assessment } from '../../shared/assessment.ts'
import { figure } from './figure.ts'
import { each, type Html, html, NOTHING } from './html.ts'
import { box, short, svg, words } from './svg.ts'

const ROW = 30
const LEFT = 8
const WIDTH = 300
const MOST_ROWS = 6

/** What makes the estimate unsure: how much of the spread each doubtful figure accounts for. */
export function doubtBars({ uncertainty }: Assessment): Html {
  const { shares, label, explained } = uncertainty
  const shown = shares.slice(0, MOST_ROWS)
  const first = shown[0]
  if (!first) return NOTHING
  const percent = (share: number): string => `${Math.round(100 * share)}%`
  return figure({
    id: 'doubts',
    picture: svg({
      id: 'doubt-bars',
      height: shown.length * ROW + 8,
      title: 'What makes the estimate unsure',
      text: shown.map((one) => `${one.label}: ${percent(one.share)}`).join('. '),
      body: html`${each(shown, (one, row) => bar(one.label, percent(one.share), one.share / first.share, row))}`,
    }),
    caption: `How much of the spread of the ${label} each doubtful figure accounts for; together ${percent(explained)}. Measure the first of them and the estimate gets surer.`,
    table: {
      caption: 'Shares of the spread',
      head: ['Figure in doubt', 'Share'],
      rows: shares.map((one) => [one.label, percent(one.share)]),
    },
  })
}

function bar(label: string, share: string, length: number, row: number): Html {
  const top = row * ROW + 4
  return html`${words(LEFT, top + 10, `${label}: ${share}`)}${box(LEFT, top + 15, short(Math.max(2, WIDTH * length)), 7, 'fastener')}
`
}
