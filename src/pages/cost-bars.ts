import { scaleLinear } from 'd3-scale'
import type { CostReport, RouteReport } from '../../shared/assessment.ts'
import { printMoney, printNumber } from '../../shared/print.ts'
import { figure } from './figure.ts'
import { type Html, html } from './html.ts'
import { moneyRange } from './money-range.ts'
import { SHORT_TITLES } from './route-names.ts'
import { arrow, box, line, PICTURE_WIDTH, svg, words } from './svg.ts'

const LEFT = 118
/** Width of one small mono letter. */
const LETTER = 6.7
const TOP = 62
const ROW = 24
/** A stake further out than this many of the dearest route is shown by an arrow at the edge. */
const FURTHEST = 3

/** What each route costs, against the budget and against the money that a failure would take. */
export function costBars(
  routes: readonly RouteReport[],
  cost: CostReport,
  called: string | null,
): Html {
  const { currency, stake, budget } = cost
  const money = (amount: number): string => printMoney(amount, currency)
  return figure({
    id: 'costs',
    picture: svg({
      id: 'cost-bars',
      height: TOP + routes.length * ROW + 22,
      title: `Cost of each route against the stake${budget === null ? '' : ' and the budget'}`,
      text: `The stake is ${money(stake)}${budget === null ? '' : `, the budget ${money(budget)}`}. ${routes.map((route) => `${route.title}: likely ${money(route.cost.likely)}${route.cost.low === route.cost.high ? '' : `, ${moneyRange(route.cost, currency)}`}.`).join(' ')}`,
      body: costBody(routes, cost, called),
    }),
    caption: `Parts, machine work and tax${cost.beforeTax ? ' (tax not counted: no rate is known)' : ''}, in ${currency}. Each bar runs from low to high; the mark and the figure on the right are the likely cost. The stake is what a failed bottom end would take with it${cost.stakeState === 'assumed' ? ', assumed here' : ''}.`,
    table: {
      caption: 'Cost of every route',
      head: ['Route', 'Low', 'Likely', 'High'],
      rows: routes.map(({ title, cost: { low, likely, high } }) => [
        title,
        money(low),
        money(likely),
        money(high),
      ]),
    },
  })
}

function costBody(routes: readonly RouteReport[], cost: CostReport, called: string | null): Html {
  const dearest = Math.max(...routes.map((route) => route.cost.high), cost.budget ?? 0, 1)
  const end = Math.max(dearest, Math.min(cost.stake, FURTHEST * dearest))
  const figures = routes.map((route) => printNumber(Math.round(route.cost.likely), 0).length)
  const right = PICTURE_WIDTH - 16 - LETTER * Math.max(...figures, 4)
  const x = scaleLinear().domain([0, end]).range([LEFT, right])
  const bottom = TOP + routes.length * ROW
  const ticks = x.ticks(3)
  return html`${ticks.map((tick) => html`${line(x(tick), TOP - 8, x(tick), bottom, 'grid')}${words(x(tick), bottom + 16, printNumber(tick, 0), 'middle small ink-soft')}`)}
${line(LEFT, TOP - 8, LEFT, bottom, 'ink')}
${cost.budget === null ? '' : limit(`budget ${printNumber(cost.budget, 0)}`, x(cost.budget), 36, bottom, 'budget')}
${limit(`stake ${printNumber(cost.stake, 0)}`, x(Math.min(cost.stake, end)), 14, bottom, 'stake')}
${cost.stake > end ? arrow(right, 24, right + 24, 24, 'force') : ''}
${routes.map((route, index) => costRow(route, TOP + index * ROW + 10, x, route.id === called))}`
}

/** An upright line with its name on its own line of the head, kept inside the picture. */
function limit(
  text: string,
  at: number,
  y: number,
  bottom: number,
  kind: 'stake' | 'budget',
): Html {
  const leftward = at > PICTURE_WIDTH / 2
  const look = kind === 'stake' ? 'force' : 'layout-blue dashed'
  return html`${line(at, y + 5, at, bottom, look)}${words(leftward ? at + 4 : at - 4, y, text, `small strong${leftward ? ' end' : ''}${kind === 'stake' ? ' force' : ' layout-blue'}`)}`
}

function costRow(
  route: RouteReport,
  y: number,
  x: (value: number) => number,
  called: boolean,
): Html {
  const { low, likely, high } = route.cost
  const name = `${called ? '▸ ' : ''}${SHORT_TITLES[route.id]}`
  const look = `margin-good${route.possible ? '' : ' not-possible'}`
  return html`${words(0, y + 4, name, called ? 'small strong' : 'small')}
${box(x(low), y - 5, Math.max(2, x(high) - x(low)), 10, look)}${box(x(likely) - 1.5, y - 7, 3, 14, 'ink-fill')}
${words(PICTURE_WIDTH, y + 4, printNumber(Math.round(likely), 0), `end small${called ? ' strong' : ''}`)}`
}
