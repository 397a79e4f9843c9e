import { DomainError, requireWithin } from './domain-error.ts'

/** Half angle of the pressure cone, rad: 30° is Shigley's choice; older books take 45°. */
const CONE_ANGLE = Math.PI / 6

const TAN_CONE = Math.tan(CONE_ANGLE)

/** Tangent of a cone's half angle, 0.5774 at 30°. */
function coneTangent(coneAngle: number): number {
  requireWithin('coneAngle', coneAngle, 0.2, 0.8, 'rad')
  return Math.tan(coneAngle)
}

/** One clamped layer, listed from the head down. */
export interface Layer {
  /** t, m; above 0 */
  readonly thickness: number
  /** E, Pa */
  readonly modulus: number
}

/**
 * Stiffness of one hollow cone frustum under the head; at a half angle of 30°
 * k = 0.5774 π E d / ln[((1.155 t + D − d)(D + d)) / ((1.155 t + D + d)(D − d))].
 *
 * @param modulus - E, Pa; 1e9 to 1e12
 * @param holeDiameter - d, m; the bolt's diameter stands for the hole
 * @param smallDiameter - D, diameter of the narrow face, m; above d
 * @param thickness - t, m; above 0, up to 1
 * @param coneAngle - half angle, rad; 0.2 to 0.8, 30° when left out
 * @returns k, N/m
 * @throws {DomainError} if an argument is not a finite number in its range
 * @see Shigley, 9th ed., eqs 8–19 and 8–20
 */
export function frustumStiffness(
  modulus: number,
  holeDiameter: number,
  smallDiameter: number,
  thickness: number,
  coneAngle = CONE_ANGLE,
): number {
  requireWithin('modulus', modulus, 1e9, 1e12, 'Pa')
  requireWithin('holeDiameter', holeDiameter, 0.001, 0.15, 'm')
  requireWithin('thickness', thickness, 1e-9, 1, 'm')
  if (!(smallDiameter > holeDiameter && smallDiameter < 1)) {
    throw new DomainError('smallDiameter', smallDiameter, `above ${holeDiameter} m, below 1 m`)
  }
  const [d, D] = [holeDiameter, smallDiameter]
  const tangent = coneTangent(coneAngle)
  const wide = D + 2 * tangent * thickness
  const ratio = ((wide - d) * (D + d)) / ((wide + d) * (D - d))
  return (tangent * Math.PI * modulus * d) / Math.log(ratio)
}

/**
 * Stiffness of the clamped members as two cones that meet half way along the grip, through
 * any layers. Where a cone would be wider than the part it is in, it goes on as a tube of
 * that width (the cone-and-sleeve form of VDI 2230).
 *
 * @param layers - clamped layers from head to nut, or to the end of the effective grip
 * @param holeDiameter - d, m
 * @param faceDiameter - D at both ends, m; washer face, about 1.5 d
 * @param widestDiameter - greatest diameter the parts leave the cone, m; no limit when left out
 * @returns km, N/m
 * @throws {DomainError} if an argument is not a finite number in its range
 * @see Shigley, 9th ed., section 8–5, eqs 8–18 and 8–20
 */
export function memberStiffness(
  layers: readonly Layer[],
  holeDiameter: number,
  faceDiameter: number,
  widestDiameter = Number.POSITIVE_INFINITY,
): number {
  if (layers.length === 0) throw new DomainError('layers', 'empty', 'one layer or more')
  if (!(widestDiameter >= faceDiameter)) {
    throw new DomainError('widestDiameter', widestDiameter, `at least ${faceDiameter} m`)
  }
  let grip = 0
  for (const { thickness } of layers) grip += thickness
  const half = grip / 2
  let compliance = 0
  let top = 0
  for (const { thickness, modulus } of layers) {
    const bottom = top + thickness
    const cone = { modulus, holeDiameter, faceDiameter, widestDiameter }
    compliance += partCompliance(cone, top, Math.min(bottom, half))
    // Below the middle the depth is counted from the other end.
    compliance += partCompliance(cone, grip - bottom, grip - Math.max(top, half))
    top = bottom
  }
  return 1 / compliance
}

interface Cone {
  readonly modulus: number
  readonly holeDiameter: number
  readonly faceDiameter: number
  readonly widestDiameter: number
}

/** Compliance of a cone between two depths from its narrow end, m/N. */
function partCompliance(cone: Cone, from: number, to: number): number {
  if (to - from <= 1e-9) return 0
  const { modulus, holeDiameter, faceDiameter, widestDiameter } = cone
  const wideAt = (widestDiameter - faceDiameter) / (2 * TAN_CONE)
  let compliance = 0
  const coneEnd = Math.min(to, wideAt)
  if (coneEnd - from > 1e-9) {
    const start = faceDiameter + 2 * TAN_CONE * from
    compliance += 1 / frustumStiffness(modulus, holeDiameter, start, coneEnd - from)
  }
  const tubeLength = to - Math.max(from, wideAt)
  if (tubeLength > 0) {
    const area = (Math.PI / 4) * (widestDiameter ** 2 - holeDiameter ** 2)
    compliance += tubeLength / (modulus * area)
  }
  return compliance
}

/**
 * Members of one material under washer faces of 1.5 d; at a half angle of 30°
 * km = 0.5774 π E d / (2 ln[5 (0.5774 l + 0.5 d)/(0.5774 l + 2.5 d)]).
 *
 * @param modulus - E, Pa; 1e9 to 1e12
 * @param diameter - d, m; 0.001 to 0.150
 * @param grip - l, m; above 0, up to 1
 * @param coneAngle - half angle, rad; 0.2 to 0.8, 30° when left out
 * @returns km, N/m
 * @throws {DomainError} if an argument is not a finite number in its range
 * @see Shigley, 9th ed., eqs 8–21 and 8–22
 */
export function memberStiffnessOneMaterial(
  modulus: number,
  diameter: number,
  grip: number,
  coneAngle = CONE_ANGLE,
): number {
  requireWithin('modulus', modulus, 1e9, 1e12, 'Pa')
  requireWithin('diameter', diameter, 0.001, 0.15, 'm')
  requireWithin('grip', grip, 1e-6, 1, 'm')
  const tangent = coneTangent(coneAngle)
  const spread = tangent * grip
  const ratio = (5 * (spread + 0.5 * diameter)) / (spread + 2.5 * diameter)
  return (tangent * Math.PI * modulus * diameter) / (2 * Math.log(ratio))
}
