import { DomainError, requireWithin } from './domain-error.ts'

/** Side view of a main cap: half a ring round the bearing, held at its two feet. */
export interface CapArch {
  /** Bolt span: distance between the (inner) fasteners' axes, m; 0.02 to 0.4 */
  readonly span: number
  /** Thickness below the bore at the crown, m; 0.003 to 0.15 */
  readonly height: number
  /** Radius of the housing bore, m; 0.01 to 0.1 */
  readonly boreRadius: number
  /** 0 = feet free to turn and slide, 1 = built in; {@link END_FIXITY} when left out */
  readonly endFixity?: number | undefined
}

/** Forces in the crown section, each for 1 N of pull. */
export interface CrownForces {
  /** Bending moment, N m per N; positive closes the arch: tension at the outer face */
  readonly moment: number
  /** Force along the arch, N per N; tension positive */
  readonly normal: number
}

/**
 * How far the feet count as built in. Clamped feet neither turn nor slide freely while the
 * joint is closed, but the block below them gives and the inner edge of each foot unloads
 * first. A quarter is a judgement on the safe side of the middle; no published source.
 */
const END_FIXITY = 0.25

/**
 * Moment and force at the crown with feet that carry upright force only: the fasteners pull at
 * the span, the journal presses as a cosine over the lower half of the bore, so by statics
 * M = P (L/4 − rc/π), N = P/π. The journal spreads the legs as well as pushing the crown down,
 * which takes rc/π off the simple beam's L/4.
 */
function freeFeet(span: number, centroidRadius: number): CrownForces {
  return { moment: span / 4 - centroidRadius / Math.PI, normal: 1 / Math.PI }
}

/**
 * The same half ring with feet built in at the parting face, its bending by Castigliano:
 * ∫M dφ = 0 and ∫M cos φ dφ = 0 with M = M₀ + N₀ rc (1 − cos φ) − (P/π) rc φ sin φ, a pair of
 * linear equations in M₀ and N₀.
 */
function builtInFeet(centroidRadius: number): CrownForces {
  const quarter = Math.PI / 2
  // Unknowns m = M₀/(rc q), n = N₀/q with q = 2P/π, the peak of the cosine load:
  //   (π/2) m + (π/2 − 1) n = 1/2 and m + (1 − π/4) n = π/16.
  const n = (quarter * (Math.PI / 16) - 1 / 2) / (quarter * (1 - Math.PI / 4) - (quarter - 1))
  const m = Math.PI / 16 - (1 - Math.PI / 4) * n
  return { moment: (m * centroidRadius) / quarter, normal: n / quarter }
}

/**
 * Bending moment and tension at the crown of a main cap for each N of pull, between free and
 * built-in feet by the end fixity.
 *
 * Rod and bearing caps are usually worked as a straight beam with M = P L/6, between the
 * uniform load's L/8 and the central load's L/4 (Khurmi & Gupta; the form read in open
 * calculators). That beam leaves the outward push of the journal out; for the proportions of
 * main caps it lies above the free-footed arch.
 *
 * @param arch - see {@link CapArch}; span/2 must reach beyond the bore
 * @returns moment, m, and normal force, per N of pull
 * @throws {DomainError} if a value is not a finite number in its range
 * @see statics and Castigliano's theorem, Shigley's Mechanical Engineering Design, 9th ed.,
 *   sections 4–7 to 4–9; the arch itself is derived here
 */
export function crownForces(arch: CapArch): CrownForces {
  const { span, height, boreRadius, endFixity = END_FIXITY } = arch
  requireWithin('span', span, 0.02, 0.4, 'm')
  requireWithin('height', height, 0.003, 0.15, 'm')
  requireWithin('boreRadius', boreRadius, 0.01, 0.1, 'm')
  requireWithin('endFixity', endFixity, 0, 1)
  if (!(span > 2 * boreRadius)) {
    throw new DomainError('span', span, `above the bore, ${2 * boreRadius} m`)
  }
  const centroidRadius = boreRadius + height / 2
  const free = freeFeet(span, centroidRadius)
  const fixed = builtInFeet(centroidRadius)
  return {
    moment: free.moment + endFixity * (fixed.moment - free.moment),
    normal: free.normal + endFixity * (fixed.normal - free.normal),
  }
}

/**
 * Moment and force in the arch at an angle from the crown, for each N of pull:
 * M = M₀ + N₀ rc (1 − cos φ) − (P/π) rc φ sin φ and, along the arch,
 * N = (N₀ − (P/π) sin² φ) cos φ + (P/π)(φ + ½ sin 2φ) sin φ.
 *
 * @param arch - see {@link CapArch}
 * @param angle - φ from the crown, rad; 0 to π/2, the parting face
 * @returns moment (positive closes the arch) and normal force (tension), per N of pull
 * @throws {DomainError} if a value is not a finite number in its range
 * @see equilibrium of the part between crown and section under the journal's cosine load
 */
export function archForces(arch: CapArch, angle: number): CrownForces {
  requireWithin('angle', angle, 0, Math.PI / 2, 'rad')
  const { moment, normal } = crownForces(arch)
  const centroidRadius = arch.boreRadius + arch.height / 2
  const [sine, cosine] = [Math.sin(angle), Math.cos(angle)]
  const across = normal - sine ** 2 / Math.PI
  const upright = (angle + sine * cosine) / Math.PI
  return {
    moment:
      moment + normal * centroidRadius * (1 - cosine) - (centroidRadius * angle * sine) / Math.PI,
    normal: across * cosine + upright * sine,
  }
}
