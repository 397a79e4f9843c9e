import type { Worksheet } from '../worksheets/worksheet.ts'
import { each, type Html, html } from './html.ts'
import { page } from './layout.ts'
import { pageHref, type UnitSystem } from './page-href.ts'

const SUMMARY =
  'Each piece of the reckoning alone, with the formula, the numbers in it and where it comes from.'

/** All worksheets. */
export function worksheetIndexPage(view: {
  readonly sheets: readonly Worksheet[]
  readonly units: UnitSystem
  readonly link: string
}): Html {
  const { sheets, units, link } = view
  return page({
    title: 'Worksheets',
    description: SUMMARY,
    path: '/worksheets',
    units,
    link,
    wide: true,
    body: html`<div class="page-head"><h1>Worksheets</h1><p class="lede">${SUMMARY}</p></div>
<ol class="sheets">
${each(
  sheets,
  (
    { name, title, summary },
    index,
  ) => html`<li><span class="op" aria-hidden="true">${(index + 1) * 10}</span><div><h2><a href="${pageHref(`/worksheets/${name}`, link, units)}">${title}</a></h2><p class="soft">${summary}</p></div></li>
`,
)}</ol>
<p class="soft">Each is also an endpoint of the API: <code>POST /api/worksheets/{name}</code>.</p>`,
  })
}
