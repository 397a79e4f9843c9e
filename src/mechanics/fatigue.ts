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
  requireWithin('alternating', alternating, 0, 1e13, 'Pa')
  requireWithin('mean', mean, -1e13, 1e13, 'Pa')
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
