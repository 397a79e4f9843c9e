import type { FullLoadInput } from '../../src/mechanics/full-load-input.ts'

/** Revolutions a minute, in radians a second. */
export const RPM = Math.PI / 30

/** A street V8 at its torque peak; made up. */
export const v8: FullLoadInput = {
  bore: 0.1021,
  stroke: 0.0884,
  rodLength: 0.1448,
  compressionRatio: 10,
  cylinders: 8,
  speed: 4500 * RPM,
  torquePeakSpeed: 4500 * RPM,
  highestSpeed: 6500 * RPM,
  fuel: 'pump-gasoline',
  induction: 'naturally-aspirated',
  boost: 0,
  intercoolerEffectiveness: 0,
}
