import type { Assessment } from '../../shared/assessment.ts'
import type { Problem } from '../../shared/problem.ts'
import type { OrderRule } from '../shop-sheet/sheet-rules.ts'
import { callActions, callHead, contradictions, doNext, keyFigures } from './call-head.ts'
import { assumptions, turningPoints, working } from './call-open.ts'
import { costSection, whatFollows } from './call-work.ts'
import { costBars } from './cost-bars.ts'
import { each, type Html, html, NOTHING } from './html.ts'
import { type Preview, page } from './layout.ts'
import { linkProblems } from './link-problems.ts'
import { loadBySpeed } from './load-by-speed.ts'
import { loadDiagram } from './load-diagram.ts'
import { capViews, mainCapDrawing } from './main-cap-drawing.ts'
import { marginBars } from './margin-bars.ts'
import { type OlderLink, olderLink } from './older-link.ts'
import type { Units } from './person-units.ts'
import { pressureTrace } from './pressure-trace.ts'
import { type Reach, reachMap } from './reach-map.ts'
import { type CaseView, cautions, dangers, reasons } from './reasons.ts'
import { routeTable } from './route-table.ts'
import type { WorkStep } from './work-order.ts'

export interface CallView {
  assessment: Assessment
  /** Null when it has not been computed; the picture is then left out. */
  reach: Reach | null
  units: Units
  /** The answers as a query string. */
  link: string
  forumHref?: string
  /** The canonical address of this call, to give away; its own when left out. */
  shareHref?: string
  /** What a call needs and nobody knows. */
  guessed?: readonly string[]
  /** Parts of the link that could not be read. */
  problems?: readonly Problem[]
  older?: OlderLink | undefined
  preview?: Preview | undefined
  /** The order of work, strip-down to assembly; without it what must be done is a plain list. */
  steps?: readonly WorkStep[]
  /** How the route's own work goes in among the steps; needed with them. */
  order?: OrderRule
}

/** The call for one case: the sentence first, then pictures, then the reasons and the rest. */
export function callPage(view: CallView): Html {
  const { assessment, units, link } = view
  return page({
    title: `The call: ${assessment.call.title}`,
    description: assessment.call.sentence,
    path: '/call',
    units,
    link,
    wide: true,
    noindex: true,
    preview: view.preview,
    scripts: ['copy-link.js'],
    body: html`<article class="call">${callBody(view)}</article>`,
  })
}

function callBody(view: CallView): Html {
  const { assessment, units, link, forumHref } = view
  const known: CaseView = { units, link }
  const head = html`${linkProblems(view.problems ?? [], known)}${olderLink(view.older)}${callHead(assessment, known, view.guessed)}${contradictions(assessment, known)}`
  const open = html`${assumptions(assessment, known)}${working(assessment, known)}`
  if (assessment.call.confidence === 'withheld') {
    return html`${head}${callActions(known, false, forumHref, view.shareHref)}${dangers(assessment.cautions, known)}${cautions(assessment.cautions, known)}${open}`
  }
  const { call, routes } = assessment
  return html`${head}${doNext(view.steps ?? [])}${keyFigures(assessment, known)}${callActions(known, true, forumHref, view.shareHref)}
${onThisPage(assessment)}
${dangers(assessment.cautions, known)}
${pictures(view)}
${cautions(assessment.cautions, known)}
<section aria-labelledby="reasons"><h2 id="reasons">${call.route === 'lower-the-target' ? 'Why the plan is not run as it is' : 'Why this route'}</h2>${reasons(call.reasons, known)}</section>
${broughtAlong(assessment, known)}<section aria-labelledby="side-by-side"><h2 id="side-by-side">Every route side by side</h2>${routeTable(routes, call)}${marginBars(routes, call.route)}</section>
${whatFollows(assessment, view.steps ?? [], view.order)}
${costSection(assessment.cost)}
${turningPoints(assessment, known)}
${open}`
}

/** Drawbacks of the called route that are no cautions: they stand with the reasons for it. */
function broughtAlong({ routes, call }: Assessment, view: CaseView): Html {
  const called = routes.find(({ id }) => id === call.route)
  const notes = (called?.against ?? []).filter(({ severity }) => severity === 'note')
  if (notes.length === 0) return NOTHING
  return html`<section aria-labelledby="brings"><h2 id="brings">What it brings with it</h2>${reasons(notes, view)}</section>
`
}

/** A long page: where its parts are. */
function onThisPage({ call, turningPoints: points, assumptions: assumed }: Assessment): Html {
  const places: [string, string, boolean][] = [
    ['pictures', 'Loads', true],
    ['reasons', 'Why', true],
    ['side-by-side', 'Every route', true],
    ['follows', 'The work', true],
    ['cost', 'Cost', true],
    ['turning', 'What would change it', points.length > 0],
    ['assumed', 'What was assumed', assumed.length > 0],
  ]
  if (call.route === null) return NOTHING
  return html`<nav class="places" aria-label="On this page"><ul>${each(
    places.filter(([, , isThere]) => isThere),
    ([id, name]) => html`<li><a href="#${id}">${name}</a></li>
`,
  )}</ul></nav>`
}

function pictures({ assessment, reach, units }: CallView): Html {
  const { loads, call, routes, cost } = assessment
  const { worstPull, worstSide } = loads
  const layout = assessment.build.layout?.value
  return html`<section class="pictures" aria-labelledby="pictures"><h2 id="pictures">What the plan does to the caps</h2>
<h3>What pulls and pushes, and what holds</h3>${mainCapDrawing({ caps: capViews(assessment), worstPull, worstSide, layout, units })}
<h3>Load on each main over two turns</h3>${loadDiagram(loads, units, layout)}
<div class="picture-pairs">${reach === null ? NOTHING : html`<div><h3>How far each route goes</h3>${reachMap(reach, call.route, units)}</div>`}
<div><h3>Cost against what is at stake</h3>${costBars(routes, cost, call.route)}</div>
</div>
<details class="curves"><summary>Two curves more: load over engine speed, pressure in the cylinder</summary><div class="picture-pairs"><div><h3>Load over engine speed</h3>${loadBySpeed(loads, units)}</div>
<div><h3>Pressure in the cylinder</h3>${pressureTrace(loads, units)}</div></div></details></section>`
}
