import { fact } from '../../shared/fact-keys.ts'
import type { ConversationView, Question } from './conversation-view.ts'
import { type Html, html, NOTHING } from './html.ts'
import { guideAction, pageHref } from './page-href.ts'
import { questionField } from './question-field.ts'

type Case = Pick<ConversationView, 'link' | 'units'>

/** The fields that carry the case through a plain form post. */
export function caseFields({ link, units }: Case, asking?: string): Html {
  return html`<input type="hidden" name="state" value="${link}">
<input type="hidden" name="units" value="${units}">
${asking ? html`<input type="hidden" name="fact" value="${asking}">` : NOTHING}`
}

/** One question: its words, why it is asked, its control, and the way out. */
export function questionForm(
  question: Question,
  { link, units, left, needed }: Case & Pick<ConversationView, 'left' | 'needed'>,
  operation: number,
): Html {
  return html`<section class="question" aria-labelledby="question">
<p class="op-line"><span class="op" aria-hidden="true">${operation}</span><span class="tag">${leftWords(left, needed)}</span></p>
<h2 id="question" tabindex="-1">${question.ask}</h2>
<p class="note" id="question-why"><span class="unseen">Why it is asked: </span>${question.why}</p>
<form method="post" action="${guideAction(link)}" data-guide>
${caseFields({ link, units }, question.fact)}
${questionField(question, units)}
${unknown(question)}
</form>
${howTo(question)}
${leaveAsIs(question, { link, units })}
</section>`
}

function leftWords(left: number, needed: number): string {
  if (needed > 1) return `${needed} questions are needed first`
  if (needed === 1) return 'The last question that is needed'
  if (left > 1) return `${left} questions still matter`
  return left === 1 ? 'The last question that matters' : 'An answer you gave'
}

function unknown({ assumes }: Question): Html {
  return html`<div class="unknown">
<button type="submit" name="know" value="no" formnovalidate aria-describedby="assumes">I don’t know</button>
<p class="hint" id="assumes">${assumes}</p>
</div>`
}

function howTo({ fact: key, help, measure, learnHref, explained }: Question): Html {
  const more = html`${learnHref ? html`<p><a href="${learnHref}">How to find it, step by step</a></p>` : NOTHING}
${explained ? html`<p>With a drawing: <a href="${explained.href}">${explained.title}</a></p>` : NOTHING}`
  return html`<details class="how-to"><summary>What it is and how to find it<span class="unseen">: ${fact(key).short}</span></summary>
<p>${help}</p>
<p>${measure}</p>
${more}
</details>`
}

/** When an earlier answer is changed, the way back without a change. */
function leaveAsIs({ value, problem }: Question, { link, units }: Case): Html {
  if (value === undefined || problem) return NOTHING
  return html`<p><a class="button quiet" href="${pageHref('/', link, units)}" data-guide>Leave it as it is</a></p>`
}
