import type { FactKey } from '../../shared/fact-keys.ts'
import { MARGIN_IDS } from '../../shared/route-ids.ts'
import { type Build, type BuildFact, figureOf } from '../build/build.ts'
import { ATMOSPHERE, most } from '../facts/build-facts.ts'
import { buildValues } from '../facts/live-facts.ts'
import type { JointMargins } from '../facts/margins.ts'
import { type Memory, newMemory } from '../facts/memory.ts'
import type { RouteTrial } from '../facts/route-facts.ts'
import { type Trials, trialsOf } from '../facts/trials.ts'
import { nthSmallest } from '../mechanics/order-statistic.ts'
import { practiceRules } from '../rulebook/deciding-rules.ts'
import { layered } from '../rulebook/layered-facts.ts'
import type { Rulebook } from '../rulebook/load.ts'
import { runRulesNow } from '../rulebook/run.ts'
import type { Rule } from '../rulebook/schema.ts'
import { highestSetting, type Look } from './highest-setting.ts'

/** The target that the present caps and fasteners hold. */
export interface LoweredTarget {
  /** psi, hp of nitrous, rpm: as far as the present hardware holds. */
  readonly boost: number
  readonly nitrousPower: number
  readonly rpm: number
  /** W */
  readonly power: number
  readonly build: Build
  /** Computed facts of the lowered build. */
  readonly facts: Trials['facts']
  readonly trial: RouteTrial
  /** False when not even the lowest target of the search will do. */
  readonly found: boolean
  /** True when it is the plan itself: nothing of it has to be given up. */
  readonly asPlanned?: boolean
  /** Where it would hold by the numbers: the rule of practice that asks for more at any target. */
  readonly asks?: Rule | undefined
}

/** Settings of boost or speed from the least to the plan's. */
const STEPS = 64
/** No more than so many times what there is counts as asked. */
const MOST_DEMAND = 99

/**
 * Find the highest target, boost (or nitrous) first and speed after it, that the
 * present hardware holds in enough cases and at which no rule of practice asks for
 * more than it has.
 */
export function lowerTarget(
  trials: Trials,
  rulebook: Rulebook,
  memory: Memory = newMemory(),
): LoweredTarget {
  const at = (share: number, speed: number): Trials =>
    attempt(trials, rulebook, memory, share, speed)
  const look = (tried: Trials): Look<Trials> => lookAt(tried, rulebook)
  const now = look(trials)
  if (now.ok) return { ...report(trials, true), asPlanned: true }

  const forced = noPressureAt(trials)
  if (forced !== undefined) {
    const share = (step: number): Trials => at(step / STEPS, 1)
    const below = firstThatAsksMore(share, rulebook)
    const calmer = highestSetting((step) => look(share(step)), { above: -1, below }, [
      { step: forced, demand: 0 },
      { step: STEPS, demand: now.demand() },
    ])
    if (calmer) return report(calmer, true)
  }
  const { leastSpeed } = rulebook.callWords.lowered
  const speed = (step: number): Trials => at(0, leastSpeed + ((1 - leastSpeed) * step) / STEPS)
  const slow = look(speed(0))
  if (!slow.ok) return { ...report(slow.found, false), asks: stillAsked(slow.found, rulebook) }
  const below = firstThatAsksMore(speed, rulebook)
  const slower = highestSetting((step) => look(speed(step)), { above: 0, below }, [
    { step: 0, demand: slow.demand() },
    { step: STEPS, demand: now.demand() },
  ])
  return report(slower ?? slow.found, true)
}

/**
 * The step at which the cylinders would take in nothing, below 0, if what they do goes as the
 * manifold's pressure, or with nitrous as the power; undefined without either.
 */
function noPressureAt({ build, facts }: Trials): number | undefined {
  const [boost, nitrous] = [figureOf(build, 'boost'), figureOf(build, 'nitrousPower')]
  if (boost > 0) return (-STEPS * ATMOSPHERE) / boost
  return nitrous > 0
    ? STEPS * Math.min(0, 1 - Number(facts.get('computedPower')) / nitrous)
    : undefined
}

