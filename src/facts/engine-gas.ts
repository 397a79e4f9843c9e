import { type Build, choiceOf, figureOf, has, siOf } from '../build/build.ts'
import { STANDARD_PRESSURE } from '../mechanics/atmosphere.ts'
import { CRANK_LAYOUTS, type LayoutId } from '../mechanics/crank-layouts.ts'
import type { FuelId } from '../mechanics/fuels.ts'
import { closedThrottle, type FullLoad, fullLoad } from '../mechanics/full-load.ts'
import {
  BOOST_RANGE,
  calibrateToPeakPressure,
  calibrateToPower,
} from '../mechanics/full-load-calibration.ts'
import type { FullLoadInput, Induction } from '../mechanics/full-load-input.ts'
import type { Rulebook } from '../rulebook/load.ts'
import { once } from './memory.ts'

const RPM = Math.PI / 30

/** What the gas does in the cylinders of a build, SI. */
export interface EngineGas {
  /** One for each full-load speed, slow to fast; the fastest is the highest engine speed. */
  readonly fullLoads: readonly FullLoad[]
  /** rad/s, one for each full load, then the closed-throttle overspeed. */
  readonly speeds: readonly number[]
  /** Pa at each degree, closed throttle at the overspeed; worked out when it is first asked for. */
  readonly motored: () => Float64Array
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
  /**
   * d ln(peak pressure) for each d ln of what is assumed, by fact key; worked out when it is first
   * asked for.
   */
  readonly peakExponents: () => ReadonlyMap<string, number>
}

/** How the engine differs from the model's usual one. */
export interface Calibration {
  readonly breathingScale: number
  readonly heatScale: number
}

/** Facts that the gas cycles rest on besides the number of cylinders. */
export const GAS_FACTS = [
  'bore',
  'stroke',
  'rodLength',
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

function cylindersOf(build: Build): number {
  return CRANK_LAYOUTS[choiceOf(build, 'layout') as LayoutId].cylinders.length
}

/** A key under which the gas cycles of a build can be remembered. */
export function gasKey(build: Build, calibration?: Calibration): string {
  const known = `${cylindersOf(build)}/${calibration?.breathingScale}/${calibration?.heatScale}`
  return GAS_FACTS.reduce((key, name) => {
    const { value, state } = build.facts[name]
    return `${key}|${state[0]}${value}`
  }, known)
}

/**
 * Gas cycle at every full-load speed, and with the throttle shut above the highest.
 *
 * @param build - whole build
 * @param rulebook - its load cases and cooler effectiveness
 * @param calibration - when the engine is known already; target power and measured pressure are
 *   then not looked at again
 * @throws {DomainError} if a figure is outside the range of the mechanics
 */
export function engineGas(build: Build, rulebook: Rulebook, calibration?: Calibration): EngineGas {
  const base = { ...fullLoadInput(build, rulebook), ...calibration }
  const calibrated = calibration
    ? asCalibrated(base, calibration)
    : calibrate(build, base, rulebook)
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
  const slowest = (fullLoads[0] as FullLoad).cycle.peakPressure
  return {
    fullLoads,
    speeds: [...speeds, overspeed],
    ...calibrated.outcome,
    motored: once(() => closedThrottle({ ...at(overspeed), highestSpeed: overspeed }).pressure),
    peakExponents: once(() => exponents(build, at(speeds[0] as number), slowest)),
  }
}

/**
 * The rod as the mechanics take it: a rod too short to turn with its stroke is a slip, which
 * the contradiction rules name and withhold the call for; the loads beside it must still be finite.
 */
export function rodOf(build: Build): number {
  return Math.max(siOf(build, 'rodLength'), SHORTEST_ROD * siOf(build, 'stroke'))
}

/** Rod over stroke below which the slider-crank locks, with a little room. */
const SHORTEST_ROD = 0.56

function fullLoadInput(build: Build, rulebook: Rulebook): FullLoadInput {
  const induction = choiceOf(build, 'induction') as Induction
  const boosted = induction === 'turbocharged' || induction === 'supercharged'
  const cooling = choiceOf(build, 'chargeCooling') as 'none' | 'intercooler'
  const highestSpeed = siOf(build, 'peakRpm')
  return {
    bore: siOf(build, 'bore'),
    stroke: siOf(build, 'stroke'),
    rodLength: rodOf(build),
    compressionRatio: figureOf(build, 'compressionRatio'),
    cylinders: cylindersOf(build),
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
    EngineGas,
    'boost' | 'boostFromTarget' | 'reachable' | 'targetReached' | 'peakReached' | 'calibration'
  >
}

function calibrate(build: Build, base: FullLoadInput, { loadCases }: Rulebook): Calibrated {
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
    const at = { ...base, speed: loadCases.powerPeak * base.highestSpeed }
    const found = calibrateToPower(at, siOf(build, 'targetPower'), adjust)
    input = { ...input, breathingScale: found.breathingScale, boost: found.boost }
    outcome.boost = found.boost
    outcome.boostFromTarget = adjust === 'boost'
    outcome.reachable = found.reachable
    outcome.targetReached = found.reached
    outcome.calibration = { ...outcome.calibration, breathingScale: found.breathingScale }
  }
  if (has(build, 'peakCylinderPressure')) {
    const found = calibrateToPeakPressure(
      input,
      siOf(build, 'peakCylinderPressure') + STANDARD_PRESSURE,
    )
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

const STEP = 1.05
/** Most that the model takes, so that the step goes down where it would go beyond. */
const MOST = { compressionRatio: 18, boost: BOOST_RANGE.most, nitrousPower: 2e6 } as const

/** How peak pressure follows what is assumed, by one cycle each with the figure 5 % up or down. */
function exponents(build: Build, at: FullLoadInput, peak: number): Map<string, number> {
  const found = new Map<string, number>()
  for (const key of ['compressionRatio', 'boost', 'nitrousPower'] as const) {
    const figure = at[key] ?? 0
    if (build.facts[key].state !== 'assumed' || figure <= 0) continue
    const step = figure * STEP > MOST[key] ? 1 / STEP : STEP
    const ratio = fullLoad({ ...at, [key]: figure * step }).cycle.peakPressure / peak
    found.set(key, Math.max(0, Math.log(ratio) / Math.log(step)))
  }
  return found
}
