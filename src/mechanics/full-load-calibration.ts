import { requireWithin } from './domain-error.ts'
import { fullLoad } from './full-load.ts'
import type { FullLoadInput } from './full-load-input.ts'

/** What a calibration found. */
export interface PowerCalibration {
  readonly breathingScale: number
  /** Pa gauge */
  readonly boost: number
  readonly reached: boolean
  /** The nearest power within the plausible range, W. */
  readonly reachable: number
}

/** Plausible breathing against the usual curve. Chosen, no published source. */
export const BREATHING_RANGE = { least: 0.6, most: 1.25 } as const
/** Plausible boost, Pa gauge. Chosen, no published source. */
export const BOOST_RANGE = { least: 0, most: 4e5 } as const

/**
 * Set breathing (boost, for a boosted engine) so that the engine makes a known power.
 *
 * @param input - engine at the speed of the target; a boosted engine's boost is the unknown
 * @param targetPower - W at the crank, above 0
 * @param adjust - which figure to set; default boost for a boosted engine, else breathing
 * @returns the setting; `reached` false and the nearest power when the range does not hold it
 * @throws {DomainError} if an input does not fit its range
 */
export function calibrateToPower(
  input: FullLoadInput,
  targetPower: number,
  adjust: 'breathing' | 'boost' = isBoosted(input) ? 'boost' : 'breathing',
): PowerCalibration {
  requireWithin('targetPower', targetPower, 1, 1e8, 'W')
  const range = adjust === 'boost' ? BOOST_RANGE : BREATHING_RANGE
  const settings = (x: number) => ({
    breathingScale: adjust === 'boost' ? (input.breathingScale ?? 1) : x,
    boost: adjust === 'boost' ? x : input.boost,
  })
  const power = (x: number) => fullLoad({ ...input, ...settings(x) }).power
  const found = solveRising(power, targetPower, range.least, range.most)
  return { ...settings(found.at), reached: found.reached, reachable: found.value }
}

function isBoosted(input: FullLoadInput): boolean {
  return input.induction === 'turbocharged' || input.induction === 'supercharged'
}

/** Plausible heat of the burn against the fuel's own. Chosen, no published source. */
const HEAT_RANGE = { least: 0.5, most: 1.6 } as const

/** What a calibration to a measured peak pressure found. */
export interface PeakCalibration {
  readonly heatScale: number
  readonly reached: boolean
  /** The nearest peak pressure, Pa absolute. */
  readonly reachable: number
}

/**
 * Scale the heat of the burn so that the peak pressure is the measured one.
 *
 * @param input - engine at the speed of the measurement
 * @param absolutePeak - Pa absolute, 1e5 to 1e8
 * @returns the setting; `reached` false and the nearest peak when no plausible heat gives it
 * @throws {DomainError} if an input does not fit its range
 */
export function calibrateToPeakPressure(
  input: FullLoadInput,
  absolutePeak: number,
): PeakCalibration {
  requireWithin('absolutePeak', absolutePeak, 1e5, 1e8, 'Pa')
  const peak = (heatScale: number) => fullLoad({ ...input, heatScale }).cycle.peakPressure
  const found = solveRising(peak, absolutePeak, HEAT_RANGE.least, HEAT_RANGE.most)
  return { heatScale: found.at, reached: found.reached, reachable: found.value }
}

/** How near the ends of the search come, as a part of its whole range. */
const SOLVED = 1e-10

/**
 * Where a rising function meets a target; the nearer end when it does not. False position, with
 * an end that stays put given less weight each time (Illinois): a few steps, as many halvings at
 * worst.
 */
function solveRising(f: (x: number) => number, target: number, least: number, most: number) {
  const low = f(least)
  if (target <= low) return { at: least, value: low, reached: target === low }
  const high = f(most)
  if (target >= high) return { at: most, value: high, reached: target === high }
  let [from, short] = [least, low - target]
  let [to, over] = [most, high - target]
  let at = least
  let value = low
  for (let step = 0, side = 0; step < 60 && to - from > SOLVED * (most - least); step++) {
    at = step % 4 === 3 ? (from + to) / 2 : (from * over - to * short) / (over - short)
    value = f(at)
    const miss = value - target
    if (Math.abs(miss) <= SOLVED * Math.abs(target)) break
    if (miss < 0) {
      if (side < 0) over /= 2
      ;[from, short, side] = [at, miss, -1]
    } else {
      if (side > 0) short /= 2
      ;[to, over, side] = [at, miss, 1]
    }
  }
  return { at, value, reached: true }
}
