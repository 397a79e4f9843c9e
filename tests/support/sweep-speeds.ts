import { requireWithin } from '../../src/mechanics/domain-error.ts'

/** 500 turns a minute in rad/s: the usual spacing of a sweep. */
export const SWEEP_STEP = (500 * Math.PI) / 30

/**
 * Speeds at which to compute full-load mains: from torque peak in even steps, and the highest.
 *
 * The grid hangs on the torque peak, so raising the highest speed only adds speeds, apart from the
 * old highest, which gives way to the new. That loses nothing for pull-down: with the same
 * pressures, the pull at one crank angle is convex in ω² (see the cap's share), so is the greatest
 * over all angles, and a convex function between two speeds is never above both its ends. Inertia
 * relieves gas at firing dead centre, so at one speed a faster engine may pull less; over the
 * sweep the worst pull never falls as the highest speed rises.
 *
 * @param torquePeakSpeed - rad/s, 10 to 3000
 * @param highestSpeed - rad/s, 10 to 3000; if it is below the torque peak, it is the only speed
 * @param step - rad/s, 5 to 500; default 500 turns a minute
 * @returns rising speeds, rad/s; the last is the highest
 * @throws {DomainError} outside these ranges
 */
export function sweepSpeeds(
  torquePeakSpeed: number,
  highestSpeed: number,
  step = SWEEP_STEP,
): number[] {
  requireWithin('torquePeakSpeed', torquePeakSpeed, 10, 3000, 'rad/s')
  requireWithin('highestSpeed', highestSpeed, 10, 3000, 'rad/s')
  requireWithin('step', step, 5, 500, 'rad/s')
  const speeds: number[] = []
  for (let count = 0; torquePeakSpeed + count * step < highestSpeed; count++) {
    speeds.push(torquePeakSpeed + count * step)
  }
  return [...speeds, highestSpeed]
}
