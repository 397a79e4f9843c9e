import type { Answers } from '../shared/answers.ts'
import type { Assessment, Assumption, BuildEntry, RouteReport } from '../shared/assessment.ts'
import { FACT_KEYS, fact, usualUnit } from '../shared/fact-keys.ts'
import { ROUTE_IDS } from '../shared/route-ids.ts'
import { toQuery } from '../shared/share-link.ts'
import type { Build } from './build/build.ts'
import { buildFromAnswers } from './build/from-answers.ts'
import { callReport, costReport } from './call/call-report.ts'
import { cautionsOf } from './call/cautions.ts'
import { type Decision, decide } from './call/decide.ts'
import { loadsReport } from './call/loads-report.ts'
import type { DecideInput } from './call/look.ts'
import { lowerTarget } from './call/lower-target.ts'
import { loweredReport, routeReport } from './call/routes-report.ts'
import { uncertaintyOf } from './call/uncertainty.ts'
import { workingOf } from './call/working.ts'
import { buildFactText, type UnitSystem } from './facts/live-facts.ts'
import { newMemory } from './facts/memory.ts'
import { trialsOf } from './facts/trials.ts'
import type { Rulebook } from './rulebook/load.ts'
import { runRules } from './rulebook/run.ts'
import { contradictionsReport } from './what-if/contradictions-report.ts'
import {
  type Influence,
  movingMost,
  type Next,
  neededQuestion,
  nextQuestion,
  type OpenQuestions,
  openQuestions,
} from './what-if/next-question.ts'
import { type AskWhatIf, type QuickCall, quickCallOf, whatIf } from './what-if/quick-call.ts'
import { turningPoints } from './what-if/turning-points.ts'
import { nextReport, turningReport } from './what-if/what-if-report.ts'

export interface AssessOptions {
  readonly system?: UnitSystem
  /** Leave out what-ifs (turning points, next question): for callers that only want the call. */
  readonly withoutWhatIf?: boolean
  /** Leave out the turning points alone: the conversation needs only the next question. */
  readonly withoutTurningPoints?: boolean
  /** For the conversation, which shows no call while a question is needed: then only that question is worked out. */
  readonly talking?: boolean
  /** Called between what-ifs, so that a server can answer others meanwhile. */
  readonly giveWay?: (() => Promise<void>) | undefined
}

/**
 * Answers → build → loads → routes → rules → call, and what would change it. The
 * whole arrow on one screen.
 *
 * @param rulebook - loaded rules/
 * @param answers - read answers; any may be missing or "unknown"
 * @returns the assessment; the same answers give the same one, byte for byte
 * @throws {DomainError} if a figure is outside the range of the mechanics
 */
export async function assess(
  rulebook: Rulebook,
  answers: Answers,
  { system = 'us', withoutWhatIf, withoutTurningPoints, talking, giveWay }: AssessOptions = {},
): Promise<Assessment> {
  const build = buildFromAnswers(rulebook, answers)
  const memory = newMemory()
  const trials = trialsOf(build, rulebook, memory)
  const input: DecideInput = { answers, trials, rulebook, run: runRules, system, everyRoute: true }
  const decision = await decide(input)
  // Before other targets are tried, whose loads would be written over these.
  const loads = loadsReport(trials)
  const lowered = lowerTarget(trials, rulebook, memory)
  const ask = whatIf(rulebook, memory, giveWay)
  const now = quickCallOf(decision, trials)
  const needed = withoutWhatIf
    ? undefined
    : await neededQuestion(answers, trials.build, now, rulebook, ask, withholding(decision))
  const open =
    withoutWhatIf || (needed && talking)
      ? undefined
      : await openQuestions(answers, trials.build, now, rulebook, ask)
  const next = needed ?? (open && nextQuestion(open))
  const context = {
    ...input,
    decision,
    lowered,
    ...confidenceOf(decision, open, next),
    movedBy: open ? movingMost(open) : [],
  }
  const reported = { build: trials.build, answers, system, rulebook }
  const routes = ROUTE_IDS.map((id): RouteReport => {
    const verdict = decision.verdicts.get(id)
    if (!verdict) throw new RangeError(`route ${id} was not looked at`)
    return id === 'lower-the-target'
      ? loweredReport(verdict, lowered, reported, decision.wouldBe === id)
      : routeReport(verdict, reported)
  })
  return {
    version: rulebook.version,
    link: toQuery(answers, rulebook.version),
    build: buildReport(trials.build, answers, system),
    loads,
    routes,
    call: await callReport(context),
    cautions: cautionsOf(decision, lowered, routes, reported),
    contradictions: await contradictionsReport(decision, answers, ask),
    turningPoints:
      open && !withoutTurningPoints
        ? await turning(answers, trials.build, now, ask, rulebook, system)
        : [],
    assumptions: assumptions(trials.build, answers, system, open),
    next: nextReport(next, rulebook),
    cost: costReport(context),
    working: workingOf(trials, trials.trial(decision.wouldBe), system),
    uncertainty: uncertaintyOf(trials.trial(decision.wouldBe), rulebook),
  }
}

