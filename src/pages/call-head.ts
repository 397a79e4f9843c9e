import { type Assessment, stillOpen } from '../../shared/assessment.ts'
import { fact, isFactKey } from '../../shared/fact-keys.ts'
import { printMoney } from '../../shared/print.ts'
import { confidenceBadge } from './call-so-far.ts'
import { each, type Html, html, NOTHING } from './html.ts'
import { moneyRange } from './money-range.ts'
import { pageHref } from './page-href.ts'
import { printIn, printSpeed } from './person-units.ts'
import { type CaseView, sentence, sourceText } from './reasons.ts'
import type { WorkStep } from './work-order.ts'

/** The call in one sentence, and how sure it is. */
export function callHead(
  { call, next, assumptions }: Assessment,
  view: CaseView,
  guessed: readonly string[] = [],
): Html {
  const isGuess = guessed.length > 0
  return html`<header class="page-head call-head"><span class="kicker">The call</span>
<h1>${headline(call.sentence)}</h1>
<p class="how-sure">${confidenceBadge({ confidence: call.confidence, isGuess })} <span>${meaning()}${call.confidence === 'likely' && isGuess ? guess() : NOTHING}</span></p></header>`

  function guess(): Html {
    const names = guessed.map((key) => html`<a href="${askHref(key, view)}">${factName(key)}</a>`)
    return html` It rests on what a call needs and nobody knows: ${names.map((name, at) => html`${at > 0 ? ', ' : ''}${name}`)}. It says where to look, not what to buy.`
  }

  function meaning(): Html {
    return call.targetMoves === undefined
      ? openText('it')
      : html`${openText('the route')} ${call.targetMoves}`
  }

  function openText(it: string): Html {
    if (call.confidence === 'withheld') {
      return html`Two answers cannot both be true. Mend one and the call appears.`
    }
    if (call.confidence === 'settled') return html`No open answer can change ${it}.`
    const open = call.settledBy
    if (open === null) return html`An open answer could still change ${it}.`
    const count = stillOpen(assumptions).length
    const first = html`<a href="${askHref(open, view)}">${factName(open)}</a>`
    if (next && next.needed > 0) {
      const lacking = next.needed === 1 ? 'An answer' : `${next.needed} answers`
      return html`${lacking} that a call needs <a href="#assumed">${next.needed === 1 ? 'is' : 'are'} assumed</a>; find this one out first: ${first}.`
    }
    if (count <= 1) return html`One open answer could still change ${it}: ${first}.`
    return html`<a href="#assumed">${count} open answers</a> could still change ${it}; find this one out first: ${first}.`
  }
}

/** What to do in large, how often it holds in small: one sentence, broken at its first colon. */
function headline(sentence: string): Html {
  const at = sentence.indexOf(': ')
  if (at === -1) return html`${sentence}`
  return html`${sentence.slice(0, at + 2)}<span class="h1-rest">${sentence.slice(at + 2)}</span>`
}

/** The first step of the work, so that nobody has to look for what to do now. */
export function doNext([first]: readonly WorkStep[]): Html {
  if (!first) return NOTHING
  return html`<p class="do-next"><span class="tag">To begin with</span> <a href="#step-${first.id}">${first.title}</a></p>`
}

/** What keeps a call from being made, each with the answers that contradict each other. */
export function contradictions({ contradictions: found, build }: Assessment, view: CaseView): Html {
  if (found.length === 0) return NOTHING
  return html`<section aria-labelledby="contradictions"><h2 id="contradictions">What cannot be true together</h2>
${each(
  found,
  (
    one,
  ) => html`<div class="notice danger"><h3><span class="badge danger">${one.effect === 'withhold' ? 'Stops the call' : 'Makes it unsure'}</span> ${one.title}</h3>
<p>${sentence(one.text)}</p>
<p class="actions">${each(one.between, (key) => button(key, one.likelierSlip))}</p>
<p class="hint">${sourceText(one.source)}</p></div>`,
)}</section>`

  function button(key: string, slip: string | null): Html {
    const isTaken = build[key]?.state === 'assumed'
    const likelier = key === slip && !isTaken ? ' (the likelier slip)' : ''
    return html`<a class="button" href="${askHref(key, view)}">${isTaken ? 'Answer' : 'Change'}: ${factName(key)}${likelier}</a> `
  }
}

/** What one does with a call. */
export function callActions(
  { link, units }: CaseView,
  made: boolean,
  forumHref: string | undefined,
  shareHref = pageHref('/call', link, units),
): Html {
  return html`<nav class="actions" aria-label="With this call">
${made ? html`<a class="button primary" href="${pageHref('/sheet', link, units)}">Sheet for the machine shop</a>` : NOTHING}
<a class="button${made ? '' : ' primary'}" href="${pageHref('/', link, units)}">Change the answers</a>
<a class="button" href="${shareHref}" data-copy-link>Link to this call</a>
${forumHref === undefined ? NOTHING : html`<a class="button" href="${forumHref}">Text for a forum</a>`}
<span class="hint" role="status" data-copy-said></span></nav>`
}

/** The figures that a builder asks for first. */
export function keyFigures({ loads, routes, call, cost }: Assessment, view: CaseView): Html {
  const called = routes.find(({ id }) => id === call.route)
  const show = (value: number, unit: string): string => printIn(value, unit, view.units)
  const { worstPull, worstSide, peakPressure, power } = loads
  // A lower target leaves the loads above as those of the plan.
  const planned = called?.lowered ? ', as planned' : ''
  const known: [string, string, string][] = []
  if (called) {
    known.push(['Holds in', `${called.holdsIn} of 100`, `cases; ${called.neededHoldsIn} needed`])
    known.push([
      'Likely cost',
      printMoney(cost.likely, cost.currency),
      cost.low === cost.high ? '' : moneyRange(cost, cost.currency),
    ])
  }
  const cells: [string, string, string][] = [
    ...known,
    [
      'Worst pull on a cap',
      show(worstPull.pull, 'kN'),
      `main ${worstPull.main}, ${printSpeed(worstPull.rpm)}${planned}`,
    ],
    [
      'Worst side push',
      show(worstSide.side, 'kN'),
      `main ${worstSide.main}, ${printSpeed(worstSide.rpm)}${planned}`,
    ],
    [
      'Peak pressure',
      show(peakPressure.value, 'bar'),
      `${printSpeed(peakPressure.rpm)}, absolute${planned}`,
    ],
    ['Power', show(power.value, 'kW'), `at ${printSpeed(power.rpm)}${planned}`],
  ]
  return html`<dl class="key-figures">${each(cells, ([name, value, note]) => html`<div><dt class="tag">${name}</dt><dd><span class="value">${value}</span> <span class="soft">${note}</span></dd></div>`)}</dl>`
}

/** The link that asks one question of the case anew. */
export function askHref(key: string, { link, units }: CaseView): string {
  return pageHref('/', link, units, { ask: key })
}

/** A fact's label; what is no fact key stands as it is. */
export function factName(key: string): string {
  return isFactKey(key) ? fact(key).label : key
}
