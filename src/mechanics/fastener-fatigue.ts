import { requireWithin } from './domain-error.ts'
import type { FastenerStrength } from './fastener-grades.ts'

/** A fastener whose preload stays put while only the outside load grows. */
export interface PreloadedSwing {
  /** σa = C (Pmax − Pmin)/(2 At), Pa; above 0 */
  readonly alternating: number
  /** σm, Pa; at least the preload stress */
  readonly mean: number
  /** σi = Fi/At, Pa; at least 0 */
  readonly preload: number
}

function requireStrengths(endurance: number, strength: number): void {
  requireWithin('endurance', endurance, 1e5, 5e9, 'Pa')
  requireWithin('strength', strength, 1e5, 5e9, 'Pa')
}

/**
 * Goodman factor of a preloaded fastener against growth of the outside load alone:
 * n = Se (Sut − σi) / (Sut σa + Se (σm − σi)).
 *
 * @param swing - see {@link PreloadedSwing}
 * @param endurance - Se of the rolled thread, Pa
 * @param ultimate - Sut, Pa
 * @returns n; 0 when the preload alone reaches Sut; infinite without outside load
 * @throws {DomainError} if a value is not a finite number in its range
 * @see Shigley, 9th ed., eqs 8–38 and 8–45 (there for a load from nought, σm − σi = σa)
 */
export function fastenerGoodman(
  swing: PreloadedSwing,
  endurance: number,
  ultimate: number,
): number {
  requireWithin('alternating', swing.alternating, 0, 1e13, 'Pa')
  requireWithin('preload', swing.preload, 0, 1e13, 'Pa')
  requireWithin('mean', swing.mean, swing.preload, 1e13, 'Pa')
  requireStrengths(endurance, ultimate)
  const { alternating, mean, preload } = swing
  const room = ultimate - preload
  if (room <= 0) return 0
  return (endurance * room) / (ultimate * alternating + endurance * (mean - preload))
}

export interface FastenerLoad {
  /** Fi, preload, N; 0 to 5e5 */
  readonly preload: number
  /** C P, most that the outside load adds to the fastener, N; at least 0 */
  readonly added: number
  /** Least it adds over the cycle, N; 0 when left out */
  readonly addedMin?: number | undefined
  /** At, m² */
  readonly stressArea: number
}

export interface FastenerMargins {
  readonly alternating: number
  readonly mean: number
  /** Growth of the outside load to the Goodman line */
  readonly goodman: number
  /** np: proof load against preload and added load together */
  readonly proof: number
  /** Share of proof load the preload takes */
  readonly shareOfProof: number
}

/**
 * Static and fatigue margins of one fastener in a closed joint:
 * σa = (C P − C Pmin)/(2 At), σm = σi + (C P + C Pmin)/(2 At).
 *
 * @param load - see {@link FastenerLoad}; the added load is `fastenerLoad` of the cap joint
 * @param strength - of the grade, from fastenerStrength
 * @returns stresses, Pa, and margins; goodman is infinite without outside load
 * @throws {DomainError} if a value is not a finite number in its range
 * @see Shigley, 9th ed., eqs 8–28, 8–35, 8–36, 8–38
 */
export function fastenerMargins(load: FastenerLoad, strength: FastenerStrength): FastenerMargins {
  const { preload, added, addedMin = 0, stressArea } = load
  requireWithin('preload', preload, 0, 5e5, 'N')
  requireWithin('added', added, 0, 1e6, 'N')
  requireWithin('addedMin', addedMin, 0, added, 'N')
  requireWithin('stressArea', stressArea, 1e-7, 0.02, 'm²')
  const swing = {
    alternating: (added - addedMin) / (2 * stressArea),
    mean: (preload + (added + addedMin) / 2) / stressArea,
    preload: preload / stressArea,
  }
  const proof = strength.proof * stressArea
  return {
    alternating: swing.alternating,
    mean: swing.mean,
    goodman: fastenerGoodman(swing, strength.endurance, strength.ultimate),
    proof: proof / (preload + added),
    shareOfProof: preload / proof,
  }
}
