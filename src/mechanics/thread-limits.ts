import {
  holeMinorDiameter,
  pitchDiameter,
  requireThread,
  type ThreadForm,
  threadFormOfPitch,
} from './threads.ts'

/** The diameters that decide stripping, m, at the limits that leave least metal. */
export interface ThreadLimits {
  /** Ds, least major diameter of the screw */
  readonly screwMajorMin: number
  /** Es, least pitch diameter of the screw */
  readonly screwPitchMin: number
  /** Kn, greatest minor diameter of the hole */
  readonly holeMinorMax: number
  /** En, greatest pitch diameter of the hole */
  readonly holePitchMax: number
}

const INCH = 0.0254

/** Classes 2A and 2B, inches: ASME B1.1, section on tolerance formulas (from memory). */
function unifiedLimits(d: number, pitch: number): ThreadLimits {
  const [di, p] = [d / INCH, pitch / INCH]
  // Length of engagement d, the standard's own base for coarse and fine series.
  const pitchTolerance = 0.0015 * Math.cbrt(di) + 0.0015 * Math.sqrt(di) + 0.015 * p ** (2 / 3)
  const allowance = 0.3 * pitchTolerance
  const majorTolerance = 0.06 * p ** (2 / 3)
  // The form for sizes from 1/4 inch; below it the standard uses another.
  const minorTolerance = Math.max(0.25 * p - 0.4 * p * p, 0.05 * p)
  return {
    screwMajorMin: d - (allowance + majorTolerance) * INCH,
    screwPitchMin: pitchDiameter(d, pitch) - (allowance + pitchTolerance) * INCH,
    holeMinorMax: holeMinorDiameter(d, pitch) + minorTolerance * INCH,
    holePitchMax: pitchDiameter(d, pitch) + 1.3 * pitchTolerance * INCH,
  }
}

/** Classes 6g and 6H, µm of mm: ISO 965-1, tolerance formulas (from memory). */
function metricLimits(d: number, pitch: number): ThreadLimits {
  const [dm, p] = [d * 1000, pitch * 1000]
  const allowance = 15 + 11 * p
  const pitchTolerance = 90 * p ** 0.4 * dm ** 0.1
  const majorTolerance = 180 * p ** (2 / 3) - 3.15 / Math.sqrt(p)
  const minorTolerance = p < 1 ? 433 * p - 190 * p ** 1.22 : 230 * p ** 0.7
  return {
    screwMajorMin: d - (allowance + majorTolerance) * 1e-6,
    screwPitchMin: pitchDiameter(d, pitch) - (allowance + pitchTolerance) * 1e-6,
    holeMinorMax: holeMinorDiameter(d, pitch) + minorTolerance * 1e-6,
    holePitchMax: pitchDiameter(d, pitch) + 1.32 * pitchTolerance * 1e-6,
  }
}

/**
 * Limits of the usual fit, classes 2A/2B for inch and 6g/6H for metric threads, by the
 * formulas of the standards instead of their tables (which round to 0.0001 in and to the
 * steps of preferred numbers).
 *
 * @param nominalDiameter - d, m; 0.006 to 0.150 (¼ in and up for the inch formulas)
 * @param pitch - P, m; above 0, up to d/4
 * @param form - thread family; told from the pitch when left out
 * @returns limits, m
 * @throws {DomainError} if an argument is not a finite number in its range
 * @see ASME B1.1; ISO 965-1 (formulas from memory)
 */
export function threadLimits(
  nominalDiameter: number,
  pitch: number,
  form?: ThreadForm,
): ThreadLimits {
  requireThread(nominalDiameter, pitch)
  return (form ?? threadFormOfPitch(pitch)) === 'un'
    ? unifiedLimits(nominalDiameter, pitch)
    : metricLimits(nominalDiameter, pitch)
}
