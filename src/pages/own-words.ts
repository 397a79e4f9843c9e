import type { ConversationView } from './conversation-view.ts'
import { type Html, html, NOTHING } from './html.ts'
import { guideAction, pageHref, shopPart } from './page-href.ts'
import { caseFields } from './question-form.ts'

const LONGEST_MESSAGE = 2000

/** The free text box: a whole build, a correction, a question, a what-if. */
export function ownWords(view: ConversationView, isStart: boolean): Html {
  const examples = isStart
    ? 'Whatever you know, in any order. For example: “4.03 × 3.48, 9.5:1, two-bolt iron block, street, 5,800 rpm”.'
    : 'More figures, a correction, “why?”, “what is a register?”, “what if I stay under 6,000?”'
  const label = isStart ? 'Tell the guide about the build' : 'Or say it in your own words'
  return html`<section class="own-words${isStart ? ' is-start' : ''}" aria-label="Your own words">
<form method="post" action="${guideAction(view.link)}" data-guide>
${caseFields(view, view.question?.fact)}
${view.compare ? html`<input type="hidden" name="supposed" value="${view.compare.keepLink}">` : NOTHING}
<div class="field">
<label for="text">${label}</label>
<p class="hint" id="text-hint">${examples}</p>
<textarea id="text" name="text" rows="3" maxlength="${LONGEST_MESSAGE}" required aria-describedby="text-hint">${view.typed ?? ''}</textarea>
</div>
<button class="button${isStart ? ' primary' : ''}" type="submit">${isStart ? 'Read it' : 'Say it'}</button>
</form>
${isStart ? NOTHING : wayBack(view)}
</section>`
}

/** Undo is a message like any other, so that it works the same typed, pressed and without script. */
function wayBack(view: ConversationView): Html {
  return html`<form class="way-back actions" method="post" action="${guideAction(view.link)}" data-guide>
${caseFields(view, view.question?.fact)}
${view.canUndo === false ? NOTHING : html`<button class="button quiet" type="submit" name="text" value="undo">Take back the last answer</button>`}
<a class="button quiet" href="${pageHref('/', shopPart(view.link), view.units)}" data-guide>Start over</a>
</form>`
}
