import { callSoFar, confidenceWord } from './call-so-far.ts'
import { conversationProblems } from './conversation-problems.ts'
import type { ConversationView, Preset } from './conversation-view.ts'
import { exchangeList, operationNumber } from './exchanges.ts'
import { heardBack } from './heard.ts'
import { helperNote } from './helper-note.ts'
import { each, type Html, html, NOTHING } from './html.ts'
import { knownChips } from './known-chips.ts'
import { page } from './layout.ts'
import { olderLink } from './older-link.ts'
import { ownWords } from './own-words.ts'
import { questionForm } from './question-form.ts'
import { startDrawing } from './start-drawing.ts'
import { whatIfBeside } from './what-if-beside.ts'

/**
 * The guide: what was said, one question, free text, what is known, the call so far.
 * Works by plain form posts; `conversation.js` only saves the page loads.
 */
export function conversationPage(view: ConversationView): Html {
  const start = isStart(view)
  return page({
    title: title(view),
    description:
      'A guide for engine builders: main caps, studs, machining, another block or a lower target, with the figures behind it.',
    path: '/',
    units: view.units,
    link: view.link,
    wide: true,
    noindex: !start || view.helper !== undefined,
    preview: view.preview,
    scripts: ['conversation.js'],
    body: start ? startBody(view) : talkBody(view),
  })
}

function isStart({ exchanges, known, heard, helper }: ConversationView): boolean {
  if (helper?.kind === 'shop' && helper.isStart) return heard === undefined
  return (
    exchanges.length === 0 && heard === undefined && !known.some(({ state }) => state === 'said')
  )
}

function title({ question }: ConversationView): string {
  if (question?.problem) return `Error: ${question.ask}`
  return question ? question.ask : 'No question left'
}

function startBody(view: ConversationView): Html {
  return html`<div class="page-head start-head">
<div><h1>How should the crankshaft be held in this block?</h1>
<p class="lede">Keep the caps and bolts, fit studs, pay for steel caps and a line bore, find another block, or ask less of it. Describe the build; the guide works out the loads, the margins and the cost, and says what it had to assume.</p></div>
${startDrawing()}
</div>
${conversationProblems(view)}${olderLink(view.older)}${helperNote(view)}
<div class="start">
<div class="card start-words">${ownWords(view, true)}</div>
<div class="card start-question"><p class="kicker">Or take it one question at a time</p>
${ask(view)}</div>
${presets(view.presets)}
</div>`
}

function talkBody(view: ConversationView): Html {
  return html`<h1 class="kicker">The guide</h1>
${atAGlance(view)}
<div class="split guide">
<div class="talk card">
${conversationProblems(view)}${olderLink(view.older)}${helperNote(view)}
${exchangeList(view.exchanges)}
${heardBack(view)}
${whatIfBeside(view)}
${ask(view)}
${ownWords(view, false)}
</div>
<div class="aside">
${callSoFar(view)}
${knownChips(view)}
</div>
</div>`
}

/** On a phone the title block comes after the question; this line leads to it. */
function atAGlance({ sofar }: ConversationView): Html {
  if (!sofar) return NOTHING
  return html`<p class="at-a-glance"><a href="#so-far">So far: ${sofar.sentence} <span class="tag">${confidenceWord(sofar)}</span></a></p>`
}

function ask(view: ConversationView): Html {
  const { question, exchanges, sofar } = view
  if (question) return questionForm(question, view, operationNumber(exchanges.length))
  const isSure = sofar?.confidence === 'settled'
  return html`<section class="question" aria-labelledby="question">
<h2 id="question" tabindex="-1">${isSure ? 'Nothing more could change the call' : 'No question is left'}</h2>
<p>${isSure ? 'Every question that is still open leads to the same call.' : 'Some answers are not known; a usual value stands in for each, and the call says which of them could still change it.'} You can still change an answer, or try a “what if”.</p>
${sofar ? html`<p><a class="button primary" href="${sofar.href}">See the call</a></p>` : NOTHING}
</section>`
}

function presets(presets: readonly Preset[]): Html {
  if (presets.length === 0) return NOTHING
  return html`<section class="presets" aria-labelledby="presets">
<h2 id="presets">Or open an example build</h2>
<p class="hint">Invented engines, answered from end to end. Change anything in them.</p>
<ul class="preset-list">
${each(
  presets,
  ({
    title,
    summary,
    href,
  }) => html`<li class="preset"><h3><a href="${href}">${title}</a></h3><p>${summary}</p></li>
`,
)}
</ul>
</section>`
}
