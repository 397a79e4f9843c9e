import type { Problem } from '../../shared/problem.ts'
import { type Html, html, NOTHING } from './html.ts'
import type { UnitSystem } from './page-href.ts'
import { mendingList, toAnswerAgain } from './ways-out.ts'

/**
 * Parts of a link that could not be read, each by name; the rest counts.
 *
 * @param view - the case without them, and how the person counts
 */
export function linkProblems(
  problems: readonly Problem[],
  view: { readonly link: string; readonly units: UnitSystem },
): Html {
  if (problems.length === 0) return NOTHING
  return html`<div class="notice caution"><h2>Part of this link could not be read</h2>
<p>The rest is kept. You can answer these again:</p>
${mendingList(toAnswerAgain(problems, view))}
</div>`
}
