import { requireWithin } from './domain-error.ts'

/**
 * A stress that swings between two values at constant amplitude, Pa. The factors below ask by
 * how much the whole swing can grow, its mean with it, before the line of failure.
 */
export interface StressSwing {
  /** σa, Pa; at least 0 */
  readonly alternating: number
  /** σm, Pa; negative = compression, then the mean is neither credited nor charged */
  readonly mean: number
}

function requireSwing({ alternating, mean }: StressSwing): void {
  requireWithin('alternating', alternating, 0, 1e10, 'Pa')
  requireWithin('mean', mean, -1e10, 1e10, 'Pa')
}

function requireStrengths(endurance: number, strength: number): void {
  requireWithin('endurance', endurance, 1e5, 5e9, 'Pa')
  requireWithin('strength', strength, 1e5, 5e9, 'Pa')
}

/**
 * Modified Goodman: n = 1 / (σa/Se + σm/Sut).
 *
 * @param swing - see {@link StressSwing}
 * @param endurance - Se, corrected, Pa
 * @param ultimate - Sut, Pa
 * @returns n; infinite without stress
 * @throws {DomainError} if a value is not a finite number in its range
 * @see Shigley's Mechanical Engineering Design, 9th ed., eq 6–46
 */
export function goodmanFactor(swing: StressSwing, endurance: number, ultimate: number): number {
  requireSwing(swing)
  requireStrengths(endurance, ultimate)
  return 1 / (swing.alternating / endurance + Math.max(0, swing.mean) / ultimate)
}

/**
 * Gerber: n σa/Se + (n σm/Sut)² = 1.
 *
 * @param swing - see {@link StressSwing}
 * @param endurance - Se, corrected, Pa
 * @param ultimate - Sut, Pa
 * @returns n; infinite without stress
 * @throws {DomainError} if a value is not a finite number in its range
 * @see Shigley, 9th ed., eq 6–47
 */
export function gerberFactor(swing: StressSwing, endurance: number, ultimate: number): number {
  requireSwing(swing)
  requireStrengths(endurance, ultimate)
  const a = swing.alternating / endurance
  const m = Math.max(0, swing.mean) / ultimate
  // The positive root, written so that it stays exact when either part is nought.
  return 2 / (a + Math.sqrt(a * a + 4 * m * m))
}

/**
 * ASME elliptic: (n σa/Se)² + (n σm/Sy)² = 1.
 *
 * @param swing - see {@link StressSwing}
 * @param endurance - Se, corrected, Pa
 * @param yieldStrength - Sy, Pa
 * @returns n; infinite without stress
 * @throws {DomainError} if a value is not a finite number in its range
 * @see Shigley, 9th ed., eq 6–48
 */
export function ellipticFactor(
  swing: StressSwing,
  endurance: number,
  yieldStrength: number,
): number {
  requireSwing(swing)
  requireStrengths(endurance, yieldStrength)
  return 1 / Math.hypot(swing.alternating / endurance, Math.max(0, swing.mean) / yieldStrength)
}

/**
 * Smith–Dolan line for brittle metals such as gray iron, in the first quadrant:
 * n σa/Se = (1 − n σm/Sut) / (1 + n σm/Sut). Never above Goodman.
 *
 * @param swing - see {@link StressSwing}
 * @param endurance - Se, corrected, Pa
 * @param ultimate - Sut, Pa
 * @returns n; infinite without stress
 * @throws {DomainError} if a value is not a finite number in its range
 * @see Shigley, 9th ed., eq 6–50
 */
export function smithDolanFactor(swing: StressSwing, endurance: number, ultimate: number): number {
  requireSwing(swing)
  requireStrengths(endurance, ultimate)
  const a = swing.alternating / endurance
  const m = Math.max(0, swing.mean) / ultimate
  // a m n² + (a + m) n − 1 = 0
  return 2 / (a + m + Math.sqrt((a + m) ** 2 + 4 * a * m))
}

/** A fastener whose preload stays put while only the outside load grows. */
export interface PreloadedSwing {
  /** σa = C (Pmax − Pmin)/(2 At), Pa; above 0 */
  readonly alternating: number
  /** σm, Pa; at least the preload stress */
  readonly mean: number
  /** σi = Fi/At, Pa; at least 0 */
  readonly preload: number
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
  requireSwing(swing)
  requireStrengths(endurance, ultimate)
  requireWithin('preload', swing.preload, 0, 1e10, 'Pa')
  const { alternating, mean, preload } = swing
  const room = Math.max(0, ultimate - preload)
  return (endurance * room) / (ultimate * alternating + endurance * (mean - preload))
}

/**
 * Gerber factor of a preloaded fastener with load from nought (σm − σi = σa):
 * n = [Sut √(Sut² + 4 Se (Se + σi)) − Sut² − 2 σi Se] / (2 σa Se).
 *
 * @param alternating - σa, Pa; above 0
 * @param preload - σi, Pa; 0 to Sut
 * @param endurance - Se, Pa
 * @param ultimate - Sut, Pa
 * @returns n
 * @throws {DomainError} if a value is not a finite number in its range
 * @see Shigley, 9th ed., eq 8–46
 */
export function fastenerGerber(
  alternating: number,
  preload: number,
  endurance: number,
  ultimate: number,
): number {
  requireWithin('alternating', alternating, 1, 1e10, 'Pa')
  requireStrengths(endurance, ultimate)
  requireWithin('preload', preload, 0, ultimate, 'Pa')
  const root = Math.sqrt(ultimate ** 2 + 4 * endurance * (endurance + preload))
  return (ultimate * root - ultimate ** 2 - 2 * preload * endurance) / (2 * alternating * endurance)
}

/**
 * Elliptic factor of a preloaded fastener with load from nought:
 * n = Se [Sp √(Sp² + Se² − σi²) − σi Se] / (σa (Sp² + Se²)).
 *
 * @param alternating - σa, Pa; above 0
 * @param preload - σi, Pa; 0 to Sp
 * @param endurance - Se, Pa
 * @param proof - Sp, Pa
 * @returns n
 * @throws {DomainError} if a value is not a finite number in its range
 * @see Shigley, 9th ed., eq 8–47
 */
export function fastenerElliptic(
  alternating: number,
  preload: number,
  endurance: number,
  proof: number,
): number {
  requireWithin('alternating', alternating, 1, 1e10, 'Pa')
  requireStrengths(endurance, proof)
  requireWithin('preload', preload, 0, proof, 'Pa')
  const root = Math.sqrt(proof ** 2 + endurance ** 2 - preload ** 2)
  const reach = proof * root - preload * endurance
  return (endurance * reach) / (alternating * (proof ** 2 + endurance ** 2))
}
