import { requireWithin } from './domain-error.ts'
import { shiftedCentres, shiftToCentres } from './timing-drive.ts'

/** A pair of timing gears and the shift of the crank axis; m and rad. */
export interface GearDriveInput {
  /** Crank axis to cam axis before the shift, m; 0.02 to 1. */
  centreDistance: number
  /** Standard centre distance, half of (teeth × module) of both; `centreDistance` when not given. */
  standardCentreDistance?: number
  /** Pressure angle in the plane of rotation, rad; 0.17 to 0.61. */
  pressureAngle: number
  /** Line from crank to cam, measured from the direction of the shift; 0 when not given. */
  camAngle?: number
  /** How far the crank axis moved, m, positive towards the cam; −0.005 to 0.005. */
  axisShift: number
  /** Backlash measured before, along the pitch circle, m. */
  backlashBefore: number
}

export interface GearDrive {
  centreDistance: number
  shortening: number
  /** Change of backlash along the pitch circle, exact; negative when the gears come closer. */
  change: number
  /** The same by 2 ΔC tan φ. */
  changeApproximate: number
  /** Backlash left; below 0 the teeth bind. */
  backlash: number
  /** Centre distance that could be lost before no backlash is left. */
  shorteningToBind: number
}

/** Involute of an angle, tan φ − φ. */
export function involute(angle: number): number {
  return Math.tan(angle) - angle
}

/**
 * Pressure angle in the plane of rotation of helical gears,
 * tan φt = tan φn / cos β; for spur gears β = 0 leaves φn as it is.
 *
 * @param normalAngle - φn, rad; 0.17 to 0.61
 * @param helix - β, rad; 0 to 0.8
 * @throws {DomainError} if an angle does not fit
 * @see Shigley's Mechanical Engineering Design, 9th ed., eq. 13–19
 */
export function transversePressureAngle(normalAngle: number, helix: number): number {
  requireWithin('normalAngle', normalAngle, 0.17, 0.61, 'rad')
  requireWithin('helix', helix, 0, 0.8, 'rad')
  return Math.atan(Math.tan(normalAngle) / Math.cos(helix))
}

/**
 * What a moved crank axis does to the backlash of timing gears. On centres a the
 * gears work at φw, cos φw = a₀ cos φ / a, and gain backlash 2 a (inv φw − inv φ)
 * over their standard centres a₀.
 *
 * @throws {DomainError} if a figure is not in its range or the centres are too close to mesh
 * Source: involute geometry (working pressure angle); e.g. Merritt, Gear Engineering (1971), from
 * memory.
 */
export function gearDrive(input: GearDriveInput): GearDrive {
  const { pressureAngle, backlashBefore } = input
  const before = input.centreDistance
  const standard = input.standardCentreDistance ?? before
  requireWithin('centreDistance', before, 0.02, 1, 'm')
  requireWithin('standardCentreDistance', standard, 0.95 * before, 1.05 * before, 'm')
  requireWithin('pressureAngle', pressureAngle, 0.17, 0.61, 'rad')
  requireWithin('backlashBefore', backlashBefore, 0, 0.002, 'm')
  const after = shiftedCentres(before, input.axisShift, input.camAngle ?? 0)
  const gain = (centres: number) => backlashGain(centres, standard, pressureAngle)
  const change = gain(after) - gain(before)
  return {
    centreDistance: after,
    shortening: before - after,
    change,
    changeApproximate: -2 * (before - after) * Math.tan(pressureAngle),
    backlash: backlashBefore + change,
    shorteningToBind: before - centresWith(before, standard, pressureAngle, backlashBefore),
  }
}

/**
 * Greatest axis shift that leaves a given backlash.
 *
 * @param input - the gears; an `axisShift` in it does not count
 * @param least - backlash to be left, m; 0 or above
 * @returns m towards the cam; negative when there is less than that already
 * @throws {DomainError} if a figure is not in its range, or no shift in that direction gives it
 */
export function mostShiftForBacklash(
  input: Omit<GearDriveInput, 'axisShift'>,
  least: number,
): number {
  const { centreDistance, pressureAngle, backlashBefore, camAngle = 0 } = input
  requireWithin('least', least, 0, 0.002, 'm')
  const standard = input.standardCentreDistance ?? centreDistance
  const centres = centresWith(centreDistance, standard, pressureAngle, backlashBefore - least)
  return shiftToCentres(centreDistance, centres, camAngle)
}

/** Backlash gained over the standard centres, along the pitch circle, m. */
function backlashGain(centres: number, standard: number, angle: number): number {
  const cosine = (standard * Math.cos(angle)) / centres
  requireWithin('centre distance', centres, standard * Math.cos(angle), 2, 'm')
  return 2 * centres * (involute(Math.acos(cosine)) - involute(angle))
}

/** Centres on which so much backlash is used up; Newton, whose slope is 2 (inv φw − inv φ + tan φw). */
function centresWith(before: number, standard: number, angle: number, backlash: number): number {
  const wanted = backlashGain(before, standard, angle) - backlash
  let centres = before
  for (let step = 0; step < 20; step++) {
    const working = Math.acos((standard * Math.cos(angle)) / centres)
    const slope = 2 * (involute(working) - involute(angle) + Math.tan(working))
    const move = (backlashGain(centres, standard, angle) - wanted) / slope
    // The base circles must not pass each other on the way.
    centres = Math.max(centres - move, standard * Math.cos(angle) * (1 + 1e-9))
    if (Math.abs(move) < 1e-15) break
  }
  return centres
}
