import { requireWithin } from './domain-error.ts'
import { type GasCycleInput, gasCycle } from './gas-cycle.ts'

/**
 * Half of the charge burnt at 7° after top dead centre: best-torque phasing without a search.
 *
 * Published for production engines: half burnt near 8° to 12°, peak pressure near 15° (Heywood
 * 1988, section 9.1: about 10° and 16°, from memory). The torque of this model is flat there and
 * best at 5° to 7°; 7° lies nearest to both and gives away less than 0.2 % of the work.
 */
export const BEST_TORQUE_HALF_BURNT = (7 * Math.PI) / 180

/** Golden section, (√5 − 1)/2. */
const GOLDEN = (Math.sqrt(5) - 1) / 2

/** What the search for best torque found. */
export interface BestTorque {
  /** Start of the burn, rad after firing top dead centre. */
  readonly burnStart: number
  /** Gross mean effective pressure there, Pa. */
  readonly imepGross: number
}

/**
 * The start of the burn that gives most work, by golden-section search.
 *
 * @param input - the cycle; its own burnStart is not used
 * @param earliest - rad, default −90°
 * @param latest - rad, default +30°
 * @param tolerance - width at which the search ends, rad, default 0.05°
 * @throws {DomainError} if the search's ends are not in order or a cycle input does not fit
 */
export function bestTorqueStart(
  input: GasCycleInput,
  earliest = -Math.PI / 2,
  latest = Math.PI / 6,
  tolerance = Math.PI / 3600,
): BestTorque {
  requireWithin('latest', latest, earliest, Math.PI / 2, 'rad')
  requireWithin('tolerance', tolerance, 1e-6, 1, 'rad')
  const work = (burnStart: number) => gasCycle({ ...input, burnStart }).imepGross
  let low = earliest
  let high = latest
  let left = high - GOLDEN * (high - low)
  let right = low + GOLDEN * (high - low)
  let atLeft = work(left)
  let atRight = work(right)
  while (high - low > tolerance) {
    if (atLeft > atRight) {
      high = right
      right = left
      atRight = atLeft
      left = high - GOLDEN * (high - low)
      atLeft = work(left)
    } else {
      low = left
      left = right
      atLeft = atRight
      right = low + GOLDEN * (high - low)
      atRight = work(right)
    }
  }
  const burnStart = (low + high) / 2
  return { burnStart, imepGross: work(burnStart) }
}
