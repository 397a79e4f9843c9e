import { type Html, html } from './html.ts'
import { page } from './layout.ts'
import { pageHref, type UnitSystem } from './page-href.ts'

/** What a browser without a network shows in place of a page that it has not kept. */
export function offlinePage({ units, link }: { units: UnitSystem; link: string }): Html {
  const title = 'No network here'
  const text =
    'This page was not opened on this device before, so it is not kept on it, and the guide cannot be reached now.'
  return page({
    title,
    description: text,
    path: '/offline',
    units,
    link,
    noindex: true,
    scripts: ['kept-pages.js'],
    body: html`<article class="prose">
<h1>${title}</h1>
<p class="lede">${text}</p>
<h2>What works without a network</h2>
<p>Pages that were opened before open again as they were: the guide with the answers given until then, calls, shop sheets, explanations and worksheets with their figures. The last eighty are kept, in this browser only.</p>
<h2>What does not</h2>
<p>A new answer, another figure in a worksheet and a PDF are worked out by the server. Write the figure down and give it when there is a network; nothing that was said is lost, because it is in the link.</p>
<h2>Kept on this device</h2>
<ul data-kept></ul>
<div class="actions"><a class="button primary" href="${pageHref('/', link, units)}">Go to the guide</a></div>
</article>`,
  })
}
