import { requireWithin } from './domain-error.ts'

/**
 * Reactions of a shaft that rests on two bearings, taken to act at the middles of the bearings.
 *
 * @param force - across the shaft, N, any finite number
 * @param position - of the force behind the front bearing, m; below 0 or above the span where the
 *   force hangs outside the bearings; within ten spans
 * @param span - between the bearings, m, 0.001 to 100
 * @returns front and rear reaction, N; together equal to the force; negative is the other way
 * @throws {DomainError} outside these ranges
 *
 * @see R. S. Khurmi & J. K. Gupta, A Textbook of Machine Design, ch. 32, centre and overhung crank
 */
export function beamReactions(
  force: number,
  position: number,
  span: number,
): { front: number; rear: number } {
  requireWithin('force', force, -1e9, 1e9, 'N')
  requireWithin('span', span, 0.001, 100, 'm')
  requireWithin('position', position, -10 * span, 10 * span, 'm')
  return { front: (force * (span - position)) / span, rear: (force * position) / span }
}
