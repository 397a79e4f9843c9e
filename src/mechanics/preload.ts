import { requireWithin } from './domain-error.ts'
import { pitchDiameter } from './threads.ts'

/**
 * Torque that gives a preload, by nut factor: T = K F d.
 *
 * @param preload - F, N; 0 to 1e7
 * @param nominalDiameter - d, m; 0.001 to 0.150
 * @param nutFactor - K, pure number; 0.03 to 1
 * @returns T, N m
 * @throws {DomainError} if an argument is not a finite number in its range
 * @see Shigley's Mechanical Engineering Design, 9th ed., eq 8–27
 */
export function torqueForPreload(
  preload: number,
  nominalDiameter: number,
  nutFactor: number,
): number {
  requireWithin('preload', preload, 0, 1e7, 'N')
  requireNutFactor(nominalDiameter, nutFactor)
  return nutFactor * preload * nominalDiameter
}

/**
 * Preload that a torque gives, by nut factor: F = T / (K d).
 *
 * @param torque - T, N m; 0 to 10 000
 * @param nominalDiameter - d, m; 0.001 to 0.150
 * @param nutFactor - K, pure number; 0.03 to 1
 * @returns F, N
 * @throws {DomainError} if an argument is not a finite number in its range
 * @see Shigley, 9th ed., eq 8–27
 *
 * @example
 * preloadForTorque(115.2, 0.0127, 0.2) // 45 400 N: half-inch bolt, 85 lbf ft, plain
 */
export function preloadForTorque(
  torque: number,
  nominalDiameter: number,
  nutFactor: number,
): number {
  requireWithin('torque', torque, 0, 1e4, 'N m')
  requireNutFactor(nominalDiameter, nutFactor)
  return torque / (nutFactor * nominalDiameter)
}

function requireNutFactor(nominalDiameter: number, nutFactor: number): void {
  requireWithin('nominalDiameter', nominalDiameter, 0.001, 0.15, 'm')
  requireWithin('nutFactor', nutFactor, 0.03, 1)
}

export interface TighteningFriction {
  /** d, m; 0.001 to 0.150 */
  readonly nominalDiameter: number
  /** P, m; above 0, up to d/4 */
  readonly pitch: number
  /** Friction in the thread; 0 to 0.6 */
  readonly threadFriction: number
  /** Friction under the turning head or nut; 0 to 0.6 */
  readonly collarFriction: number
  /** dm, m; the pitch diameter when left out */
  readonly meanThreadDiameter?: number | undefined
  /** dc, mean diameter of the face that turns, m; 1.25 d when left out */
  readonly meanCollarDiameter?: number | undefined
}

/** The three places the torque goes, each as a share of F·d; they add up to K. */
export interface NutFactorParts {
  /** Stretches the fastener: the slope of the thread alone. */
  readonly lead: number
  readonly thread: number
  readonly collar: number
}

/**
 * Nut factor by the full torque equation for a 60° thread (α = 30°):
 * K = (dm/2d)·(tan λ + f sec α)/(1 − f tan λ sec α) + (dc/2d)·fc.
 *
 * @param friction - geometry and friction, see {@link TighteningFriction}
 * @returns K, pure number
 * @throws {DomainError} if an argument is not a finite number in its range
 * @see Shigley, 9th ed., eqs 8–26 and 8–27; dc = (d + 1.5 d)/2 gives its 0.625 fc
 */
export function nutFactor(friction: TighteningFriction): number {
  const { lead, thread, collar } = nutFactorParts(friction)
  return lead + thread + collar
}

/**
 * The nut factor split into lead, thread friction and collar friction.
 *
 * @param friction - geometry and friction, see {@link TighteningFriction}
 * @returns the parts, pure numbers; friction-free they leave P/(2π d)
 * @throws {DomainError} if an argument is not a finite number in its range
 * @see Shigley, 9th ed., eqs 8–26 and 8–27
 */
