import type { Problem } from '../../shared/problem.ts'
import { each, type Html, html, NOTHING } from './html.ts'
import { problemWords } from './problem-words.ts'

/** Parts of a link that could not be read, each by name; the rest counts. */
export function linkProblems(problems: readonly Problem[]): Html {
  if (problems.length === 0) return NOTHING
  return html`<div class="notice caution"><h2>Part of this link could not be read</h2>
<p>The rest is kept. You can answer these again:</p>
<ul>${each(problems, (problem) => html`<li>${problemWords(problem)}</li>`)}</ul>
</div>`
}
