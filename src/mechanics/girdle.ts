import { requireWithin } from './domain-error.ts'

/** A plate that ties the caps to each other and to the rails of the block. */
export interface Girdle {
  /** Clamp its own fasteners add at the cap, N upright; 0 to 2e5 */
  readonly clampAdded?: number | undefined
  /**
   * Share of pull and side push that goes through the plate instead of the cap's joint,
   * 0 to 0.6. Nothing published was found; 0 counts on clamp alone.
   */
  readonly stiffnessShare?: number | undefined
}

/**
 * What a girdle does to a cap's joint: clamp added, and the factor left on both loads.
 *
 * Assumes plate and cap move together, so that the plate takes a fixed share of each load.
 * That holds only while the plate is clamped flat on every cap.
 *
 * @param girdle - see {@link Girdle}; nothing when left out
 * @returns clamp in N and loadLeft, 0.4 to 1
 * @throws {DomainError} if a value is not a finite number in its range
 */
export function girdleEffect(girdle: Girdle | undefined): { clamp: number; loadLeft: number } {
  const { clampAdded = 0, stiffnessShare = 0 } = girdle ?? {}
  requireWithin('girdle.clampAdded', clampAdded, 0, 2e5, 'N')
  requireWithin('girdle.stiffnessShare', stiffnessShare, 0, 0.6)
  return { clamp: clampAdded, loadLeft: 1 - stiffnessShare }
}

/**
 * Share of a load that a plate takes beside a cap's joint, springs side by side: kg/(kg + kc).
 *
 * @param girdleStiffness - kg, N/m; 0 to 1e12
 * @param capStiffness - kc, N/m; 1e5 to 1e13
 * @returns share, 0 to 1
 * @throws {DomainError} if an argument is not a finite number in its range
 */
export function girdleShare(girdleStiffness: number, capStiffness: number): number {
  requireWithin('girdleStiffness', girdleStiffness, 0, 1e12, 'N/m')
  requireWithin('capStiffness', capStiffness, 1e5, 1e13, 'N/m')
  return girdleStiffness / (girdleStiffness + capStiffness)
}
