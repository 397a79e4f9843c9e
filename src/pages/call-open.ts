import type { Assessment, BuildEntry } from '../../shared/assessment.ts'
import { evenDecimals, LENGTHS } from '../../shared/even-decimals.ts'
import { fact, isFactKey } from '../../shared/fact-keys.ts'
import type { LoadReport } from '../../shared/load-report.ts'
import { askHref, factName } from './call-head.ts'
import { doubtBars } from './doubt-bars.ts'
import { dataTable } from './figure.ts'
import { each, type Html, html, NOTHING } from './html.ts'
import { printIn, printSpeed, type Units } from './person-units.ts'
import { type CaseView, sentence, sourceText } from './reasons.ts'
import { workingSteps } from './working-steps.ts'

/** The plan's own figures stay in view: they are what a builder can still choose. */
const TURNS_IN_VIEW = 6

/** What would turn the call, fact by fact: the nearest values that do. */
export function turningPoints({ turningPoints: points }: Assessment, view: CaseView): Html {
  if (points.length === 0) return NOTHING
  const facts = [...new Set(points.map((point) => point.fact))].sort(byPlanFirst)
  const list = (keys: readonly string[]): Html =>
    html`<dl class="turning">${each(keys, (key) =>
      turns(
        points.filter((point) => point.fact === key),
        view,
      ),
    )}</dl>`
  const rest = facts.slice(TURNS_IN_VIEW)
  return html`<section aria-labelledby="turning"><h2 id="turning">What would change the call</h2>
${list(facts.slice(0, TURNS_IN_VIEW))}
${rest.length === 0 ? NOTHING : html`<details class="prints"><summary>${rest.length} more that would</summary>${list(rest)}</details>`}</section>`
}

function byPlanFirst(a: string, b: string): number {
  const isPlan = (key: string): boolean => isFactKey(key) && fact(key).topic === 'plan'
  return Number(isPlan(b)) - Number(isPlan(a))
}

function turns(points: Assessment['turningPoints'], view: CaseView): Html {
  const [first] = points
  if (!first) return NOTHING
  return html`<div><dt>${first.label} <span class="hint">as it stands: <span class="figure-text">${first.now}</span></span> <a href="${askHref(first.fact, view)}">Change it<span class="unseen">: ${first.label}</span></a></dt>
${each(
  points,
  ({ text }) => html`<dd>${sentence(text)}</dd>
`,
)}</div>
`
}

/** What stands in for answers not given, each with its reason and a way to answer it. */
export function assumptions({ assumptions: list, call }: Assessment, view: CaseView): Html {
  if (list.length === 0) return NOTHING
  const alone = list.filter(({ matters }) => matters === 'alone')
  const together = list.filter(({ matters }) => matters === 'with-others')
  const closed = list.filter(({ matters }) => matters === 'no' || matters === null)
  return html`<section aria-labelledby="assumed"><h2 id="assumed">What was assumed</h2>
${alone.length === 0 ? NOTHING : html`<h3>Could still change the call</h3>${assumptionList(alone, view)}`}
${together.length === 0 ? NOTHING : html`<h3>Could change it together with others</h3>${assumptionList(together, view)}`}
${closed.length === 0 ? NOTHING : closedList()}</section>`

  function closedList(): Html {
    const count = closed.length === 1 ? 'One' : closed.length
    return html`<details class="prints"><summary>${count} that ${closed[0]?.matters === null ? 'were not tried' : `cannot change the ${call.targetMoves ? 'route' : 'call'}`}</summary>${assumptionList(closed, view)}</details>`
  }
}

function assumptionList(list: Assessment['assumptions'], view: CaseView): Html {
  const texts = evenDecimals(
    list.map(({ text }) => text),
    LENGTHS,
  )
  return html`<dl class="assumed">${list.map(
    (
      one,
      place,
    ) => html`<div class="assumption"><dt>${one.label} <span class="figure-text">${texts[place]}</span></dt>
<dd>${sentence(one.because)} <span class="hint">${sourceText(one.source)}.</span> <a href="${askHref(one.fact, view)}">Change it<span class="unseen">: ${one.label}</span></a></dd></div>
`,
  )}</dl>`
}

/** The figures behind the call, one click deeper. */
export function working(assessment: Assessment, { units }: CaseView): Html {
  const { build, loads, routes, version } = assessment
  return html`<section aria-labelledby="working"><h2 id="working">The working</h2>
${doubtBars(assessment)}
${workingSteps(assessment)}
<details><summary>The build that was computed</summary>${dataTable({
    caption: 'Every fact and how it came to be known',
    head: ['Fact', 'Value', 'Known how'],
    rows: Object.entries(build)
      .filter(([, entry]) => entry.state !== 'not-needed')
      .map(([key, entry]) => [factName(key), entry.text, known(entry)]),
  })}</details>
<details><summary>Loads over engine speed</summary>${dataTable(loadTable(loads, units))}</details>
<details><summary>The joint of one cap, route by route</summary>${dataTable(jointTable(routes, units))}</details>
<p class="hint">An estimate by handbook methods, not a finite-element study. Oil film, crank bending and the block’s own flexing are outside it. Rulebook ${version}.</p></section>`
}

function jointTable(routes: Assessment['routes'], units: Units) {
  return {
    caption: 'Clamp and what it holds',
    head: [
      'Route',
      'Preload, each',
      'Clamp',
      'Friction',
      'Register',
      'Cross bolts',
      'Share of proof load',
      'Load factor',
      'Torque',
    ],
    rows: routes.map(({ title, joint }) => [
      title,
      ...[
        joint.preload,
        joint.clamp,
        joint.friction,
        joint.registerCapacity,
        joint.crossCapacity,
      ].map((force) => printIn(force, 'kN', units)),
      `${Math.round(joint.shareOfProof * 100)}%`,
      joint.loadFactor.toFixed(2),
      joint.torque ? printIn(joint.torque.value, joint.torque.unit, units) : 'angle or stretch',
    ]),
  }
}

function known({ state, because }: BuildEntry): string {
  const words = { said: 'You said', derived: 'Worked out', assumed: 'Assumed', 'not-needed': '' }
  return because === undefined ? words[state] : `${words[state]}: ${because}`
}

function loadTable({ curve }: LoadReport, units: Units) {
  return {
    caption: 'Full load, one row for each speed',
    head: [
      'Speed',
      'Torque',
      'Power',
      'Mean pressure',
      'Peak pressure',
      'Worst pull',
      'Worst side push',
    ],
    rows: curve.map((row) => [
      `${printSpeed(row.rpm)}`,
      printIn(row.torque, 'N m', units),
      printIn(row.power, 'kW', units),
      printIn(row.bmep, 'bar', units),
      printIn(row.peakPressure, 'bar', units),
      printIn(row.worstPull, 'kN', units),
      printIn(row.worstSide, 'kN', units),
    ]),
  }
}
