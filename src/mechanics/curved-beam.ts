import { DomainError, requireWithin } from './domain-error.ts'

/** A curved bar of rectangular section, bent in its plane of curvature. */
export interface CurvedSection {
  /** ri, radius of the inner face, m */
  readonly innerRadius: number
  /** ro, radius of the outer face, m */
  readonly outerRadius: number
  /** b, across the plane of bending, m */
  readonly width: number
}

export interface SectionProperties {
  /** A, m² */
  readonly area: number
  /** rc, m */
  readonly centroidRadius: number
  /** rn, m */
  readonly neutralRadius: number
  /** e = rc − rn, m */
  readonly eccentricity: number
}

/**
 * Properties of a rectangular curved section by Winkler and Bach: rn = h / ln(ro/ri).
 *
 * @param section - ri above 0, ro above ri, radii up to 10 m, b 0.0001 to 1 m
 * @returns area and radii, m² and m
 * @throws {DomainError} if a value is not a finite number in its range
 * @see Shigley's Mechanical Engineering Design, 9th ed., section 3–18 and Table 3–4
 */
export function curvedSection(section: CurvedSection): SectionProperties {
  const { innerRadius, outerRadius, width } = section
  requireWithin('innerRadius', innerRadius, 1e-4, 10, 'm')
  if (!(outerRadius > innerRadius && outerRadius <= 10.1)) {
    throw new DomainError('outerRadius', outerRadius, `above ${innerRadius} m, up to 10.1 m`)
  }
  requireWithin('width', width, 1e-4, 1, 'm')
  const height = outerRadius - innerRadius
  const centroidRadius = innerRadius + height / 2
  // With u = h / 2rc, ln(ro/ri) = 2 artanh u; e = rc (1 − u / artanh u), without the loss of
  // digits of rc − rn where the bar is nearly straight.
  const u = height / (2 * centroidRadius)
  const eccentricity = centroidRadius * oneLessRatio(u)
  return {
    area: width * height,
    centroidRadius,
    neutralRadius: centroidRadius - eccentricity,
    eccentricity,
  }
}

/** 1 − u / artanh u for 0 < u < 1. */
function oneLessRatio(u: number): number {
  if (u > 0.05) return 1 - u / Math.atanh(u)
  const s = u * u
  const tail = s / 3 + (s * s) / 5 + (s * s * s) / 7
  return tail / (1 + tail)
}

export interface CurvedStress {
  /** At the inner face, Pa, tension positive */
  readonly inner: number
  /** At the outer face, Pa, tension positive */
  readonly outer: number
}

/**
 * Stress at the two faces of a curved bar: σ = N/A + M (rn − r)/(A e r).
 *
 * @param section - see {@link CurvedSection}
 * @param moment - M about the centroid, N m; positive straightens the bar (tension inside)
 * @param normalForce - N through the centroid, N; tension positive
 * @returns stresses, Pa
 * @throws {DomainError} if a value is not a finite number in its range
 * @see Shigley, 9th ed., eqs 3–64 and 3–65
 */
export function curvedBeamStress(
  section: CurvedSection,
  moment: number,
  normalForce: number,
): CurvedStress {
  requireWithin('moment', moment, -1e9, 1e9, 'N m')
  requireWithin('normalForce', normalForce, -1e9, 1e9, 'N')
  const { area, neutralRadius, eccentricity } = curvedSection(section)
  const { innerRadius, outerRadius } = section
  const direct = normalForce / area
  const bending = moment / (area * eccentricity)
  return {
    inner: direct + (bending * (neutralRadius - innerRadius)) / innerRadius,
    outer: direct + (bending * (neutralRadius - outerRadius)) / outerRadius,
  }
}
