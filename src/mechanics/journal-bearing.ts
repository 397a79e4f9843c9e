import { requireWithin } from './domain-error.ts'

/** A plain journal bearing under a steady load; SI. */
export interface JournalBearingInput {
  /** r, m */
  radius: number
  /** c, radial: half of the clearance on the diameter, m */
  radialClearance: number
  /** l, m */
  width: number
  /** μ, of the oil in the film, Pa s */
  viscosity: number
  /** ω, rad/s */
  speed: number
  /** W, N */
  load: number
}

export interface JournalBearing {
  /** P = W / (2 r l), Pa */
  unitLoad: number
  /** S = (r/c)² μ N / P, with N in turns a second */
  sommerfeld: number
  /** Petroff's coefficient of friction, 2π² (μ N/P)(r/c): journal taken as central. */
  petroffFriction: number
  /** Torque, N m, and power, W, lost by Petroff's law. */
  petroffTorque: number
  petroffPower: number
}

/**
 * Sommerfeld number and Petroff's friction of a plain bearing.
 *
 * For a steady load; an engine's main bearing sees a turning one, so this
 * places a bearing among others and does not give its film.
 *
 * @throws {DomainError} if a figure is not in its range
 * @see Shigley's Mechanical Engineering Design, 9th ed., eqs 12–6 and 12–7
 */
export function journalBearing(input: JournalBearingInput): JournalBearing {
  requireInput(input)
  const { radius, radialClearance, width, viscosity, speed, load } = input
  const turns = speed / (2 * Math.PI)
  const unitLoad = load / (2 * radius * width)
  const slenderness = radius / radialClearance
  const hersey = (viscosity * turns) / unitLoad
  const petroffFriction = 2 * Math.PI ** 2 * hersey * slenderness
  const petroffTorque = petroffFriction * load * radius
  return {
    unitLoad,
    sommerfeld: slenderness ** 2 * hersey,
    petroffFriction,
    petroffTorque,
    petroffPower: petroffTorque * speed,
  }
}

function requireInput(input: JournalBearingInput): void {
  requireWithin('radius', input.radius, 0.005, 0.5, 'm')
  requireWithin('radialClearance', input.radialClearance, 1e-6, 0.05 * input.radius, 'm')
  requireWithin('width', input.width, 0.002, 1, 'm')
  requireWithin('viscosity', input.viscosity, 1e-5, 10, 'Pa s')
  requireWithin('speed', input.speed, 0.1, 5000, 'rad/s')
  requireWithin('load', input.load, 1, 1e7, 'N')
}
