import { requireWithin } from './domain-error.ts'

/**
 * Side push that friction at the parting faces can hold: μ × the clamp still there. The clamp
 * is the sum over both faces, so no face count enters.
 *
 * @param clamp - clamp at the faces under load, N; 0 to 1e8
 * @param friction - μ at rest; 0 to 1
 * @returns N
 * @throws {DomainError} if an argument is not a finite number in its range
 * @see VDI 2230, least clamp against slip (its R2, from memory)
 */
export function gripCapacity(clamp: number, friction: number): number {
  requireWithin('clamp', clamp, 0, 1e8, 'N')
  requireWithin('friction', friction, 0, 1)
  return friction * clamp
}

/** Friction at rest between two machined faces, as a range: sources differ by 2 to 4 times. */
export interface FaceFriction {
  readonly low: number
  readonly likely: number
  readonly high: number
  readonly source: string
}

/**
 * Friction at the parting face by the metal of the cap and the state of the faces. Read in
 * tables: steel on gray iron dry 0.18–0.24 and lubricated 0.10; steel on iron machined and
 * degreased 0.15–0.25; iron on iron 0.18–0.25; iron on mild steel greasy 0.21. The likely
 * value within each range is a judgement. VDI 2230 Table A6 was not read.
 */
export const FACE_FRICTION: Readonly<Record<'dry' | 'oiled', FaceFriction>> = {
  dry: {
    low: 0.15,
    likely: 0.18,
    high: 0.25,
    source: 'Friction tables for machined, degreased steel and iron on iron: 0.15–0.25',
  },
  oiled: {
    low: 0.08,
    likely: 0.12,
    high: 0.2,
    source: 'Friction tables: steel on gray iron lubricated 0.10, greasy iron on steel 0.21',
  },
}
