import { requireWithin } from './domain-error.ts'
import { combinedUncertainty } from './guard-band.ts'

/** One housing measured before and after machining, from a face that was not touched; m. */
export interface AxisShiftReadings {
  /** From the untouched face (deck, or sump rail) to the crown of the block's half, before. */
  crownBefore: number
  crownAfter: number
  /** Diameter of the bore up and down, before (the block's half as a circle) and after. */
  diameterBefore: number
  diameterAfter: number
  /** Which way the distance is measured: the crown draws near the deck as the axis rises. */
  from: 'deck' | 'sump-rail'
}

/**
 * How far a bore's axis moved up into the block, from depths that can be
 * measured: the crown rises with the axis and with half of the growth of the bore.
 *
 * @param uncertainty - expanded uncertainty of the depths and of the diameters, m
 * @returns shift, m, up positive; and its own expanded uncertainty
 * @throws {DomainError} if a reading is not in its range
 * Source: geometry; JCGM 100:2008 (GUM), eq. 10.
 */
export function measuredAxisShift(
  readings: AxisShiftReadings,
  uncertainty: { depth: number; diameter: number },
): { shift: number; uncertainty: number } {
  const { crownBefore, crownAfter, diameterBefore, diameterAfter, from } = readings
  requireWithin('crownBefore', crownBefore, 0, 1, 'm')
  requireWithin('crownAfter', crownAfter, 0, 1, 'm')
  requireWithin('diameterBefore', diameterBefore, 0.02, 0.3, 'm')
  requireWithin('diameterAfter', diameterAfter, 0.02, 0.3, 'm')
  requireWithin('uncertainty.depth', uncertainty.depth, 0, 0.01, 'm')
  requireWithin('uncertainty.diameter', uncertainty.diameter, 0, 0.01, 'm')
  const up = from === 'deck' ? -1 : 1
  const crownRise = up * (crownAfter - crownBefore)
  return {
    shift: crownRise - (diameterAfter - diameterBefore) / 2,
    uncertainty: combinedUncertainty([
      { uncertainty: uncertainty.depth, sensitivity: Math.SQRT2 },
      { uncertainty: uncertainty.diameter, sensitivity: Math.SQRT1_2 },
    ]),
  }
}
