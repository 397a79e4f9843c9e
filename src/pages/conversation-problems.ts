import type { Problem } from '../../shared/problem.ts'
import type { ConversationView } from './conversation-view.ts'
import { each, type Html, html, NOTHING, raw } from './html.ts'
import { linkProblems } from './link-problems.ts'
import { renderInline } from './markdown.ts'
import { problemWords } from './problem-words.ts'
import { FIELD_ID } from './question-field.ts'

/** What stands in the way, first on the page: a refused answer, then contradictions and a broken link. */
export function conversationProblems({
  question,
  contradictions,
  problems,
  link,
  units,
}: ConversationView): Html {
  return html`${question?.problem ? refused(question.problem) : NOTHING}
${each(contradictions, ({ title, text }) => html`<div class="notice danger"><h2>${title}</h2><p>${raw(renderInline(text))}</p></div>`)}
${linkProblems(problems, { link, units })}`
}

/** An error summary that leads to the field. */
function refused(problem: Problem): Html {
  return html`<div class="notice danger" id="error-summary" tabindex="-1" aria-labelledby="error-title" role="group">
<h2 id="error-title">That answer does not fit yet</h2>
<p><a href="#${FIELD_ID}">${problemWords(problem)}</a></p>
<p>Your other answers are kept.</p>
</div>`
}
