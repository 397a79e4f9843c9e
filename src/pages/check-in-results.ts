import type { CheckInReport } from '../check-in/check-in.ts'
import type { Judged } from '../check-in/judge.ts'
import type { Worked } from '../check-in/measure-case.ts'
import { say } from '../rulebook/places.ts'
import type { CheckInRules } from '../shop-sheet/check-in-rules.ts'
import { shortSource } from '../shop-sheet/source-words.ts'
import { verdictBadge } from './check-in-verdict.ts'
import { each, type Html, html, NOTHING } from './html.ts'

/** Every main with its verdict, and all figures behind it. */
export function mainResults(
  { mains }: CheckInReport,
  { main: says, measures }: CheckInRules,
): Html {
  const measured = mains.filter(({ judged, worked }) => judged.length + worked.length > 0)
  if (measured.length === 0) return NOTHING
  return html`<section aria-labelledby="each-main"><h2 id="each-main">Each main</h2>
${each(
  measured,
  ({
    main,
    verdict,
    words,
    reasons,
    advice,
    judged,
    worked,
    missing,
    sizeOpen,
  }) => html`<details class="main-result"${verdict === 'pass' || verdict === null ? NOTHING : html` open`}><summary><span class="main-name">Main ${main}</span> ${verdictBadge({ verdict, words, sizeOpen })}</summary>
${each(reasons, (reason) => html`<p>${reason}</p>`)}${each(advice, (one) => html`<p class="note">${one}</p>`)}
${judgedTable(`Main ${main} against its limits`, judged)}
${workedList(worked)}
${missing.length === 0 ? NOTHING : html`<p class="soft">${say(says.missing, { missing: missing.map((id) => measures[id]).join(', ') })}</p>`}
</details>`,
)}</section>`
}

/** What concerns the whole engine. */
export function wholeResults({ whole }: CheckInReport): Html {
  if (whole.length === 0) return NOTHING
  return html`<section aria-labelledby="whole"><h2 id="whole">The row, and what moved with it</h2>
${each(
  whole,
  ({
    id,
    title,
    judged,
    worked,
  }) => html`<section class="whole-result" aria-labelledby="whole-${id}"><h3 id="whole-${id}">${title}</h3>
${judgedTable(title, judged)}
${each(
  judged.filter(({ verdict }) => verdict !== 'pass'),
  ({ reason, advice }) => html`<p>${reason} ${advice}</p>`,
)}
${workedList(worked)}</section>`,
)}</section>`
}

/**
 * Measures against limits, with the decimals from which each verdict follows: noughts filled up
 * would be figures that nobody worked out. Roles are spelt out because a phone shows the rows as blocks.
 */
function judgedTable(caption: string, judged: readonly Judged[]): Html {
  if (judged.length === 0) return NOTHING
  return html`<div class="table-scroll" role="region" aria-label="${caption}" tabindex="0"><table class="judged as-blocks" role="table">
<caption class="unseen">${caption}</caption>
<thead role="rowgroup"><tr role="row"><th role="columnheader" scope="col">Measure</th><th role="columnheader" scope="col">Verdict</th><th role="columnheader" scope="col" class="number">Found</th><th role="columnheader" scope="col">Limit</th><th role="columnheader" scope="col" class="number">Gauge</th><th role="columnheader" scope="col">Limit from</th></tr></thead>
<tbody role="rowgroup">${judged.map(
    ({
      title,
      text,
      limit,
      uncertainty,
      verdict,
      words,
      source,
      because,
    }) => html`<tr role="row"><th role="rowheader" scope="row">${title}</th><td role="cell" data-head="Verdict">${verdictBadge({ verdict, words })}</td><td role="cell" data-head="Found" class="number">${text}</td><td role="cell" data-head="Limit">${limit === '' ? 'not known' : limit}</td><td role="cell" data-head="Gauge" class="number">${uncertainty}</td><td role="cell" data-head="Limit from"><span>${limit === '' ? 'Service data' : capital(shortSource(source))}. <span class="soft">${because}</span></span></td></tr>
`,
  )}</tbody></table></div>`
}

function workedList(worked: readonly Worked[]): Html {
  if (worked.length === 0) return NOTHING
  return html`<dl class="pairs worked">${worked.map(
    ({ label, text }) => html`<dt>${label}</dt><dd class="figure-text">${text}</dd>
`,
  )}</dl>`
}

function capital(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`
}
