import { each, type Html, html, NOTHING, raw } from './html.ts'
import { page } from './layout.ts'
import { renderInline } from './markdown.ts'
import { pageHref, type UnitSystem } from './page-href.ts'

/** One operation of the API as the page shows it. */
export interface ShownOperation {
  readonly id: string
  readonly method: 'get' | 'post'
  /** Whole path, such as `/api/assess`. */
  readonly path: string
  readonly title: string
  /** Markdown of plain sentences. */
  readonly text: string
  readonly examples: readonly {
    readonly title: string
    /** JSON as it is sent; undefined for GET. */
    readonly body?: string | undefined
  }[]
  /** Members of the answer. */
  readonly answers: readonly { readonly name: string; readonly text: string }[]
}

export interface ApiView {
  readonly units: UnitSystem
  readonly link: string
  /** Where this guide is reached, without a slash at the end, for the example commands. */
  readonly origin: string
  readonly operations: readonly ShownOperation[]
  /** Kinds of refusal: the last part of `type`, and what it means. */
  readonly problems: readonly { readonly kind: string; readonly title: string }[]
}

const SUMMARY =
  'The guide over HTTP: JSON in, the same call out as the pages show. No key, no session; each request carries its whole case.'

/** `/api`: what the API does, with an example of each request. */
export function apiPage(view: ApiView): Html {
  const { units, link, operations } = view
  return page({
    title: 'The API',
    description: SUMMARY,
    path: '/api',
    units,
    link,
    body: html`<div class="page-head"><h1>The API</h1><p class="lede">${SUMMARY}</p></div>
<div class="prose">
<p>The whole description, for programs: <a href="/api/openapi.json">openapi.json</a> (OpenAPI 3.1). Any page may call the API; cookies play no part. Facts, choices and units are those of <a href="/api/facts">/api/facts</a>.</p>
<ul>${each(
      operations,
      ({
        id,
        method,
        path,
        title,
      }) => html`<li><a href="#${id}"><code>${method.toUpperCase()} ${path}</code></a> ${title}</li>
`,
    )}</ul>
${each(operations, (operation) => section(view, operation))}
${answersSection(view)}
${problemsSection(view)}
<p>What the figures are worth and what they leave out: <a href="${pageHref('/method', link, units)}">the method</a>. An estimate never stands before the service manual, the fastener supplier or the machinist who has the block in hand.</p>
</div>`,
  })
}

function section({ origin }: ApiView, operation: ShownOperation): Html {
  const { id, method, path, title, text, examples, answers } = operation
  return html`<h2 id="${id}">${title}</h2>
<p><code>${method.toUpperCase()} ${path}</code></p>
<p>${raw(renderInline(text))}</p>
${each(examples, (example) => exampleOf(`${origin}${path}`, example))}
${answers.length === 0 ? NOTHING : memberTable(title, answers)}
`
}

function exampleOf(address: string, { title, body }: ShownOperation['examples'][number]): Html {
  const command =
    body === undefined
      ? `curl '${address}'`
      : `curl '${address}' -H 'content-type: application/json' --data-binary @- <<'JSON'\n${body}\nJSON`
  return html`<h3>${title}</h3>
<pre tabindex="0"><code>${command}</code></pre>
`
}

function memberTable(title: string, answers: ShownOperation['answers']): Html {
  return html`<div class="table-scroll" role="region" aria-label="Members of the answer: ${title}" tabindex="0"><table>
<thead><tr><th scope="col">In the answer</th><th scope="col">What it is</th></tr></thead>
<tbody>${each(
    answers,
    ({ name, text }) => html`<tr><th scope="row"><code>${name}</code></th><td>${text}</td></tr>
`,
  )}</tbody></table></div>`
}

function answersSection({ units, link }: ApiView): Html {
  return html`<h2 id="answers">How an answer is written</h2>
<ul>
<li>A quantity is <code>{"value": 4.03, "unit": "in"}</code> or <code>"4.03 in"</code>. A number without its unit is refused, with the units that fit.</li>
<li>A figure that is not sure carries <code>low</code> and <code>high</code>: <code>{"value": 12, "low": 10, "high": 14, "unit": "psi"}</code>.</li>
<li>Money is <code>{"value": 950, "currency": "USD"}</code> or <code>"950 USD"</code>.</li>
<li>A choice is one of the words of its fact; a thread is written as the trade does, <code>"7/16-14"</code> or <code>"M11x1.25"</code>.</li>
<li><code>"unknown"</code> answers any fact: the guide then assumes something usual and <a href="${pageHref('/method', link, units)}">says so</a>.</li>
</ul>`
}

function problemsSection({ problems }: ApiView): Html {
  return html`<h2 id="problems">Refusals</h2>
<p>A refusal is a problem document (RFC 9457, <code>application/problem+json</code>). Its <code>errors</code> name each field, what was found and what would fit; <code>kept</code> has the answers that were good, so that none is lost. The kinds are stable:</p>
<ul>${each(
    problems,
    ({ kind, title }) => html`<li id="problem-${kind}"><code>/problems/${kind}</code> ${title}</li>
`,
  )}</ul>`
}
