import { requireWithin } from './domain-error.ts'

/** One clamped layer, or the fastener's part in the block. */
export interface WarmLayer {
  /** t, m; 0 to 0.5 */
  readonly thickness: number
  /** Linear expansion, 1/K; 0 to 4e-5 */
  readonly expansion: number
}

/**
 * How much more the clamped parts would grow than the fastener when all warm up alike:
 * f = ΔT (Σ α t − α_b Σ t). Light metal under a steel fastener gives a positive figure: the
 * clamp rises. Over the joint's compliance it is a change of preload, as embedding is a loss.
 *
 * @param layers - clamped layers over the fastener's effective length
 * @param fastenerExpansion - α_b, 1/K; 0 to 4e-5
 * @param rise - ΔT above the temperature of assembly, K; −80 to 250
 * @returns f, m
 * @throws {DomainError} if a value is not a finite number in its range
 * @see VDI 2230, change of preload by temperature (from memory)
 */
export function thermalStretch(
  layers: readonly WarmLayer[],
  fastenerExpansion: number,
  rise: number,
): number {
  requireWithin('fastenerExpansion', fastenerExpansion, 0, 4e-5, '1/K')
  requireWithin('rise', rise, -80, 250, 'K')
  let mismatch = 0
  for (const { thickness, expansion } of layers) {
    requireWithin('thickness', thickness, 0, 0.5, 'm')
    requireWithin('expansion', expansion, 0, 4e-5, '1/K')
    mismatch += (expansion - fastenerExpansion) * thickness
  }
  return mismatch * rise
}
