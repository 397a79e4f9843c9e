import { DomainError, requireWithin } from './domain-error.ts'

/** Inch threads (unified, UN) and metric threads (ISO): same 60° profile, different roots. */
export type ThreadForm = 'un' | 'iso'

const INCH = 0.0254

/**
 * Refuse a diameter and pitch that make no thread of the 60° profile.
 *
 * @param nominalDiameter - d, basic major diameter, m; 0.001 to 0.150
 * @param pitch - P, axial distance between crests, m; above 0, up to d/4
 * @throws {DomainError} if an argument is not a finite number in its range
 */
export function requireThread(nominalDiameter: number, pitch: number): void {
  requireWithin('nominalDiameter', nominalDiameter, 0.001, 0.15, 'm')
  if (!(pitch > 0 && pitch <= nominalDiameter / 4)) {
    throw new DomainError('pitch', pitch, `above 0 and at most ${nominalDiameter / 4} m`)
  }
}

/**
 * Which family a pitch belongs to. Inch pitches are a whole number of turns an inch,
 * or a half (4½); no pitch of the ISO series from 0.5 to 4 mm comes within 1 in 300 of one
 * of the turns that screws of this use have (6 to 32 an inch), so the pitch alone decides.
 *
 * @param pitch - P, m; above 0, up to 0.0375
 * @returns 'un' if the turns per inch are whole within 1 in 1000, else 'iso'
 * @throws {DomainError} if the pitch is not a finite number in its range
 */
export function threadFormOfPitch(pitch: number): ThreadForm {
  if (!(pitch > 0)) throw new DomainError('pitch', pitch, 'above 0 m')
  requireWithin('pitch', pitch, 0, 0.0375, 'm')
  const turns = INCH / pitch
  const nearest = turns < 5 ? Math.round(turns * 2) / 2 : Math.round(turns)
  return Math.abs(turns - nearest) <= nearest * 1e-3 ? 'un' : 'iso'
}

/**
 * Height of the sharp triangle the 60° profile is cut from, H = (√3/2) P.
 *
 * @param pitch - P, m
 * @returns H, m
 * @see ISO 68-1; ASME B1.1, basic profile
 */
function fundamentalTriangleHeight(pitch: number): number {
  return (Math.sqrt(3) / 2) * pitch
}

/**
 * Pitch diameter d₂ = d − 2·(3/8)H = d − 0.6495 P: where thread and groove are equally wide.
 *
 * @param nominalDiameter - d, m; 0.001 to 0.150
 * @param pitch - P, m; above 0, up to d/4
 * @returns d₂, m
 * @throws {DomainError} if an argument is not a finite number in its range
 * @see ISO 724; ASME B1.1, basic dimensions
 */
export function pitchDiameter(nominalDiameter: number, pitch: number): number {
  requireThread(nominalDiameter, pitch)
  return nominalDiameter - 0.75 * fundamentalTriangleHeight(pitch)
}

/**
 * Root diameter of the screw's thread, d₃ = d − (17/12)H = d − 1.2269 P (rounded root).
 *
 * @param nominalDiameter - d, m; 0.001 to 0.150
 * @param pitch - P, m; above 0, up to d/4
 * @returns d₃, m
 * @throws {DomainError} if an argument is not a finite number in its range
 * @see ISO 898-1 and VDI 2230, root diameter d₃
 */
export function screwRootDiameter(nominalDiameter: number, pitch: number): number {
  requireThread(nominalDiameter, pitch)
  return nominalDiameter - (17 / 12) * fundamentalTriangleHeight(pitch)
}

/**
 * Minor diameter of the tapped hole, D₁ = d − 2·(5/8)H = d − 1.0825 P.
 *
 * @param nominalDiameter - d, m; 0.001 to 0.150
 * @param pitch - P, m; above 0, up to d/4
 * @returns D₁, m
 * @throws {DomainError} if an argument is not a finite number in its range
 * @see ISO 724; ASME B1.1, basic dimensions
 */
export function holeMinorDiameter(nominalDiameter: number, pitch: number): number {
  requireThread(nominalDiameter, pitch)
  return nominalDiameter - 1.25 * fundamentalTriangleHeight(pitch)
}

/**
 * Tensile stress area of an external thread: the section of a plain round bar that would
 * break at the same tension as the thread.
 *
 * ISO: A = π/4 · (d − 0.9382 P)²; unified inch: A = π/4 · (d − 0.9743/n)² with n = 1/P.
 *
 * @param nominalDiameter - d, m; 0.001 to 0.150
 * @param pitch - P, m; above 0, up to d/4
 * @param form - thread family; told from the pitch when left out
 * @returns A, m²
 * @throws {DomainError} if an argument is not a finite number in its range
 *
 * @see ISO 898-1, nominal stress area; ASME B1.1, tensile stress area
 * @see Budynas & Nisbett, Shigley's Mechanical Engineering Design, 9th ed., Tables 8–1, 8–2
 *
 * @example
 * tensileStressArea(0.010, 0.0015) // 5.80e-5 m², the 58.0 mm² of the table
 */
export function tensileStressArea(
  nominalDiameter: number,
  pitch: number,
  form?: ThreadForm,
): number {
  requireThread(nominalDiameter, pitch)
  const unified = (form ?? threadFormOfPitch(pitch)) === 'un'
  const meanDiameter = nominalDiameter - (unified ? 0.9743 : 0.9382) * pitch
  return (Math.PI / 4) * meanDiameter ** 2
}
