import { requireWithin } from './domain-error.ts'

/** Chen & Flynn's figures in SI: Pa, pure number, Pa/(m/s). */
export const CHEN_FLYNN = {
  constant: 0.137e5,
  perPeakPressure: 0.005,
  perPistonSpeed: 0.162e5,
} as const

/**
 * Friction of bearings, pistons, valve gear and accessories, without pumping:
 * fmep [bar] = 0.137 + 0.005 p_max + 0.162 S_p.
 *
 * @param peakPressure - greatest cylinder pressure, Pa, 0 to 1e9
 * @param pistonSpeed - mean, m/s, 0 to 100
 * @returns Pa
 * @throws {DomainError} outside those ranges
 * @see Chen & Flynn, SAE 650733 (1965), coefficients 0.005 and 0.162 read where quoted, 0.137
 *   from memory
 */
export function chenFlynnFriction(peakPressure: number, pistonSpeed: number): number {
  requireWithin('peakPressure', peakPressure, 0, 1e9, 'Pa')
  requireWithin('pistonSpeed', pistonSpeed, 0, 100, 'm/s')
  const { constant, perPeakPressure, perPistonSpeed } = CHEN_FLYNN
  return constant + perPeakPressure * peakPressure + perPistonSpeed * pistonSpeed
}

/** Mean piston speed, m/s: 2 S N. Stroke m, crank speed rad/s. */
export function meanPistonSpeed(stroke: number, speed: number): number {
  return (stroke * speed) / Math.PI
}
