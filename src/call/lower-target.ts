import type { FactKey } from '../../shared/fact-keys.ts'
import { type Build, type BuildFact, figureOf } from '../build/build.ts'
import { most } from '../facts/build-facts.ts'
import { buildValues } from '../facts/live-facts.ts'
import { type Memory, newMemory } from '../facts/memory.ts'
import type { RouteTrial } from '../facts/route-facts.ts'
import { type Trials, trialsOf } from '../facts/trials.ts'
import { practiceRules } from '../rulebook/deciding-rules.ts'
import { layered } from '../rulebook/layered-facts.ts'
import type { Rulebook } from '../rulebook/load.ts'
import { runRulesNow } from '../rulebook/run.ts'

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
  /** False when not even the lowest target of the search holds. */
  readonly found: boolean
}

/** Lowest speed that the search goes down to, as a share of the plan's. */
const LEAST_SPEED = 0.5
const HALVINGS = 6

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
  const { build } = trials
  const at = (share: number, speed: number): Trials =>
    attempt(trials, rulebook, memory, share, speed)
  // Practice first: where a rule of it ends the matter, no loads are worked out.
  const ok = (tried: Trials): boolean => !practiceAsksMore(tried, rulebook) && holds(tried)
  const now = at(1, 1)
  if (ok(now)) return report(now, true)
  const forced = figureOf(build, 'boost') > 0 || figureOf(build, 'nitrousPower') > 0
  const calm = forced ? at(0, 1) : now
  if (forced && ok(calm))
    return report(
      climb((share) => at(share, 1), ok, 0, 1),
      true,
    )
  const slow = at(0, LEAST_SPEED)
  if (!ok(slow)) return report(slow, false)
  return report(
    climb((speed) => at(0, speed), ok, LEAST_SPEED, 1),
    true,
  )
}

/** The highest setting that is still ok, by halving; `low` is known to be ok. */
function climb(
  at: (setting: number) => Trials,
  ok: (tried: Trials) => boolean,
  low: number,
  high: number,
): Trials {
  let [from, to] = [low, high]
  for (let step = 0; step < HALVINGS; step++) {
    const middle = (from + to) / 2
    if (ok(at(middle))) from = middle
    else to = middle
  }
  return at(from)
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
function practiceAsksMore({ facts, build }: Trials, rulebook: Rulebook): boolean {
  const known = layered(facts, buildValues(build))
  return runRulesNow(practiceRules(rulebook.rules), 'build', known).length > 0
}

/** Whether the present hardware holds in enough cases. */
function holds(tried: Trials): boolean {
  const { result, needed } = tried.trial('keep-caps-and-bolts')
  return result.holdsIn >= needed
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
