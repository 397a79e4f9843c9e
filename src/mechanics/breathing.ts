import { requireWithin } from './domain-error.ts'

/**
 * Volumetric efficiency at the torque peak, by the state of the charge in the manifold. Heywood
 * 1988, section 6.2: 0.8 to 0.9 for production engines, above 1 with tuned intakes, from memory;
 * 0.95 for a performance build is common practice, no published source.
 */
export const BEST_VOLUMETRIC_EFFICIENCY = 0.95

/** Curvature below and above the top of the curve. Chosen, no published source. */
const BELOW = 0.5
const ABOVE = 2
/** Far beyond the top (1.87 times its speed) the curve is held here, so that it stays plausible. */
const LEAST_SHAPE = 0.4
/** The curve's top is never set further out than this tilt asks for. */
const GREATEST_TILT = 0.2

/**
 * Volumetric efficiency against speed: s(u) = 1/(1 + k (u − 1)²), u = speed/top, k 0.5 below and
 * 2 above the top, scaled to 0.95 at the torque peak.
 *
 * A stated curve, not a measurement: falling to both sides and never to nothing; the shape follows
 * Heywood 1988, Fig. 6-9, from memory. Friction grows with speed, so torque peaks at a lower speed
 * than breathing; the top is set so far above the torque peak that the curve still rises there by
 * `tilt` and the two cancel.
 *
 * @param speed - crank speed, rad/s, 10 to 2000
 * @param torquePeakSpeed - rad/s, 10 to 2000
 * @param tilt - d(ln s)/d(ln speed) at the torque peak, 0 to 0.2 (held at its ends)
 * @param scale - multiplies the curve; 1 = as stated, 0.3 to 2
 * @returns pure number
 * @throws {DomainError} outside those ranges
 */
export function volumetricEfficiency(
  speed: number,
  torquePeakSpeed: number,
  tilt = 0,
  scale = 1,
): number {
  requireWithin('speed', speed, 10, 2000, 'rad/s')
  requireWithin('torquePeakSpeed', torquePeakSpeed, 10, 2000, 'rad/s')
  requireWithin('scale', scale, 0.3, 2)
  // 2 k δ (1 − δ) = tilt, δ = 1 − torque peak/top; the shape's own denominator is near 1 there.
  const held = Math.min(GREATEST_TILT, Math.max(0, tilt))
  const short = (1 - Math.sqrt(1 - (2 * held) / BELOW)) / 2
  const u = (speed / torquePeakSpeed) * (1 - short)
  return (scale * BEST_VOLUMETRIC_EFFICIENCY * shape(u)) / shape(1 - short)
}

function shape(u: number): number {
  const off = u - 1
  return Math.max(LEAST_SHAPE, 1 / (1 + (off < 0 ? BELOW : ABOVE) * off * off))
}

/** Gas left in the cylinder, and what it does to the charge. */
export interface TrappedCharge {
  /** Residual mass / trapped mass. */
  readonly residualShare: number
  /** Temperature at bottom dead centre, K. */
  readonly temperature: number
  /** Pressure there that goes with mass and temperature, Pa absolute. */
  readonly pressure: number
  /** Trapped mass, kg. */
  readonly mass: number
}

/** Temperature of the residual gas, K. Spark-ignition exhaust at full load 900–1200 K, common
 * figure, no published source. */
const RESIDUAL_TEMPERATURE = 1150
/** Warming of the fresh charge by ports, valves and walls once inside, K. No published source. */
const WALL_WARMING = 20

/**
 * Mix the fresh charge with the gas left in the clearance volume at exhaust pressure.
 *
 * Residual mass = p_e V_c/(R T_r); temperature by equal specific heats; pressure at bottom dead
 * centre by the ideal gas law.
 *
 * @param freshMass - air, fuel and added gas drawn in, kg
 * @param freshTemperature - K
 * @param exhaustPressure - Pa absolute
 * @param swept - m³ of one cylinder
 * @param compressionRatio - volume ratio
 * @param gasConstant - J/(kg K)
 * @see Heywood 1988, section 6.4 residual gas, from memory
 */
export function trappedCharge(
  freshMass: number,
  freshTemperature: number,
  exhaustPressure: number,
  swept: number,
  compressionRatio: number,
  gasConstant: number,
): TrappedCharge {
  const clearance = swept / (compressionRatio - 1)
  const residual = (exhaustPressure * clearance) / (gasConstant * RESIDUAL_TEMPERATURE)
  const mass = freshMass + residual
  const residualShare = residual / mass
  const temperature =
    (1 - residualShare) * (freshTemperature + WALL_WARMING) + residualShare * RESIDUAL_TEMPERATURE
  const pressure = (mass * gasConstant * temperature) / (swept + clearance)
  return { residualShare, temperature, pressure, mass }
}
