import { DomainError, requireWithin } from './domain-error.ts'
import type { ThreadLimits } from './thread-limits.ts'

/** Shear areas of an engaged thread for each m of engagement, m²/m. */
export interface ShearAreas {
  /** As, thread of the screw, sheared at the hole's minor diameter */
  readonly screw: number
  /** An, thread of the hole, sheared at the screw's major diameter */
  readonly hole: number
}

/** tan 30°, slope of the flank. */
const FLANK = 1 / Math.sqrt(3)

/**
 * Shear areas of screw and hole thread for each m engaged:
 * As = π n Kn [1/(2n) + tan30 (Es − Kn)], An = π n Ds [1/(2n) + tan30 (Ds − En)], n = 1/P.
 *
 * @param pitch - P, m; above 0, up to 0.02
 * @param limits - see {@link ThreadLimits}; limits of the fit or measured diameters
 * @returns areas a length, m
 * @throws {DomainError} if the diameters do not overlap
 * @see FED-STD-H28/2; Machinery's Handbook, screw thread systems; form read in reprints
 */
export function shearAreas(pitch: number, limits: ThreadLimits): ShearAreas {
  requireWithin('pitch', pitch, 1e-5, 0.02, 'm')
  const { screwMajorMin, screwPitchMin, holeMinorMax, holePitchMax } = limits
  const screw = Math.PI * holeMinorMax * (0.5 + (FLANK * (screwPitchMin - holeMinorMax)) / pitch)
  const hole = Math.PI * screwMajorMin * (0.5 + (FLANK * (screwMajorMin - holePitchMax)) / pitch)
  if (!(screw > 0 && hole > 0)) {
    throw new DomainError('limits', `${screw} and ${hole} m`, 'threads that overlap')
  }
  return { screw, hole }
}

export interface StripInput {
  readonly areas: ShearAreas
  /** Le, engaged length with full thread, m; above 0 */
  readonly engagement: number
  /** Shear strength of the fastener, Pa; 0.58 of tensile strength when not known */
  readonly screwShear: number
  /** Shear strength of the block, Pa */
  readonly holeShear: number
}

/**
 * Tension that strips the weaker of the two threads: the least of area × shear strength.
 *
 * @param input - see {@link StripInput}
 * @returns loads, N, and which thread goes first
 * @throws {DomainError} if a value is not a finite number in its range
 * @see FED-STD-H28/2
 */
export function strippingLoad(input: StripInput): {
  readonly screw: number
  readonly hole: number
  readonly weaker: 'screw' | 'hole'
  readonly load: number
} {
  requireStrip(input)
  const screw = input.areas.screw * input.engagement * input.screwShear
  const hole = input.areas.hole * input.engagement * input.holeShear
  return { screw, hole, weaker: hole <= screw ? 'hole' : 'screw', load: Math.min(screw, hole) }
}

function requireStrip({ areas, engagement, screwShear, holeShear }: StripInput): void {
  requireWithin('areas.screw', areas.screw, 1e-5, 1, 'm')
  requireWithin('areas.hole', areas.hole, 1e-5, 1, 'm')
  requireWithin('engagement', engagement, 1e-4, 0.5, 'm')
  requireWithin('screwShear', screwShear, 1e6, 3e9, 'Pa')
  requireWithin('holeShear', holeShear, 1e6, 3e9, 'Pa')
}

/**
 * Engagement at which the screw breaks before its own thread strips, Le = 2 At / As′: the
 * standard takes shear strength as half of tensile strength.
 *
 * @param stressArea - At, m²; above 1e-7
 * @param areas - see {@link ShearAreas}
 * @returns Le, m
 * @throws {DomainError} if a value is not a finite number in its range
 * @see FED-STD-H28/2; Machinery's Handbook, minimum length of engagement
 */
export function equalStrengthEngagement(stressArea: number, areas: ShearAreas): number {
  requireWithin('stressArea', stressArea, 1e-7, 0.02, 'm²')
  requireWithin('areas.screw', areas.screw, 1e-5, 1, 'm')
  return (2 * stressArea) / areas.screw
}

/**
 * Relative strength of the threads, J = As Sut,screw / (An Sut,hole). Above 1 the hole strips
 * first and the engagement has to be J times as long.
 *
 * @param areas - see {@link ShearAreas}
 * @param screwUltimate - tensile strength of the screw, Pa; 1e7 to 3e9
 * @param holeUltimate - tensile strength of the block, Pa; 1e7 to 3e9
 * @returns J
 * @throws {DomainError} if a value is not a finite number in its range
 * @see FED-STD-H28/2; Machinery's Handbook
 */
export function relativeStrength(
  areas: ShearAreas,
  screwUltimate: number,
  holeUltimate: number,
): number {
  requireWithin('screwUltimate', screwUltimate, 1e7, 3e9, 'Pa')
  requireWithin('holeUltimate', holeUltimate, 1e7, 3e9, 'Pa')
  return (areas.screw * screwUltimate) / (areas.hole * holeUltimate)
}

/**
 * Engagement that carries a tension without stripping either thread, by shear strengths.
 *
 * @param load - N; above 0: the fastener's breaking load, or a preload with a margin
 * @param input - see {@link StripInput}, without the engagement
 * @returns length, m, of full thread
 * @throws {DomainError} if a value is not a finite number in its range
 * @see FED-STD-H28/2, solved for the length
 */
export function neededEngagement(load: number, input: Omit<StripInput, 'engagement'>): number {
  requireWithin('load', load, 1e-3, 1e7, 'N')
  const perLength = strippingLoad({ ...input, engagement: 0.01 }).load / 0.01
  return load / perLength
}
