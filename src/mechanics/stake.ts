import { DomainError, requireWithin } from './domain-error.ts'

/** Money lost if the bottom end lets go, before asking how likely that is. One currency. */
export interface StakeInput {
  /** Money in the engine now, or by the time it runs. */
  invested: number
  /** Cost of the route itself, which is lost with the rest; 0 when not given. */
  work?: number
  /** Share of it all that would still be usable or saleable, 0 to 1; 0 when not given. */
  salvage?: number
  /** Loss beyond the engine: towing, clean-up, a missed season; 0 when not given. */
  besides?: number
}

/**
 * Stake: what a failure would cost.
 *
 * @returns (invested + work)(1 − salvage) + besides, in the currency given
 * @throws {DomainError} if an amount is negative or the share is outside 0 to 1
 */
export function stake({ invested, work = 0, salvage = 0, besides = 0 }: StakeInput): number {
  requireAmount('invested', invested)
  requireAmount('work', work)
  requireAmount('besides', besides)
  requireWithin('salvage', salvage, 0, 1)
  return (invested + work) * (1 - salvage) + besides
}

/**
 * Break-even chance: the chance of a failure above which paying more to avoid
 * it is the cheaper course. It is a threshold to hold one's own judgement
 * against; it says nothing about how likely a failure is.
 *
 * @param extraCost - what the dearer route costs more; 0 or above
 * @param atStake - money lost in a failure; above 0
 * @param protection - share of failures that the dearer route prevents, above 0 to 1; 1 = all
 * @returns extraCost / (atStake × protection); above 1 means that it can never pay
 * @throws {DomainError} if an argument does not fit
 *
 * @see Murphy, "Decision making and the value of forecasts in a generalized model of the
 *   cost–loss ratio situation", Monthly Weather Review 113 (1985) 362–369 (from memory)
 */
export function breakEvenChance(extraCost: number, atStake: number, protection = 1): number {
  requireAmount('extraCost', extraCost)
  if (!(atStake > 0 && atStake <= 1e12)) {
    throw new DomainError('atStake', atStake, 'above 0, at most 1000000000000')
  }
  requireWithin('protection', protection, 1e-6, 1)
  return extraCost / (atStake * protection)
}

/**
 * Expected outlay of a course: its cost, plus the stake times the chance of
 * losing it.
 *
 * @param cost - paid in any case; 0 or above
 * @param chance - of a failure on this course, 0 to 1
 * @param atStake - lost in a failure; 0 or above
 * @throws {DomainError} if an argument does not fit
 */
export function expectedOutlay(cost: number, chance: number, atStake: number): number {
  requireAmount('cost', cost)
  requireWithin('chance', chance, 0, 1)
  requireAmount('atStake', atStake)
  return cost + chance * atStake
}

/**
 * The cost–loss rule between doing nothing and protecting.
 *
 * @param chance - of a failure if nothing is done, 0 to 1
 * @returns expected outlay of each course, and how much protecting saves (negative: it costs more)
 * @throws {DomainError} if an argument does not fit
 * @see Murphy 1985, as above
 */
export function costLoss(input: {
  extraCost: number
  atStake: number
  chance: number
  protection?: number
}): { leave: number; protect: number; saving: number } {
  const { extraCost, atStake, chance, protection = 1 } = input
  requireWithin('protection', protection, 0, 1)
  const leave = expectedOutlay(0, chance, atStake)
  const protect = expectedOutlay(extraCost, chance * (1 - protection), atStake)
  return { leave, protect, saving: leave - protect }
}

function requireAmount(argument: string, amount: number): void {
  requireWithin(argument, amount, 0, 1e12)
}
