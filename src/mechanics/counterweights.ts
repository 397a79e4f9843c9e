import { requireWithin } from './domain-error.ts'

/**
 * Counterweights as a stated share of the mass they stand against. They turn with the crank,
 * opposite the throw, and each throw's own counterweights act on its two mains like its pin does.
 * Real counterweights differ from throw to throw; a crank that leaves some throws bare loads the
 * mains beside them more than this says.
 */

/** Parts of the mass on a throw that its counterweights balance: 0 none, 1 all. */
export interface CounterweightShare {
  /** Of the rotating mass: big ends and what turns with the pin; 0 to 1.2. */
  readonly rotating: number
  /** Of the reciprocating mass, all cylinders of the throw together; 0 to 1.2. */
  readonly reciprocating: number
  /** Least reciprocating share met in the layout. */
  readonly low?: number
  /** Greatest reciprocating share met in the layout. */
  readonly high?: number
}

/** What hangs on one throw, kg. */
export interface ThrowMass {
  /** Cylinders on the throw, 1 or 2; split pins count by the cosine of their offset. */
  cylinders: number
  /** Of each cylinder. */
  reciprocatingMass: number
  /** Of each cylinder. */
  bigEndMass: number
  /** Of the throw: the crank's own pin and what is off centre with it. */
  pinMass: number
}

/**
 * Mass at the crank radius, opposite the throw, that the counterweights of one throw amount to.
 * Without the pin's own mass this is the bob weight that a balancing machine asks for.
 *
 * @param mass - what hangs on the throw
 * @param share - part that is balanced
 * @returns kg at the crank radius
 * @throws {DomainError} if a share is outside 0 to 1.2
 *
 * @example two cylinders of 900 g reciprocating and 600 g rotating, shares 1 and 0.5
 * counterweightMass(throwMass, { rotating: 1, reciprocating: 0.5 }) // 2.1 kg
 */
export function counterweightMass(mass: ThrowMass, share: CounterweightShare): number {
  requireWithin('counterweightShare.rotating', share.rotating, 0, 1.2)
  requireWithin('counterweightShare.reciprocating', share.reciprocating, 0, 1.2)
  const rotating = mass.cylinders * mass.bigEndMass + mass.pinMass
  return share.rotating * rotating + share.reciprocating * mass.cylinders * mass.reciprocatingMass
}