export function nutFactorParts(friction: TighteningFriction): NutFactorParts {
  const { nominalDiameter: d, pitch, threadFriction, collarFriction } = friction
  const basic = pitchDiameter(d, pitch)
  requireWithin('threadFriction', threadFriction, 0, 0.6)
  requireWithin('collarFriction', collarFriction, 0, 0.6)
  const dm = friction.meanThreadDiameter ?? basic
  requireWithin('meanThreadDiameter', dm, 0.5 * d, d, 'm')
  const dc = friction.meanCollarDiameter ?? 1.25 * d
  requireWithin('meanCollarDiameter', dc, 0.5 * d, 5 * d, 'm')
  const tanLead = pitch / (Math.PI * dm)
  const wedged = threadFriction / Math.cos(Math.PI / 6)
  const whole = (dm / (2 * d)) * ((tanLead + wedged) / (1 - wedged * tanLead))
  const lead = (dm / (2 * d)) * tanLead
  return { lead, thread: whole - lead, collar: (dc / (2 * d)) * collarFriction }
}

/**
 * Preload as a share of the fastener's proof load: F / (At Sp).
 *
 * @param preload - F, N; 0 to 1e7
 * @param stressArea - At, m²; above 1e-7
 * @param proofStrength - Sp, Pa; above 1e7
 * @returns share, 1 = proof load
 * @throws {DomainError} if an argument is not a finite number in its range
 */
export function shareOfProof(preload: number, stressArea: number, proofStrength: number): number {
  requireWithin('preload', preload, 0, 1e7, 'N')
  return preload / proofLoad(stressArea, proofStrength)
}

/**
 * Proof load Fp = At Sp. Shigley recommends a preload of 0.75 Fp for joints that are taken
 * apart again and 0.90 Fp for permanent ones (9th ed., eq 8–31; the 0.90 from memory).
 *
 * @param stressArea - At, m²; 1e-7 to 0.02
 * @param proofStrength - Sp, Pa; 1e7 to 3e9
 * @returns Fp, N
 * @throws {DomainError} if an argument is not a finite number in its range
 */
export function proofLoad(stressArea: number, proofStrength: number): number {
  requireWithin('stressArea', stressArea, 1e-7, 0.02, 'm²')
  requireWithin('proofStrength', proofStrength, 1e7, 3e9, 'Pa')
  return stressArea * proofStrength
}

/**
 * Preload gained by turning a snug fastener further: F = (φ/2π) P / (1/kb + 1/km). Holds
 * below yield and once the faces are seated.
 *
 * @param angle - φ, rad; 0 to 2π
 * @param pitch - P, m; above 0, up to 0.02
 * @param fastenerStiffness - kb, N/m; 1e5 to 1e12
 * @param memberStiffness - km, N/m; 1e5 to 1e13
 * @returns gain in preload, N
 * @throws {DomainError} if an argument is not a finite number in its range
 * @see Shigley, 9th ed., section 8–8, turn-of-the-nut method
 */
export function preloadForAngle(
  angle: number,
  pitch: number,
  fastenerStiffness: number,
  memberStiffness: number,
): number {
  requireWithin('angle', angle, 0, 2 * Math.PI, 'rad')
  requireWithin('pitch', pitch, 1e-5, 0.02, 'm')
  requireWithin('fastenerStiffness', fastenerStiffness, 1e5, 1e12, 'N/m')
  requireWithin('memberStiffness', memberStiffness, 1e5, 1e13, 'N/m')
  return ((angle / (2 * Math.PI)) * pitch) / (1 / fastenerStiffness + 1 / memberStiffness)
}

/**
 * Preload from the measured lengthening of the fastener: F = kb δ.
 *
 * @param stretch - δ, m; 0 to 0.005
 * @param fastenerStiffness - kb, N/m; 1e5 to 1e12
 * @returns F, N
 * @throws {DomainError} if an argument is not a finite number in its range
 */
export function preloadForStretch(stretch: number, fastenerStiffness: number): number {
  requireWithin('stretch', stretch, 0, 0.005, 'm')
  requireWithin('fastenerStiffness', fastenerStiffness, 1e5, 1e12, 'N/m')
  return stretch * fastenerStiffness
}
