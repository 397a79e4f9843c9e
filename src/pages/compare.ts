import type { CaseComparison } from '../../shared/comparison.ts'
import { printFigure } from '../../shared/print.ts'
import type { Problem } from '../../shared/problem.ts'
import { UNITS } from '../../shared/units.ts'
import { each, type Html, html, NOTHING } from './html.ts'
import { page } from './layout.ts'
import { linkProblems } from './link-problems.ts'
import { pageHref, shopPart, type UnitSystem } from './page-href.ts'
import { printIn } from './person-units.ts'

export interface CompareView {
  readonly units: UnitSystem
  /** The person's own case, kept by the header. */
  readonly link: string
  /** The two links as they were given. */
  readonly a: string
  readonly b: string
  readonly problems: readonly Problem[]
  /** Undefined until both links say something. */
  readonly found?: CaseComparison | undefined
}

/** Two cases side by side: the call, the numbers, the answers and the reasons. */
export function comparePage(view: CompareView): Html {
  const { units, link, a, b, found } = view
  const own = new URLSearchParams({ ...(a ? { a } : {}), ...(b ? { b } : {}) }).toString()
  return page({
    title: 'Two cases side by side',
    description: 'What differs between two links: answers, numbers, the call and its reasons.',
    path: '/compare',
    units,
    link: [link, own].filter((part) => part !== '').join('&'),
    wide: true,
    noindex: true,
    body: html`<div class="page-head"><h1>Two cases side by side</h1>
${found ? html`<p class="lede">${found.sameCall ? 'Both come to the same call.' : 'They come to different calls.'}</p>` : html`<p class="lede">Paste two links: of a case, or of an example build.</p>`}</div>
${linkProblems(view.problems, view)}
${found ? sides(found, view) : NOTHING}
${form(view)}`,
  })
}

function form({ a, b, units, link }: CompareView): Html {
  const [name = '', shop = ''] = shopPart(link).split('=')
  return html`<form method="get" action="/compare" class="card compare-form">
${name === '' ? NOTHING : html`<input type="hidden" name="${name}" value="${shop}">`}
${units === 'metric' ? html`<input type="hidden" name="units" value="metric">` : NOTHING}
<div class="field"><label for="a">First link (case A)</label><input id="a" name="a" type="text" required maxlength="8000" spellcheck="false" value="${a}"></div>
<div class="field"><label for="b">Second link (case B)</label><input id="b" name="b" type="text" required maxlength="8000" spellcheck="false" value="${b}"></div>
<button class="button primary" type="submit">Lay them side by side</button>
</form>`
}

function sides(found: CaseComparison, view: CompareView): Html {
  const { units, link } = view
  const side = (name: string, one: CaseComparison['a']): Html =>
    html`<div><h2 class="tag">${name}</h2><p>${one.sentence}</p>
<p><a href="${pageHref('/call', joined(one.link, link), units)}">The whole call<span class="unseen">, ${name.toLowerCase()} case</span></a> · <a href="${pageHref('/', joined(one.link, link), units)}">Change it<span class="unseen">, ${name.toLowerCase()} case</span></a></p></div>`
  return html`<div class="beside">${side('First', found.a)}${side('Second', found.b)}</div>
<section aria-labelledby="numbers"><h2 id="numbers">Numbers</h2>${numbers(found, units)}</section>
<section aria-labelledby="answers"><h2 id="answers">Answers</h2>${answers(found)}</section>
<section aria-labelledby="why"><h2 id="why">Reasons</h2>${findings(found.reasons)}</section>
${found.cautions.length === 0 ? NOTHING : html`<section aria-labelledby="mind"><h2 id="mind">Cautions</h2>${findings(found.cautions)}</section>`}`
}

/** The case of one side, in the frame that this page stands in. */
function joined(query: string, link: string): string {
  return [query, shopPart(link)].filter((part) => part !== '').join('&')
}

function table(name: string, rows: readonly (readonly [string, string, string])[]): Html {
  return html`<div class="table-scroll" role="region" aria-label="${name}" tabindex="0"><table class="compact">
<thead><tr><th scope="col">${name}</th><th scope="col" class="number">First</th><th scope="col" class="number">Second</th></tr></thead>
<tbody>${each(
    rows,
    ([
      label,
      a,
      b,
    ]) => html`<tr><th scope="row">${label}</th><td class="number">${a}</td><td class="number">${b}</td></tr>
`,
  )}</tbody></table></div>`
}

function numbers({ numbers: rows }: CaseComparison, units: UnitSystem): Html {
  return table(
    'Figure',
    rows.map(({ label, a, b, unitA, unitB }) => [
      label,
      figure(a, unitA, units),
      figure(b, unitB, units),
    ]),
  )
}

/** Money and counts as they are, physical figures in the person's own units. */
function figure(value: number | null, unit: string, units: UnitSystem): string {
  if (value === null) return 'none'
  const isPhysical = unit === 'kN' || Object.hasOwn(UNITS, unit)
  return isPhysical ? printIn(value, unit, units) : printFigure(Math.round(value), unit, 0)
}

function answers({ answers: rows }: CaseComparison): Html {
  const cells = (list: typeof rows) =>
    list.map(({ label, a, b }) => [label, a ?? 'open', b ?? 'open'] as const)
  const differ = rows.filter(({ same }) => !same)
  const same = rows.filter((row) => row.same)
  return html`${differ.length === 0 ? html`<p>No answer differs.</p>` : table('Answers that differ', cells(differ))}
${same.length === 0 ? NOTHING : html`<details><summary>${same.length} that are the same</summary>${table('Answers that are the same', cells(same))}</details>`}`
}

const WHERE = { both: 'Both', a: 'First only', b: 'Second only' } as const

function findings(rows: CaseComparison['reasons']): Html {
  return html`<ul class="compared-findings">${each(
    rows,
    ({ title, in: where }) => html`<li><span class="tag">${WHERE[where]}</span> ${title}</li>
`,
  )}</ul>`
}