/** The first step at which a rule of practice asks for more, which all above it do too; found by halving. */
function firstThatAsksMore(at: (step: number) => Trials, rulebook: Rulebook): number {
  let [quiet, asks] = [-1, STEPS]
  if (!practiceAsksMore(at(STEPS), rulebook)) return STEPS
  while (asks - quiet > 1) {
    const middle = (quiet + asks) >> 1
    if (practiceAsksMore(at(middle), rulebook)) asks = middle
    else quiet = middle
  }
  return asks
}

function attempt(
  trials: Trials,
  rulebook: Rulebook,
  memory: Memory,
  share: number,
  speed: number,
): Trials {
  if (share === 1 && speed === 1) return trials
  const { build } = trials
  const lowered = changed(build, {
    boost: floorTo(figureOf(build, 'boost') * share, 0.1),
    nitrousPower: floorTo(figureOf(build, 'nitrousPower') * share, 1),
    peakRpm: Math.max(2500, floorTo(figureOf(build, 'peakRpm') * speed, 50)),
  })
  return trialsOf(lowered, rulebook, memory, trials.loads.calibration)
}

function floorTo(value: number, step: number): number {
  return Number((Math.floor(value / step + 1e-9) * step).toFixed(3))
}

function changed(build: Build, values: Partial<Record<FactKey, number>>): Build {
  const facts: Record<string, BuildFact> = { ...build.facts }
  for (const [key, value] of Object.entries(values)) {
    facts[key] = { key: key as FactKey, state: 'derived', value }
  }
  const speed = Math.min(figureOf(build, 'torquePeakRpm'), values.peakRpm as number)
  facts.torquePeakRpm = { ...build.facts.torquePeakRpm, value: speed }
  return { ...build, facts: facts as Build['facts'] }
}

/** Whether a rule of practice asks for stronger hardware than the present one, at this target. */
function practiceAsksMore(tried: Trials, rulebook: Rulebook): boolean {
  return askedByPractice(tried, rulebook).length > 0
}

function askedByPractice({ facts, build }: Trials, rulebook: Rulebook): readonly Rule[] {
  const known = layered(facts, buildValues(build))
  return runRulesNow(practiceRules(rulebook.rules), 'build', known)
}

/** What practice still asks for at a target that holds by the numbers; nothing where it does not. */
function stillAsked(tried: Trials, rulebook: Rulebook): Rule | undefined {
  return holdsEnough(tried) ? askedByPractice(tried, rulebook)[0] : undefined
}

function holdsEnough(tried: Trials): boolean {
  const { result, needed } = tried.trial('keep-caps-and-bolts')
  return result.holdsIn >= needed
}

/** Whether the present hardware holds in enough cases, at what practice asks, and how nearly. */
function lookAt(tried: Trials, rulebook: Rulebook): Look<Trials> {
  const { result, needed } = tried.trial('keep-caps-and-bolts')
  const ok = holdsEnough(tried) && !practiceAsksMore(tried, rulebook)
  return { found: tried, ok, demand: () => demandOf(result, needed, rulebook) }
}

/** Limit over margin, the greatest of each case, in the hardest case that must still hold. */
function demandOf(
  { cases }: JointMargins,
  needed: number,
  { holding: { margins } }: Rulebook,
): number {
  const drawn = cases.hold.length - 1
  const spare = new Float64Array(drawn).fill(Number.POSITIVE_INFINITY)
  for (const id of MARGIN_IDS.filter((one) => margins[one] > 0)) {
    for (let row = 0; row < drawn; row++) {
      spare[row] = Math.min(spare[row]!, cases[id][row + 1]! / margins[id])
    }
  }
  // As many may fail as the rounded share of the others leaves.
  const mayFail = Math.floor((drawn * (100.5 - needed)) / 100)
  return Math.min(MOST_DEMAND, 1 / nthSmallest(spare, Math.min(mayFail, drawn - 1)))
}

function report(tried: Trials, found: boolean): LoweredTarget {
  const { build, loads } = tried
  return {
    boost: figureOf(build, 'boost'),
    nitrousPower: figureOf(build, 'nitrousPower'),
    rpm: figureOf(build, 'peakRpm'),
    power: most(loads.fullLoads, (load) => load.power).power,
    build,
    facts: tried.facts,
    trial: tried.trial('keep-caps-and-bolts'),
    found,
  }
}
