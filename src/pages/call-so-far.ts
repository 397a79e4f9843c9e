import type { ConversationView, SoFar } from './conversation-view.ts'
import { type Html, html, NOTHING } from './html.ts'

const CONFIDENCE: Readonly<Record<SoFar['confidence'], { word: string; meaning: string }>> = {
  settled: { word: 'Settled', meaning: 'No open answer can change it.' },
  likely: { word: 'Likely', meaning: 'An open answer could still change it.' },
  withheld: { word: 'Withheld', meaning: 'Two answers cannot both be true; mend one first.' },
}

/** Likely, but resting on assumed answers that a call needs. */
const FIRST_GUESS = {
  word: 'First guess',
  meaning: 'Answers that a call needs are assumed: it says where to look, not what to buy.',
}

/** Of a lowered target the route is settled, not how far it goes down. */
const ROUTE_SETTLED = 'No open answer can change the route.'

function surenessOf({ confidence, isGuess, targetMoves }: Sureness): Surely {
  const { word, meaning } =
    confidence === 'likely' && isGuess ? FIRST_GUESS : CONFIDENCE[confidence]
  if (targetMoves === undefined) return { word, meaning }
  return { word, meaning: `${confidence === 'settled' ? ROUTE_SETTLED : meaning} ${targetMoves}` }
}

interface Surely {
  readonly word: string
  readonly meaning: string
}

type Sureness = Pick<SoFar, 'confidence' | 'isGuess' | 'targetMoves'>

/** How sure a call is, in a word. */
export function confidenceWord(sofar: Sureness): string {
  return surenessOf(sofar).word.toLowerCase()
}

/** How sure a call is and what that means, as plain text. */
export function surenessText(sofar: Sureness): string {
  return `How sure: ${confidenceWord(sofar)}. ${surenessOf(sofar).meaning}`
}

/** The badge that says how sure a call is, in a word and an outline. */
export function confidenceBadge(sofar: Sureness): Html {
  return html`<span class="badge is-${sofar.confidence}">${surenessOf(sofar).word}</span>`
}

/** The title block of the sheet: the call so far, how sure it is, what still matters. */
export function callSoFar(view: ConversationView): Html {
  const { sofar, left, question } = view
  return html`<section class="title-block" aria-labelledby="so-far">
<div class="cell"><h2 class="tag" id="so-far">The call so far</h2>
<p class="verdict">${sofar ? sofar.sentence : 'No call yet. It needs a few answers to rest on.'}</p></div>
${sofar ? sureness(sofar, left) : NOTHING}
<div class="cell${sofar ? ' half' : ''}"><span class="tag">Questions left</span>
<p class="left-count">${questionsLeft(view)}</p></div>
${sofar ? html`<div class="cell"><a class="button${question ? '' : ' primary'}" href="${sofar.href}">${question ? 'Stop here and see the call' : 'See the call'}</a></div>` : NOTHING}
</section>`
}

function sureness(sofar: SoFar, left: number): Html {
  const { confidence, isGuess, targetMoves } = sofar
  // Every question is answered, but "I don't know" is an answer too.
  const meaning =
    confidence === 'likely' && left === 0 && !isGuess
      ? `A figure that is not known could still change it. ${targetMoves ?? ''}`.trim()
      : surenessOf(sofar).meaning
  return html`<div class="cell half"><span class="tag">How sure</span>
<p>${confidenceBadge(sofar)}</p>
<p class="hint">${meaning}</p></div>`
}

function questionsLeft({ left, needed, givenUp, sofar }: ConversationView): Html {
  if (needed > 0) {
    return html`<span class="stamp">${needed}</span> needed first, then only what could still change the call`
  }
  if (left > 0) {
    const beside = givenUp > 0 ? `, beside ${givenUp} that you do not know` : ''
    return html`<span class="stamp">${left}</span> could still change the call${beside}`
  }
  const words =
    sofar?.confidence === 'settled'
      ? `None could change the ${sofar.targetMoves ? 'route' : 'call'}.`
      : givenUp > 0
        ? `to ask; ${givenUp} that you do not know could still change the call`
        : 'All are answered.'
  return html`<span class="stamp">0</span> ${words}`
}
