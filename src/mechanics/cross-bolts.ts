import { requireWithin } from './domain-error.ts'

/** Bolts through the sides of the block into the sides of the cap, along the side push. */
export interface CrossBolts {
  /** Both sides together; 0 to 8, half on each side */
  readonly count: number
  /** N each; 0 to 2e5 */
  readonly preload: number
  /** What the thread in the cap or the wall under the head bears, N each; no limit if left out */
  readonly shearCapacity?: number | undefined
}

/**
 * Side push that cross bolts take before the joint at the side it pulls away from opens.
 *
 * The push moves the cap towards one wall and away from the other; the bolts of that other
 * side have to lose their preload first. One side's preload is counted and no more: the wall
 * the cap is pressed to gives in bending, by how much depends on the block.
 *
 * @param crossBolts - see {@link CrossBolts}
 * @returns N
 * @throws {DomainError} if a value is not a finite number in its range
 * @see the preloaded joint, Shigley, 9th ed., section 8–7; counting one side only is
 *   common practice, no published source
 */
export function crossBoltCapacity(crossBolts: CrossBolts): number {
  const { count, preload, shearCapacity = Number.MAX_VALUE } = crossBolts
  requireWithin('crossBolts.count', count, 0, 8)
  requireWithin('crossBolts.preload', preload, 0, 2e5, 'N')
  requireWithin('crossBolts.shearCapacity', shearCapacity, 0, Number.MAX_VALUE, 'N')
  return (count / 2) * Math.min(preload, shearCapacity)
}
