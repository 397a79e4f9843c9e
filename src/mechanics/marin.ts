import { DomainError, requireWithin } from './domain-error.ts'

export type SurfaceFinish = 'ground' | 'machined' | 'hot-rolled' | 'as-forged'

/** ka = a Sut^b with Sut in MPa; Shigley, 9th ed., Table 6–2. */
const SURFACE: Readonly<Record<SurfaceFinish, readonly [number, number]>> = {
  ground: [1.58, -0.085],
  machined: [4.51, -0.265],
  'hot-rolled': [57.7, -0.718],
  'as-forged': [272, -0.995],
}

/**
 * Surface factor of steel, ka = a Sut^b, never above 1.
 *
 * @param ultimate - Sut, Pa; 2e8 to 2.5e9
 * @param finish - of the surface that is stressed most
 * @returns ka, 0 to 1
 * @throws {DomainError} if the strength is not a finite number in its range
 * @see Shigley's Mechanical Engineering Design, 9th ed., eq 6–19 and Table 6–2
 */
export function surfaceFactor(ultimate: number, finish: SurfaceFinish): number {
  requireWithin('ultimate', ultimate, 2e8, 2.5e9, 'Pa')
  const [a, b] = SURFACE[finish]
  return Math.min(1, a * (ultimate / 1e6) ** b)
}

/**
 * Size factor in bending: kb = 1.24 d^−0.107 up to 51 mm, 1.51 d^−0.157 above (d in mm),
 * and never above 1.
 *
 * @param diameter - d, or the equivalent diameter, m; above 0, up to 0.254
 * @returns kb, 0 to 1
 * @throws {DomainError} if the diameter is not a finite number in its range
 * @see Shigley, 9th ed., eq 6–20
 */
export function sizeFactor(diameter: number): number {
  if (!(diameter > 0 && diameter <= 0.254)) {
    throw new DomainError('diameter', diameter, 'above 0, up to 0.254 m')
  }
  const d = diameter * 1000
  return Math.min(1, d <= 51 ? 1.24 * d ** -0.107 : 1.51 * d ** -0.157)
}

/**
 * Equivalent diameter of a rectangle in bending that does not rotate, de = 0.808 √(h b).
 *
 * @param height - h, m; above 0
 * @param width - b, m; above 0
 * @returns de, m
 * @throws {DomainError} if an argument is not a finite number in its range
 * @see Shigley, 9th ed., eq 6–25
 */
export function equivalentDiameter(height: number, width: number): number {
  requireWithin('height', height, 1e-4, 1, 'm')
  requireWithin('width', width, 1e-4, 1, 'm')
  return 0.808 * Math.sqrt(height * width)
}
