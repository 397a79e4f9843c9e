import type { CheckInReport } from '../check-in/check-in.ts'
import { say } from '../rulebook/places.ts'
import type { EngineCase } from '../shop-sheet/engine-case.ts'
import type { Measured } from '../shop-sheet/link-code.ts'
import type { ShopRules } from '../shop-sheet/shop-rules.ts'
import { shortSource } from '../shop-sheet/source-words.ts'
import { checkInForm } from './check-in-form.ts'
import { mainResults, wholeResults } from './check-in-results.ts'
import { verdictPanel } from './check-in-verdict.ts'
import { each, type Html, html, NOTHING, raw } from './html.ts'
import { page } from './layout.ts'
import { pageHref, type UnitSystem } from './page-href.ts'

export interface CheckInView {
  readonly report: CheckInReport
  readonly engine: EngineCase
  readonly measured: Measured
  readonly rules: ShopRules
  readonly units: UnitSystem
  /** The case, without measurements. */
  readonly link: string
  readonly fullLink: string
  readonly hasCase: boolean
  /** Assembly notes of the called route. */
  readonly notes: { readonly title: string; readonly html: string } | undefined
}

/** Readings in, verdicts out; the same page is the record when it is printed. */
export function checkInPage(view: CheckInView): Html {
  const { units, link, fullLink, report, notes } = view
  return page({
    title: 'Check in the block',
    description: 'Type what you measured; each main is judged against its limits.',
    path: '/check-in',
    units,
    link: fullLink,
    wide: true,
    noindex: true,
    scripts: ['check-in.js'],
    body: html`<article class="check-in">
<header class="page-head"><span class="kicker">Back from the machine shop</span>
<h1>Check in the block</h1>
<p class="lede">Type what you measured, as far as you did. Sizes, shapes, line and clearances are worked out and held against their limits, the gauge’s own error counted in.</p>
${caseLine(view)}</header>
<div data-results="verdict">${verdictPanel(view)}</div>
${checkInForm(view)}
<div data-results="details">${mainResults(report, view.rules.checkIn)}${wholeResults(report)}${howJudged(view)}</div>
<nav class="actions" aria-label="With this record">
<a class="button" href="${pageHref('/check-in.csv', fullLink, units)}" data-csv>Save as CSV</a>
<button type="button" class="button" data-print hidden>Print the record</button>
<a class="button quiet" href="${pageHref('/sheet', fullLink, units)}">The shop sheet</a>
${view.hasCase ? html`<a class="button quiet" href="${pageHref('/call', link, units)}">The call</a>` : NOTHING}
</nav>
${notes === undefined ? NOTHING : html`<section class="prose assembly" aria-labelledby="assembly"><h2 id="assembly">${notes.title}</h2>${raw(notes.html)}</section>`}
<section class="print-only record-end"><p>Measured by ______________________ on ______________ with ______________________</p></section>
</article>`,
  })
}

function caseLine({ engine, hasCase, link, units }: CheckInView): Html {
  const mains = `${engine.mains} mains`
  if (hasCase && !engine.assumed.includes('layout')) {
    return html`<p class="soft">${mains}, ${engine.cap === engine.block ? `caps and block of one metal` : `${words(engine.cap)} caps in a ${words(engine.block)} block`}.</p>`
  }
  return html`<p class="notice plain">${mains} are taken here, because the layout was not said. <a href="${pageHref('/', link, units, { ask: 'layout' })}">Say it in the guide</a> and they fit.</p>`
}

function words(id: string): string {
  return id.replaceAll('-', ' ')
}

/** How a verdict comes about, and which gauges it counts with. */
function howJudged({ rules, report }: CheckInView): Html {
  if (report.overall.verdict === null) return NOTHING
  const { blockRise, journalRise, because } = rules.warmth
  const { method, verdicts } = rules.checkIn
  const warm = say(method.warm, {
    blockRise: `${blockRise}`,
    journalRise: `${journalRise}`,
    because,
  })
  const told = (['pass', 'send-back', 'too-near', 'look-again'] as const).map(
    (one) => verdicts[one],
  )
  return html`<section class="screen-only" aria-labelledby="how-judged"><h2 id="how-judged">How it is judged</h2>
<p>${each(told, ({ words, means }) => html`<strong>${words}</strong>: ${means}. `)}(${shortSource(method.source)}.)</p>
<p>${method.limits} ${warm}</p>
<p>${method.outside.text}</p></section>`
}
