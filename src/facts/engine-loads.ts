import { type Build, choiceOf, figureOf, has, siOf } from '../build/build.ts'
import { CRANK_LAYOUTS, type LayoutId } from '../mechanics/crank-layouts.ts'
import type { FuelId } from '../mechanics/fuels.ts'
import {
  calibrateToPeakPressure,
  calibrateToPower,
  closedThrottle,
  type FullLoad,
  fullLoad,
} from '../mechanics/full-load.ts'
import type { FullLoadInput, Induction } from '../mechanics/full-load-input.ts'
import { type LoadCase, type LoadSweep, loadSweep } from '../mechanics/load-sweep.ts'
import { type MainLoads, mainLoads } from '../mechanics/main-loads.ts'
import type { Rulebook } from '../rulebook/load.ts'

const RPM = Math.PI / 30
const ATMOSPHERE = 101_325

/** Everything that the crank train does to the mains, SI. */
export interface EngineLoads {
  readonly layout: (typeof CRANK_LAYOUTS)[LayoutId]
  /** One for each full-load speed, slow to fast; the fastest is the highest engine speed. */
  readonly fullLoads: readonly FullLoad[]
  /** rad/s, one for each full load, then the closed-throttle overspeed. */
  readonly speeds: readonly number[]
  readonly loads: readonly MainLoads[]
  readonly sweep: LoadSweep
  /** Pa gauge, after calibration to a target power. */
  readonly boost: number
  /** Whether the boost was worked out from the target power. */
  readonly boostFromTarget: boolean
  /** Power that the figures can make at most, W; undefined without a target. */
  readonly reachable: number | undefined
  readonly targetReached: boolean
  readonly peakReached: boolean
  /** What a known power and a measured pressure say of this engine; a changed target keeps them. */
  readonly calibration: Calibration
  /** d ln(peak pressure) for each d ln of what is assumed, by fact key. */
  readonly peakExponents: ReadonlyMap<string, number>
}

/** How the engine differs from the model's usual one. */
export interface Calibration {
  readonly breathingScale: number
  readonly heatScale: number
}

/** Facts that the loads rest on; two builds alike in these have the same loads. */
export const LOAD_FACTS = [
  'layout',
  'bore',
  'stroke',
  'rodLength',
  'reciprocatingMass',
  'bigEndMass',
  'mainJournalDiameter',
  'mainBearingWidth',
  'induction',
  'boost',
  'peakCylinderPressure',
  'nitrousPower',
  'targetPower',
  'chargeCooling',
  'fuel',
  'compressionRatio',
  'peakRpm',
  'torquePeakRpm',
] as const

/** A key under which the loads of a build can be remembered. */
export function loadsKey(build: Build): string {
  return LOAD_FACTS.map((key) => {
    const { value, state } = build.facts[key]
    return `${state === 'said' || state === 'derived' ? '' : '~'}${String(value)}`
  }).join('|')
}

/**
 * Gas cycle at every full-load speed, load on every main, and the worst of all.
 *
 * @param build - whole build
 * @param rulebook - its load cases and cooler effectiveness
 * @param calibration - when the engine is known already; target power and measured pressure are
 *   then not looked at again
 * @throws {DomainError} if a figure is outside the range of the mechanics
 */
export function engineLoads(
  build: Build,
  rulebook: Rulebook,
  calibration?: Calibration,
): EngineLoads {
  const base = { ...fullLoadInput(build, rulebook), ...calibration }
  const calibrated = calibration ? asCalibrated(base, calibration) : calibrate(build, base)
  const speeds = fullLoadSpeeds(build, rulebook)
  const at = (speed: number): FullLoadInput => ({
    ...calibrated.input,
    speed,
    // Below its torque peak an engine is taken to breathe as well as there: the pull is not
    // made smaller by a guess at how it breathes low down.
    torquePeakSpeed: Math.min(base.torquePeakSpeed, speed),
  })
  const fullLoads = speeds.map((speed) => fullLoad(at(speed)))
  const overspeed = base.highestSpeed * rulebook.loadCases.overspeed
  const motored = closedThrottle({ ...at(overspeed), highestSpeed: overspeed })
  const layout = CRANK_LAYOUTS[choiceOf(build, 'layout') as LayoutId]
  const loadsAt = (speed: number, pressure: Float64Array): MainLoads =>
    mainLoads({ ...masses(build), layout, speed, pressure })
  const loads = [
    ...fullLoads.map((load, index) => loadsAt(speeds[index] as number, load.cycle.pressure)),
    loadsAt(overspeed, motored.pressure),
  ]
  const cases: LoadCase[] = loads.map((_, index) =>
    index < fullLoads.length ? 'full-load' : 'closed-throttle',
  )
  return {
    layout,
    fullLoads,
    speeds: [...speeds, overspeed],
    loads,
    sweep: loadSweep({ loads, cases, bearing: bearing(build) }),
    ...calibrated.outcome,
    peakExponents: exponents(build, at(speeds[0] as number)),
  }
}

