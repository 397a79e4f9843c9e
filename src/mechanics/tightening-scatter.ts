import { requireWithin } from './domain-error.ts'

export type TighteningMethod =
  | 'stretch-measured'
  | 'yield-controlled'
  | 'torque-angle'
  | 'torque-measured-friction'
  | 'torque-estimated-friction'
  | 'power-driver'

/** Preload falls within nominal × (1 ± scatter). */
export interface TighteningScatter {
  /** Narrow and wide end of the published scatter, ± share of nominal */
  readonly low: number
  readonly high: number
  readonly source: string
  readonly fromMemory: boolean
}

const GUIDE = 'VDI 2230 (1986), guide values for tightening factors'

/** Scatter of preload by tightening method, as ± shares of nominal. */
export const TIGHTENING_SCATTER: Readonly<Record<TighteningMethod, TighteningScatter>> = {
  'stretch-measured': {
    low: 0.03,
    high: 0.1,
    source: 'Length of the fastener measured before and after; from memory',
    fromMemory: true,
  },
  'yield-controlled': { low: 0.05, high: 0.12, source: GUIDE, fromMemory: false },
  'torque-angle': { low: 0.05, high: 0.12, source: GUIDE, fromMemory: false },
  'torque-measured-friction': { low: 0.17, high: 0.23, source: GUIDE, fromMemory: false },
  'torque-estimated-friction': { low: 0.23, high: 0.28, source: GUIDE, fromMemory: false },
  'power-driver': { low: 0.26, high: 0.43, source: GUIDE, fromMemory: false },
}

/**
 * Tightening factor αA = Fmax/Fmin of a scatter ±e about the nominal: (1 + e)/(1 − e).
 *
 * @param scatter - e, 0 to 0.8
 * @returns αA, 1 or more
 * @throws {DomainError} if the scatter is not a finite number in its range
 * @see VDI 2230, tightening factor; the mapping from ± shares is arithmetic
 */
export function tighteningFactor(scatter: number): number {
  requireWithin('scatter', scatter, 0, 0.8)
  return (1 + scatter) / (1 - scatter)
}
