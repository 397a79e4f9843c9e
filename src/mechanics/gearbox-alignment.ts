import { requireWithin } from './domain-error.ts'

/** How the gearbox bore stands to the crank after the crank axis moved. */
export interface GearboxAlignment {
  /** Gearbox bore from the new crank axis, m: x to the side, y up. */
  x: number
  y: number
  /** Distance between the two axes, m. */
  offset: number
  /** What a dial indicator turned with the crank reads in all, twice the offset, m. */
  indicatorReading: number
  /** Direction from the crank axis to the gearbox bore, rad from straight up, clockwise. */
  direction: number
  /** Bend that the input shaft has to take between pilot and gearbox bearing, rad. */
  shaftAngle: number
}

/**
 * Gearbox (bell-housing) alignment after the crank axis moved. The dowels in
 * the block stay where they were, so the gearbox stays and the crank leaves it.
 *
 * @param axisShift - of the crank, up into the block, m; −0.005 to 0.005
 * @param before - gearbox bore from the old crank axis, m; each −0.005 to 0.005
 * @param inputShaft - pilot bearing to gearbox bearing, m; 0.05 to 1
 * @throws {DomainError} if an argument does not fit
 * Source: geometry; the reading of a turned indicator is twice the eccentricity.
 */
export function gearboxAlignment(
  axisShift: number,
  before: { x: number; y: number },
  inputShaft: number,
): GearboxAlignment {
  requireWithin('axisShift', axisShift, -0.005, 0.005, 'm')
  requireWithin('before.x', before.x, -0.005, 0.005, 'm')
  requireWithin('before.y', before.y, -0.005, 0.005, 'm')
  requireWithin('inputShaft', inputShaft, 0.05, 1, 'm')
  const x = before.x
  const y = before.y - axisShift
  const offset = Math.hypot(x, y)
  return {
    x,
    y,
    offset,
    indicatorReading: 2 * offset,
    direction: Math.atan2(x, y),
    shaftAngle: Math.atan(offset / inputShaft),
  }
}

/**
 * Offset of a bore from the axis of the indicator that was swung in it, from
 * four readings; a larger reading means that the bore lies farther on that side.
 *
 * @returns centre of the bore, m: x to the right, y up; `misread` is how far the four fail to
 *   agree, (top + bottom) − (left + right), 0 for a round bore read without slip
 * @throws {DomainError} if a reading is not within ±0.01 m
 */
export function centreFromIndicator(readings: {
  top: number
  right: number
  bottom: number
  left: number
}): { x: number; y: number; misread: number } {
  const { top, right, bottom, left } = readings
  for (const [side, reading] of Object.entries(readings)) {
    requireWithin(side, reading, -0.01, 0.01, 'm')
  }
  return { x: (right - left) / 2, y: (top - bottom) / 2, misread: top + bottom - left - right }
}
