import { fact } from '../../shared/fact-keys.ts'
import type { Exchange } from './conversation-view.ts'
import { each, type Html, html, NOTHING } from './html.ts'

/** The last ones stay in view; the earlier ones fold away so that the question is near the top. */
const IN_VIEW = 2
/** Operations on a route sheet are numbered in tens, so that one can be put between. */
const STEP = 10

/** The operation number of the exchange or question at a place in the conversation. */
export function operationNumber(index: number): number {
  return (index + 1) * STEP
}

/** What was asked and said so far, as the operations of a job card. */
export function exchangeList(exchanges: readonly Exchange[]): Html {
  if (exchanges.length === 0) return NOTHING
  const folded = Math.max(0, exchanges.length - IN_VIEW)
  return html`<section class="talk-so-far" aria-label="What was said so far">
${folded > 0 ? foldedExchanges(exchanges.slice(0, folded)) : NOTHING}
${list(exchanges.slice(folded), folded)}
</section>`
}

function foldedExchanges(exchanges: readonly Exchange[]): Html {
  const count =
    exchanges.length === 1 ? 'The answer before' : `The ${exchanges.length} answers before`
  return html`<details class="earlier"><summary>${count}</summary>
${list(exchanges, 0)}
</details>`
}

function list(exchanges: readonly Exchange[], from: number): Html {
  return html`<ol class="exchanges" start="${from + 1}">
${each(exchanges, (exchange, index) => row(exchange, operationNumber(from + index)))}
</ol>`
}

function row(exchange: Exchange, number: number): Html {
  const { fact: key, question, answer, changeHref } = exchange
  return html`<li class="exchange">
<span class="op" aria-hidden="true">${number}</span>
<p class="asked"><span class="unseen">The guide asked: </span>${question}</p>
<p class="answered"><span class="unseen">You said: </span><span class="said">${answer}</span>${originWords(exchange)}</p>
<a class="button quiet change" href="${changeHref}" data-guide>Change<span class="unseen"> ${fact(key).short}</span></a>
</li>
`
}

function originWords({ origin, setBy }: Exchange): Html {
  if (origin === 'unknown') return html` <span class="tag">assumed instead</span>`
  if (origin === 'helper') return html` <span class="tag">set by ${setBy ?? 'your helper'}</span>`
  return NOTHING
}
