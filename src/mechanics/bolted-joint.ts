import { requireWithin } from './domain-error.ts'

/**
 * Stiffness of a fastener over its effective length, plain shank and thread in series:
 * kb = Ad At E / (Ad lt + At ld).
 *
 * @param modulus - E, Pa; 1e9 to 1e12
 * @param shankArea - Ad, area of the plain shank, m²; above 1e-7
 * @param stressArea - At, tensile stress area of the thread, m²; above 1e-7
 * @param shankLength - ld, plain shank within the effective length, m; 0 to 1
 * @param threadLength - lt, thread within the effective length, m; 0 to 1
 * @returns kb, N/m
 * @throws {DomainError} if an argument is not a finite number in its range, or both lengths
 *   are nought
 * @see Shigley's Mechanical Engineering Design, 9th ed., eq 8–17
 */
export function fastenerStiffness(
  modulus: number,
  shankArea: number,
  stressArea: number,
  shankLength: number,
  threadLength: number,
): number {
  requireWithin('modulus', modulus, 1e9, 1e12, 'Pa')
  requireWithin('shankArea', shankArea, 1e-7, 0.02, 'm²')
  requireWithin('stressArea', stressArea, 1e-7, 0.02, 'm²')
  requireWithin('shankLength', shankLength, 0, 1, 'm')
  requireWithin('threadLength', threadLength, 0, 1, 'm')
  requireWithin('effective length', shankLength + threadLength, 1e-4, 2, 'm')
  return (shankArea * stressArea * modulus) / (shankArea * threadLength + stressArea * shankLength)
}

/**
 * Share of an outside load that the fastener feels, C = kb / (kb + km); the rest unloads the
 * faces. With loads that enter below the head VDI 2230 multiplies by n, 0 to 1.
 *
 * @param fastener - kb, N/m; above 0
 * @param members - km, N/m; above 0
 * @returns C, 0 to 1
 * @throws {DomainError} if an argument is not a finite number in its range
 * @see Shigley, 9th ed., eq (f) of section 8–7; VDI 2230, load factor Φ
 */
export function loadFactor(fastener: number, members: number): number {
  requireWithin('fastener', fastener, 1, 1e13, 'N/m')
  requireWithin('members', members, 1, 1e14, 'N/m')
  return fastener / (fastener + members)
}

/**
 * Clamp still left at the faces under an outside pull: F − (1 − C) P, never below nought.
 *
 * @param clamp - F, N; at least 0
 * @param pull - P, N; at least 0
 * @param factor - C, 0 to 1
 * @returns residual clamp, N
 * @throws {DomainError} if an argument is not a finite number in its range
 * @see Shigley, 9th ed., eq 8–25
 */
export function residualClamp(clamp: number, pull: number, factor: number): number {
  requireWithin('clamp', clamp, 0, 1e8, 'N')
  requireWithin('pull', pull, 0, 1e8, 'N')
  requireWithin('factor', factor, 0, 1)
  return Math.max(0, clamp - (1 - factor) * pull)
}

export interface JointFactors {
  /** Against yielding at full load, np = Sp At / (C P + Fi). */
  readonly yielding: number
  /** How often the load fits before proof, nL = (Sp At − Fi) / (C P). */
  readonly load: number
  /** Against the joint opening, n0 = Fi / (P (1 − C)). */
  readonly separation: number
}

/**
 * The three static safety factors of one preloaded fastener in tension.
 *
 * @param joint - preload Fi (N, at least 0), load P (N, above 0), factor C (above 0, below 1),
 *   stressArea At (m²), proofStrength Sp (Pa)
 * @returns the factors, pure numbers
 * @throws {DomainError} if a value is not a finite number in its range
 * @see Shigley, 9th ed., eqs 8–28, 8–29, 8–30
 */
export function jointFactors(joint: {
  readonly preload: number
  readonly load: number
  readonly factor: number
  readonly stressArea: number
  readonly proofStrength: number
}): JointFactors {
  const { preload, load, factor, stressArea, proofStrength } = joint
  requireWithin('preload', preload, 0, 1e8, 'N')
  requireWithin('load', load, 1e-3, 1e8, 'N')
  requireWithin('factor', factor, 1e-6, 1 - 1e-6)
  requireWithin('stressArea', stressArea, 1e-7, 0.02, 'm²')
  requireWithin('proofStrength', proofStrength, 1e7, 3e9, 'Pa')
  const proof = proofStrength * stressArea
  return {
    yielding: proof / (factor * load + preload),
    load: (proof - preload) / (factor * load),
    separation: preload / (load * (1 - factor)),
  }
}
