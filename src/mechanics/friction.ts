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

/**
 * Total motored friction of spark-ignition engines at full throttle, pumping in it:
 * tfmep [bar] = 0.97 + 0.15 N + 0.05 N², N in 1000 r/min.
 *
 * @param speed - crank speed, rad/s, 0 to 2000
 * @returns Pa
 * @throws {DomainError} outside that range
 * @see Heywood, Internal Combustion Engine Fundamentals, 1988, eq. 13.6, after Barnes-Moss, from
 *   memory
 */
export function motoredFriction(speed: number): number {
  requireWithin('speed', speed, 0, 2000, 'rad/s')
  const thousands = (speed * 60) / (2 * Math.PI) / 1000
  return (0.97 + 0.15 * thousands + 0.05 * thousands * thousands) * 1e5
}

/** Mean piston speed, m/s: 2 S N. Stroke m, crank speed rad/s. */
export function meanPistonSpeed(stroke: number, speed: number): number {
  return (stroke * speed) / Math.PI
}
