import { requireWithin } from './domain-error.ts'
import {
  accelerationFactor,
  boreArea,
  type PistonMotion,
  rodRatio,
  twoTermAccelerationFactor,
} from './slider-crank.ts'

/**
 * Forces of one cylinder on its pin, by the two-mass rod: part of the rod moves with the piston,
 * part turns with the pin; the correction couple of the real rod's inertia is left out.
 * Sources: C. F. Taylor, The Internal-Combustion Engine in Theory and Practice, vol. 2, ch. 8;
 * R. S. Khurmi & J. K. Gupta, Theory of Machines, ch. 15 (both from memory); worked examples with
 * their sources are in the tests.
 */

/** One cylinder at one crank angle. */
export interface CylinderForceInput {
  /** m, 0.01 to 1. */
  bore: number
  /** m. */
  stroke: number
  /** m, at least 0.525 strokes; Infinity for a rod without lean. */
  rodLength: number
  /** Piston, pin, rings and the upper part of the rod, kg, 0 to 1000. */
  reciprocatingMass: number
  /** Lower part of the rod, kg; default 0. */
  bigEndMass?: number
  /** Crank speed, rad/s, 0 to 3000. */
  speed: number
  /** Crank angle from top dead centre, rad. */
  angle: number
  /** Pressure above the piston less the crankcase pressure, Pa. */
  gaugePressure: number
  /** Component of gravity along the bore toward the crank, m/s²; default 0, as in engines. */
  gravity?: number
  /** Exact (default), or the two-term acceleration of textbooks. */
  motion?: PistonMotion
}

/** Forces in N, torque in N m, angle in rad. */
export interface CylinderForces {
  /** Gas on the piston, positive toward the crank. */
  gas: number
  /** Needed to accelerate the reciprocating mass toward the crank. */
  inertia: number
  /** Weight of the reciprocating mass along the bore. */
  weight: number
  /** What is left for the piston pin along the bore: gas − inertia + weight. */
  piston: number
  /** Lean of the rod. */
  rodAngle: number
  /** Push along the rod, positive in compression. */
  rod: number
  /** Push of the piston on the cylinder wall. */
  wall: number
  /** Of the rod on the pin, square to the crank, positive with its turning. */
  tangential: number
  /** Of the rod on the pin along the crank, positive toward the axis. */
  radial: number
  /** Pull of the big end outward on the pin, along the crank. */
  bigEnd: number
  /** Torque on the crank. */
  torque: number
}

/**
 * Piston, rod, wall and pin forces of one cylinder.
 *
 * Along the bore, F = p A − m R ω² k + m g; rod Q = F/cos φ; wall N = F tan φ; on the pin
 * T = Q sin(θ + φ), radial Q cos(θ + φ); torque T R.
 *
 * @throws {DomainError} if an input is outside its range
 */
export function cylinderForces(input: CylinderForceInput): CylinderForces {
  const radius = input.stroke / 2
  const ratio = rodRatio(radius, input.rodLength)
  checkCylinder(input)
  const { angle, speed, reciprocatingMass: mass } = input
  const factor = input.motion === 'two-term' ? twoTermAccelerationFactor : accelerationFactor
  const gas = input.gaugePressure * boreArea(input.bore)
  const inertia = mass * radius * speed * speed * factor(ratio, angle)
  const weight = mass * (input.gravity ?? 0)
  const piston = gas - inertia + weight
  const lean = Math.asin(ratio * Math.sin(angle))
  const rod = piston / Math.cos(lean)
  const tangential = rod * Math.sin(angle + lean)
  return {
    gas,
    inertia,
    weight,
    piston,
    rodAngle: lean,
    rod,
    wall: piston * Math.tan(lean),
    tangential,
    radial: rod * Math.cos(angle + lean),
    bigEnd: (input.bigEndMass ?? 0) * radius * speed * speed,
    torque: tangential * radius,
  }
}

function checkCylinder(input: CylinderForceInput): void {
  requireWithin('bore', input.bore, 0.01, 1, 'm')
  requireWithin('speed', input.speed, 0, 3000, 'rad/s')
  requireWithin('reciprocatingMass', input.reciprocatingMass, 0, 1000, 'kg')
  requireWithin('bigEndMass', input.bigEndMass ?? 0, 0, 1000, 'kg')
  requireWithin('gaugePressure', input.gaugePressure, -2e5, 1e8, 'Pa')
  requireWithin('angle', input.angle, -1e6, 1e6, 'rad')
}

/**
 * Speed at which the pin's load just falls to nothing at this angle: inertia takes up all of the
 * gas load and weight.
 *
 * @returns rad/s, or Infinity where the piston is not being accelerated toward the crank
 * @throws {DomainError} see {@link cylinderForces}
 */
export function zeroLoadSpeed(input: CylinderForceInput): number {
  const unit = cylinderForces({ ...input, speed: 1 })
  const squared = (unit.gas + unit.weight) / unit.inertia
  return squared > 0 && Number.isFinite(squared) ? Math.sqrt(squared) : Number.POSITIVE_INFINITY
}

/**
 * Shape of one turn of a crank of unit radius at each whole degree 0 to 359 from top dead centre:
 * tangent of the rod's lean and acceleration factor. Only λ shapes it.
 */
export interface CrankShape {
  ratio: number
  rodTangent: Float64Array
  acceleration: Float64Array
}

/** Room for a crank shape; filled by {@link fillCrankShape}. */
export function emptyCrankShape(): CrankShape {
  return {
    ratio: Number.NaN,
    rodTangent: new Float64Array(360),
    acceleration: new Float64Array(360),
  }
}

/** Fill the shape for λ = R/l; does nothing if it holds that λ already. */
export function fillCrankShape(shape: CrankShape, ratio: number): void {
  if (shape.ratio === ratio) return
  for (let degree = 0; degree < 360; degree++) {
    const sine = ratio * SINE[degree]!
    shape.rodTangent[degree] = sine / Math.sqrt(1 - sine * sine)
    shape.acceleration[degree] = accelerationFactor(ratio, (degree * Math.PI) / 180)
  }
  shape.ratio = ratio
}

/** sin and cos of whole degrees 0 to 359. */
export const SINE = Float64Array.from({ length: 360 }, (_, degree) =>
  Math.sin((degree * Math.PI) / 180),
)
export const COSINE = Float64Array.from({ length: 360 }, (_, degree) =>
  Math.cos((degree * Math.PI) / 180),
)
