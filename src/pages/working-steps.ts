import type { Assessment } from '../../shared/assessment.ts'
import { each, type Html, html, NOTHING } from './html.ts'
import { sourceText } from './reasons.ts'

/** The likely case of the called route: each equation, with this build's numbers in it. */
export function workingSteps({ working }: Assessment): Html {
  if (working.length === 0) return NOTHING
  return html`<details><summary>The called route, equation by equation</summary>
<ol class="equations">${each(
    working,
    ({ title, formula, withNumbers, result, source }) => html`<li>
<h3>${title}</h3>
<p class="formula">${formula}</p>
<p class="formula with-numbers">= ${withNumbers}</p>
<p class="formula result">= <strong>${result}</strong></p>
<p class="tag">${sourceText(source)}</p></li>
`,
  )}</ol></details>`
}
