import type { Call, RouteReport } from '../../shared/assessment.ts'
import { printMoney } from '../../shared/print.ts'
import { each, type Html, html, NOTHING } from './html.ts'
import { marginText } from './margin-bars.ts'
import { moneyRange } from './money-range.ts'
import { sentence } from './reasons.ts'
import { weakestMargin } from './weakest-margin.ts'

/**
 * Every route in one table: how often it holds, where it is weakest, what it costs, and the verdict,
 * which for a route that is not called is why.
 * Roles are spelt out because a phone shows the rows as blocks.
 */
export function routeTable(routes: readonly RouteReport[], call: Call): Html {
  return html`<div class="table-scroll" role="region" aria-label="Table of every route" tabindex="0"><table class="routes as-blocks" role="table">
<caption>“Holds in” counts sampled cases, 100 of them, spread over what is assumed and what scatters. It says how sure this estimate is; it is not a chance of failure. The weakest margin leaves grip out: friction alone need not hold while the register does.</caption>
<thead role="rowgroup"><tr role="row"><th role="columnheader" scope="col">Route</th><th role="columnheader" scope="col" class="number">Holds in</th><th role="columnheader" scope="col">Weakest margin</th><th role="columnheader" scope="col" class="number">Likely cost</th><th role="columnheader" scope="col">Verdict, or why not</th></tr></thead>
<tbody role="rowgroup">${each(routes, (route) => routeRow(route, call))}</tbody></table></div>`
}

function routeRow(route: RouteReport, call: Call): Html {
  const called = route.id === call.route
  const { cost } = route
  return html`<tr role="row" class="${called ? 'called' : ''}"><th role="rowheader" scope="row">${called ? html`<span aria-hidden="true">▸ </span>` : ''}${route.title}</th>
<td role="cell" class="number" data-head="Holds in">${route.holdsIn} of 100<br><span class="soft">${route.neededHoldsIn} needed</span></td>
<td role="cell" data-head="Weakest margin">${weakest(route)}</td>
<td role="cell" class="number" data-head="Likely cost">${printMoney(cost.likely, cost.currency)}${cost.low === cost.high ? NOTHING : html`<br><span class="soft">${moneyRange(cost, cost.currency)}</span>`}</td>
<td role="cell" data-head="Verdict"><span>${verdict(route, call)}</span></td></tr>
`
}

function weakest({ margins }: RouteReport): string {
  const { name, spread } = weakestMargin(margins)
  return `${name} ${marginText(spread.likely)}`
}

function verdict(route: RouteReport, call: Call): Html {
  if (route.id === call.route) return html`<strong>This is the call</strong>`
  if (!route.possible) return html`Not possible. ${sentence(route.whyNot ?? '')}`
  const why = call.insteadOf.find((one) => one.route === route.id)?.why
  if (why !== undefined) return sentence(why)
  return route.holds ? html`Holds` : html`Does not hold in enough cases`
}
