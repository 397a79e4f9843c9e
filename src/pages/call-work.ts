import type { Assessment, CostItem, CostReport } from '../../shared/assessment.ts'
import { printMoney, printNumber } from '../../shared/print.ts'
import { convertedWords } from '../shop-sheet/converted-words.ts'
import { withRouteWork } from '../shop-sheet/route-steps.ts'
import type { OrderRule } from '../shop-sheet/sheet-rules.ts'
import { boreAndHone } from './bore-and-hone.ts'
import { each, type Html, html, NOTHING } from './html.ts'
import { moneyRange } from './money-range.ts'
import { sentence, sourceText } from './reasons.ts'
import { type WorkStep, workOrder } from './work-order.ts'

/** What follows from the route: parts, the order of work, what must be done. */
export function whatFollows(
  assessment: Assessment,
  follows: readonly WorkStep[],
  order: OrderRule | undefined,
): Html {
  const { call, routes, cost } = assessment
  const called = routes.find(({ id }) => id === call.route)
  if (!called) return NOTHING
  const steps = order && follows.length > 0 ? withRouteWork(follows, called, order) : follows
  const name = namesOf(assessment)
  const parts = called.parts.map(name)
  const bored = called.work.includes('line-bore')
  const machined = bored || called.work.some((id) => id.includes('hone'))
  const isIdle = called.work.length + cost.items.length === 0
  const inSteps = new Set([...steps.map(({ id }) => id), ...call.followOn.map(({ id }) => id)])
  const rest = call.mustDo.filter((id) => !inSteps.has(id))
  return html`<section aria-labelledby="follows"><h2 id="follows">What follows from it</h2>
${changes(called.changes)}
${parts.length === 0 ? html`<p>${isIdle ? 'No parts to buy, and no machine work.' : 'No parts to buy.'}</p>` : html`<h3>Parts</h3><ul>${each(parts, (part) => html`<li>${part}</li>`)}</ul>`}
${steps.length === 0 ? NOTHING : html`<h3>The order of work</h3>${workOrder(steps, order)}`}
${machined && order ? html`<details><summary>${bored ? 'Why the bore comes before the hone' : 'Why the bores are honed'}</summary>${boreAndHone(bored, order.mainBore)}</details>` : NOTHING}
${followOn(call.followOn, steps)}
${rest.length === 0 ? NOTHING : html`<h3>Also</h3><ul>${each(rest, (id) => html`<li>${name(id)}</li>`)}</ul>`}
</section>`
}

function changes(list: Assessment['routes'][number]['changes']): Html {
  if (list.length === 0) return NOTHING
  return html`<h3>What changes in the engine</h3><dl class="pairs">${each(
    list,
    ({
      label,
      from,
      to,
    }) => html`<dt>${label}</dt><dd><span class="soft">${from}</span> → ${to}</dd>
`,
  )}</dl>`
}

/** What must be done and why; steps that the order of work already tells are left out. */
function followOn(list: Assessment['call']['followOn'], steps: readonly WorkStep[]): Html {
  const told = new Set(steps.map(({ id }) => id))
  const rest = list.filter(({ id }) => !told.has(id))
  if (rest.length === 0) return NOTHING
  return html`<h3>What must be done, and why</h3><dl class="must-do">${each(
    rest,
    ({
      title,
      text,
      source,
    }) => html`<dt>${title}</dt><dd>${sentence(text)} <span class="hint">${sourceText(source)}</span></dd>
`,
  )}</dl>`
}

/** Ids to names: as a follow-on or a cost item names them, or the id in plain words. */
function namesOf({ call, cost, routes }: Assessment): (id: string) => string {
  const items = [...cost.items, ...routes.flatMap((route) => route.cost.items)]
  return (id) =>
    call.followOn.find((one) => one.id === id)?.title ??
    items.find((one) => one.id === id)?.label ??
    plainWords(id)
}

function plainWords(id: string): string {
  const words = id.replaceAll('-', ' ')
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`
}

/** The called route's bill: each item low, likely, high, and whether it was said or assumed. */
export function costSection(cost: CostReport): Html {
  const money = (amount: number): string => printMoney(amount, cost.currency)
  return html`<section aria-labelledby="cost"><h2 id="cost">What it costs</h2>
<p>Likely <strong>${money(cost.likely)}</strong>${cost.low === cost.high ? NOTHING : html` (${moneyRange(cost, cost.currency)})`}${cost.beforeTax ? ', before tax' : ''}. ${stakeSentence(cost)}</p>
${cost.items.length === 0 ? NOTHING : costTable(cost)}</section>`
}

function stakeSentence(cost: CostReport): Html {
  const stake = printMoney(cost.stake, cost.currency)
  const how = cost.stakeState === 'said' ? '' : ' (assumed)'
  const budget =
    cost.budget === null ? NOTHING : html` The budget is ${printMoney(cost.budget, cost.currency)}.`
  // What costs nothing has nothing to pay for itself.
  if (cost.breakEvenChance === null || cost.likely === 0)
    return html`At stake: ${stake}${how}.${budget}`
  return html`At stake: ${stake}${how}. The extra money pays for itself if it turns aside more than a ${printNumber(cost.breakEvenChance * 100, 1)}% chance of losing that.${budget}`
}

function costTable(cost: CostReport): Html {
  const converted = convertedWords(cost)
  return html`<div class="table-scroll" role="region" aria-label="The bill" tabindex="0"><table class="bill compact">
<caption>The bill, in ${cost.currency}</caption>
<thead><tr><th scope="col">Item</th><th scope="col" class="number">Low</th><th scope="col" class="number">Likely</th><th scope="col" class="number">High</th></tr></thead>
<tbody>${each(cost.items, billRow)}</tbody>
<tfoot>${billSum(cost)}</tfoot></table></div>${converted === '' ? NOTHING : html`<p class="hint">${converted}</p>`}`
}

/** The sum with its spread, which is narrower than that of the items: they do not all go one way. */
function billSum({ low, likely, high, beforeTax }: CostReport): Html {
  const cells = [low, likely, high].map(
    (value) => html`<td class="number"><strong>${printNumber(Math.round(value), 0)}</strong></td>`,
  )
  return html`<tr><th scope="row">In all${beforeTax ? ', before tax' : ', with tax'}<span class="hint">Eight times in ten it lies between low and high: prices are seldom all at one end.</span></th>${cells}</tr>`
}

/** Only a price of the guide's own is assumed. */
function priceFrom({ state, source }: CostItem): string {
  if (state === 'said') return 'You said'
  return state === 'listed' ? sourceText(source) : `Assumed. ${sourceText(source)}`
}

function billRow(item: CostItem): Html {
  const amount = (value: number): string => printNumber(Math.round(value), 0)
  return html`<tr><th scope="row">${item.label} <span class="tag">${item.kind}</span><span class="hint">${priceFrom(item)}</span></th><td class="number">${amount(item.low)}</td><td class="number">${amount(item.likely)}</td><td class="number">${amount(item.high)}</td></tr>
`
}
