import { requireWithin } from './domain-error.ts'

/** The step or notch in the block that the sides of the cap fit into. */
export interface Register {
  /** Depth over which cap and block overlap, m; 0 (none) to 0.1 */
  readonly height: number
  /** Length of the wall along the crank, m; 0 to 0.3 */
  readonly length: number
  /** Cap wider than its register, m; negative = clearance; −0.002 to 0.0005 */
  readonly interference: number
  /** Pressure the softer wall bears without lasting indentation, Pa; 1e6 to 3e9 */
  readonly allowablePressure: number
  /** Distance between the two walls, m; with it the fit's own pressure is reckoned */
  readonly span?: number | undefined
}

/**
 * Sideways give of clamped faces before they slip as a whole, m. A register with more
 * clearance than this carries nothing until the cap has already moved. From memory: micro-slip
 * of machined bolted faces is of the order of 10 µm.
 */
export const GIVE_BEFORE_SLIP = 10e-6

/**
 * Pressure that an interference fit puts on both walls, taking cap and block as bars of the
 * register's section squeezed over its span: p = δ / (s/Ec + s/Eb). Upper bound: the walls'
 * local give is left out.
 *
 * @param interference - δ, m; 0 or less gives 0
 * @param span - s, distance between the walls, m; 0.01 to 1
 * @param capModulus - Ec, Pa; 1e9 to 1e12
 * @param blockModulus - Eb, Pa; 1e9 to 1e12
 * @returns p, Pa
 * @throws {DomainError} if an argument is not a finite number in its range
 */
export function fitPressure(
  interference: number,
  span: number,
  capModulus: number,
  blockModulus: number,
): number {
  requireWithin('interference', interference, -0.002, 0.0005, 'm')
  requireWithin('span', span, 0.01, 1, 'm')
  requireWithin('capModulus', capModulus, 1e9, 1e12, 'Pa')
  requireWithin('blockModulus', blockModulus, 1e9, 1e12, 'Pa')
  return Math.max(0, interference) / (span / capModulus + span / blockModulus)
}

/**
 * How much of the register works together with friction: all of it with a fit of nought or
 * tighter, none when the clearance is more than the faces give before they slip.
 *
 * @param interference - m; −0.002 to 0.0005
 * @returns share, 0 to 1, never falling as the fit gets tighter
 * @throws {DomainError} if the argument is not a finite number in its range
 */
export function registerEngagement(interference: number): number {
  requireWithin('interference', interference, -0.002, 0.0005, 'm')
  return Math.min(1, Math.max(0, 1 + interference / GIVE_BEFORE_SLIP))
}

/**
 * Side push the register takes before its softer wall is indented.
 *
 * Two walls pressed to p₀ by the fit act as one preloaded spring pair: a push S adds S/2 to
 * one and takes S/2 from the other until that one is free, then one wall carries all. So
 * S = 2 (p_allow − p₀) A if p₀ is above p_allow/2, else S = p_allow A, with A = height × length.
 *
 * @param register - see {@link Register}
 * @param ownPressure - p₀ from the fit, Pa; 0 to 3e9
 * @returns N, at least 0; nought without a register
 * @throws {DomainError} if a value is not a finite number in its range
 * @see bearing pressure = force / projected area, Shigley, 9th ed., section 8–12; the
 *   two-wall form and the share of a loose fit are derived here, no published source
 */
export function registerCapacity(register: Register, ownPressure = 0): number {
  const { height, length, interference, allowablePressure } = register
  requireWithin('register.height', height, 0, 0.1, 'm')
  requireWithin('register.length', length, 0, 0.3, 'm')
  requireWithin('register.allowablePressure', allowablePressure, 1e6, 3e9, 'Pa')
  requireWithin('ownPressure', ownPressure, 0, 3e9, 'Pa')
  const spare = Math.max(0, Math.min(allowablePressure, 2 * (allowablePressure - ownPressure)))
  return registerEngagement(interference) * spare * height * length
}

/**
 * Pressure on the wall that takes a side push alone, p = F / (height × length).
 *
 * @param sidePush - F, N; 0 to 1e8
 * @param height - m; above 1e-5
 * @param length - m; above 1e-5
 * @returns p, Pa
 * @throws {DomainError} if an argument is not a finite number in its range
 */
export function wallPressure(sidePush: number, height: number, length: number): number {
  requireWithin('sidePush', sidePush, 0, 1e8, 'N')
  requireWithin('height', height, 1e-5, 0.1, 'm')
  requireWithin('length', length, 1e-5, 0.3, 'm')
  return sidePush / (height * length)
}