function fullLoadInput(build: Build, rulebook: Rulebook): FullLoadInput {
  const induction = choiceOf(build, 'induction') as Induction
  const boosted = induction === 'turbocharged' || induction === 'supercharged'
  const cooling = choiceOf(build, 'chargeCooling') as 'none' | 'intercooler'
  const highestSpeed = siOf(build, 'peakRpm')
  return {
    bore: siOf(build, 'bore'),
    stroke: siOf(build, 'stroke'),
    rodLength: siOf(build, 'rodLength'),
    compressionRatio: figureOf(build, 'compressionRatio'),
    cylinders: CRANK_LAYOUTS[choiceOf(build, 'layout') as LayoutId].cylinders.length,
    speed: Math.min(siOf(build, 'torquePeakRpm'), highestSpeed),
    torquePeakSpeed: Math.min(siOf(build, 'torquePeakRpm'), highestSpeed),
    highestSpeed,
    fuel: choiceOf(build, 'fuel') as FuelId,
    induction,
    boost: boosted ? siOf(build, 'boost') : 0,
    intercoolerEffectiveness: boosted ? rulebook.joint.intercoolerEffectiveness[cooling] : 0,
    ...(induction === 'nitrous' ? { nitrousPower: siOf(build, 'nitrousPower') } : {}),
  }
}

interface Calibrated {
  input: FullLoadInput
  outcome: Pick<
    EngineLoads,
    'boost' | 'boostFromTarget' | 'reachable' | 'targetReached' | 'peakReached' | 'calibration'
  >
}

/** Share of the highest speed at which an engine makes its most power; from memory. */
const POWER_PEAK = 0.94

function calibrate(build: Build, base: FullLoadInput): Calibrated {
  let input = base
  const outcome = {
    boost: base.boost,
    boostFromTarget: false,
    reachable: undefined as number | undefined,
    targetReached: true,
    peakReached: true,
    calibration: UNCALIBRATED as Calibration,
  }
  if (has(build, 'targetPower')) {
    const boosted = base.induction === 'turbocharged' || base.induction === 'supercharged'
    const adjust = boosted && build.facts.boost.state === 'assumed' ? 'boost' : 'breathing'
    const at = { ...base, speed: POWER_PEAK * base.highestSpeed }
    const found = calibrateToPower(at, siOf(build, 'targetPower'), adjust)
    input = { ...input, breathingScale: found.breathingScale, boost: found.boost }
    outcome.boost = found.boost
    outcome.boostFromTarget = adjust === 'boost'
    outcome.reachable = found.reachable
    outcome.targetReached = found.reached
    outcome.calibration = { ...outcome.calibration, breathingScale: found.breathingScale }
  }
  if (has(build, 'peakCylinderPressure')) {
    const found = calibrateToPeakPressure(input, siOf(build, 'peakCylinderPressure') + ATMOSPHERE)
    input = { ...input, heatScale: found.heatScale }
    outcome.peakReached = found.reached
    outcome.calibration = { ...outcome.calibration, heatScale: found.heatScale }
  }
  return { input, outcome }
}

const UNCALIBRATED: Calibration = { breathingScale: 1, heatScale: 1 }

function asCalibrated(input: FullLoadInput, calibration: Calibration): Calibrated {
  const outcome = {
    boost: input.boost,
    boostFromTarget: false,
    reachable: undefined,
    targetReached: true,
    peakReached: true,
    calibration,
  }
  return { input, outcome }
}

/** Speeds from the torque peak (or the rulebook's lowest, while it is not known) to the highest. */
function fullLoadSpeeds(build: Build, { loadCases }: Rulebook): number[] {
  const highest = figureOf(build, 'peakRpm')
  const known = build.facts.torquePeakRpm.state === 'said'
  const from = Math.min(known ? figureOf(build, 'torquePeakRpm') : loadCases.fullLoadFrom, highest)
  const steps = loadCases.fullLoadSpeeds - 1
  return Array.from({ length: steps + 1 }, (_, step) => {
    const rpm = from + ((highest - from) * step) / steps
    return (step === steps ? highest : rpm) * RPM
  }).filter((speed, index, all) => index === 0 || speed > (all[index - 1] as number))
}

function masses(build: Build) {
  return {
    bore: siOf(build, 'bore'),
    stroke: siOf(build, 'stroke'),
    rodLength: siOf(build, 'rodLength'),
    reciprocatingMass: siOf(build, 'reciprocatingMass'),
    bigEndMass: siOf(build, 'bigEndMass'),
  }
}

function bearing(build: Build) {
  return {
    diameter: siOf(build, 'mainJournalDiameter'),
    width: siOf(build, 'mainBearingWidth'),
  }
}

const STEP = 1.05

/** How peak pressure follows what is assumed, by one cycle each with the figure 5 % up. */
function exponents(build: Build, at: FullLoadInput): Map<string, number> {
  const found = new Map<string, number>()
  const assumed = (key: 'compressionRatio' | 'boost' | 'nitrousPower'): boolean =>
    build.facts[key].state === 'assumed' && figureOf(build, key) > 0
  let peak = 0
  const measure = (key: string, input: FullLoadInput): void => {
    peak ||= fullLoad(at).cycle.peakPressure
    const ratio = fullLoad(input).cycle.peakPressure / peak
    found.set(key, Math.max(0, Math.log(ratio) / Math.log(STEP)))
  }
  if (assumed('compressionRatio')) {
    measure('compressionRatio', { ...at, compressionRatio: at.compressionRatio * STEP })
  }
  if (assumed('boost')) measure('boost', { ...at, boost: at.boost * STEP })
  if (assumed('nitrousPower') && at.nitrousPower) {
    measure('nitrousPower', { ...at, nitrousPower: at.nitrousPower * STEP })
  }
  return found
}