async function turning(
  answers: Answers,
  build: Build,
  now: QuickCall,
  ask: AskWhatIf,
  rulebook: Rulebook,
  system: UnitSystem,
): Promise<Assessment['turningPoints']> {
  if (now.route === null) return []
  const found = await turningPoints(answers, build, now, rulebook, ask)
  return found.map((point) => turningReport(point, build, answers, rulebook, system))
}

/**
 * A contradiction withholds the call; an open fact that could change it leaves it likely.
 * What settles it is what is asked next; of figures that nobody knows the weightiest.
 */
function confidenceOf(
  decision: Decision,
  open: OpenQuestions | undefined,
  next: Next | undefined,
): { confidence: Assessment['call']['confidence']; settledBy: string | null } {
  if (decision.route === null) return { confidence: 'withheld', settledBy: null }
  const first = open?.mattering[0]
  if (open && !first && !hedged(decision)) return { confidence: 'settled', settledBy: null }
  return { confidence: 'likely', settledBy: next?.key ?? first?.open.key ?? null }
}

/** Facts that a withheld call points at; one that nobody gave is asked before anything else. */
function withholding({ buildRules }: Decision): string[] {
  return buildRules.flatMap(({ outcome }) =>
    outcome.effect === 'contradiction' && outcome.call === 'withhold' && outcome.likelierSlip
      ? [outcome.likelierSlip]
      : [],
  )
}

function hedged({ buildRules }: Decision): boolean {
  return buildRules.some(({ outcome }) => outcome.effect === 'contradiction')
}

function buildReport(
  build: Build,
  answers: Answers,
  system: UnitSystem,
): Record<string, BuildEntry> {
  return Object.fromEntries(
    FACT_KEYS.map((key): [string, BuildEntry] => {
      const { state, value, low, high, because, source } = build.facts[key]
      const unit = fact(key).kind === 'money' ? build.currency : usualUnit(fact(key))
      return [
        key,
        {
          state,
          value: value ?? null,
          unit,
          ...(low === undefined ? {} : { low }),
          ...(high === undefined ? {} : { high }),
          text: buildFactText(build.facts[key], build, answers, system),
          ...(because === undefined ? {} : { because }),
          ...(source === undefined ? {} : { source }),
        },
      ]
    }),
  )
}

function assumptions(
  build: Build,
  answers: Answers,
  system: UnitSystem,
  open: OpenQuestions | undefined,
): Assumption[] {
  return FACT_KEYS.flatMap((key): Assumption[] => {
    const entry = build.facts[key]
    if (entry.state !== 'assumed') return []
    const influence = open?.influences.find((one) => one.open.key === key)
    return [
      {
        fact: key,
        label: fact(key).label,
        text: buildFactText(entry, build, answers, system),
        because: entry.because ?? '',
        source: entry.source ?? { kind: 'memory', cite: '' },
        calls: [...(influence?.calls ?? [])],
        matters: open ? mattersHow(influence, open) : null,
        measure: fact(key).measure,
      },
    ]
  })
}

function mattersHow(influence: Influence | undefined, open: OpenQuestions): Assumption['matters'] {
  if (!influence || !open.mattering.includes(influence)) return 'no'
  return influence.calls.length > 1 ? 'alone' : 'with-others'
}
