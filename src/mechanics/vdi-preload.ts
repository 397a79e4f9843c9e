import { DomainError, requireWithin } from './domain-error.ts'
import { pitchDiameter, screwRootDiameter } from './threads.ts'

/**
 * Assembly preload at which tension and twist together use a share ν of yield:
 * F = A₀ ν Rp / √(1 + 3 [(3/2)(d₂/d₀)(P/(π d₂) + 1.155 μG)]²) with d₀ = (d₂ + d₃)/2.
 *
 * @param nominalDiameter - d, m; 0.001 to 0.150
 * @param pitch - P, m; above 0, up to d/4
 * @param yieldStrength - Rp0.2, Pa; 1e8 to 2e9
 * @param threadFriction - μG; 0 to 0.6
 * @param utilisation - ν, share of yield; above 0, up to 1; 0.9 when left out
 * @returns F, N
 * @throws {DomainError} if an argument is not a finite number in its range
 * @see VDI 2230 (2003), R7/3 (equation from memory; its table of values was read)
 */
export function assemblyPreload(
  nominalDiameter: number,
  pitch: number,
  yieldStrength: number,
  threadFriction: number,
  utilisation = 0.9,
): number {
  requireWithin('yieldStrength', yieldStrength, 1e8, 2e9, 'Pa')
  requireWithin('threadFriction', threadFriction, 0, 0.6)
  requireWithin('utilisation', utilisation, 1e-3, 1)
  const d2 = pitchDiameter(nominalDiameter, pitch)
  const d0 = (d2 + screwRootDiameter(nominalDiameter, pitch)) / 2
  const area = (Math.PI / 4) * d0 ** 2
  const twist = 1.5 * (d2 / d0) * (pitch / (Math.PI * d2) + 1.155 * threadFriction)
  return (area * utilisation * yieldStrength) / Math.sqrt(1 + 3 * twist ** 2)
}

/**
 * Tightening torque: M = F (0.16 P + 0.58 d₂ μG + (DKm/2) μK), DKm = (dw + dh)/2.
 *
 * @param preload - F, N; 0 to 1e7
 * @param thread - nominalDiameter and pitch, m
 * @param friction - thread μG and head μK; 0 to 0.6
 * @param head - bearing face outer diameter dw and hole dh, m; dw above dh
 * @returns M, N m
 * @throws {DomainError} if a value is not a finite number in its range
 * @see VDI 2230 (2003), R13 (equation from memory; its table of values was read)
 */
export function assemblyTorque(
  preload: number,
  thread: { readonly nominalDiameter: number; readonly pitch: number },
  friction: { readonly thread: number; readonly head: number },
  head: { readonly faceDiameter: number; readonly holeDiameter: number },
): number {
  requireWithin('preload', preload, 0, 1e7, 'N')
  requireWithin('friction.thread', friction.thread, 0, 0.6)
  requireWithin('friction.head', friction.head, 0, 0.6)
  const { faceDiameter, holeDiameter } = head
  requireWithin('holeDiameter', holeDiameter, thread.nominalDiameter, 0.2, 'm')
  if (!(faceDiameter > holeDiameter && faceDiameter < 0.4)) {
    throw new DomainError('faceDiameter', faceDiameter, `above ${holeDiameter} m`)
  }
  const d2 = pitchDiameter(thread.nominalDiameter, thread.pitch)
  const mean = (faceDiameter + holeDiameter) / 2
  const arm = 0.16 * thread.pitch + 0.58 * d2 * friction.thread + (mean / 2) * friction.head
  return preload * arm
}
