import type { ConversationView } from './conversation-view.ts'
import { each, type Html, html, NOTHING } from './html.ts'
import { pageHref } from './page-href.ts'

/** A what-if beside the present call. Nothing of it counts until the person keeps it. */
export function whatIfBeside({ compare, link, units }: ConversationView): Html {
  if (!compare) return NOTHING
  return html`<section class="what-if" aria-labelledby="what-if">
<p class="kicker">What if — nothing is changed yet</p>
<h2 id="what-if" tabindex="-1">${compare.title}</h2>
<div class="beside">
<div><h3 class="tag">As it stands</h3><p>${compare.present}</p></div>
<div class="then"><h3 class="tag">With the change</h3><p>${compare.other}</p></div>
</div>
<div class="table-scroll" tabindex="0" role="region" aria-label="The two side by side"><table class="compact">
<thead><tr><th scope="col">Figure</th><th scope="col" class="number">As it stands</th><th scope="col" class="number">With the change</th></tr></thead>
<tbody>
${each(
  compare.rows,
  ({
    label,
    now,
    other,
  }) => html`<tr><th scope="row">${label}</th><td class="number">${now}</td><td class="number">${other}</td></tr>
`,
)}
</tbody></table></div>
<div class="actions"><a class="button primary" href="${compare.keepHref}" data-guide>Keep the change</a>
<a class="button" href="${pageHref('/', link, units)}" data-guide>Leave it as it stands</a></div>
</section>`
}
