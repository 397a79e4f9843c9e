import { archForces, type CapArch, type CrownForces, crownForces } from './cap-arch.ts'
import { type CurvedStress, curvedBeamStress } from './curved-beam.ts'
import { DomainError, requireWithin } from './domain-error.ts'
import { ellipticFactor, gerberFactor, goodmanFactor, smithDolanFactor } from './fatigue.ts'
import { equivalentDiameter, type SurfaceFinish, sizeFactor, surfaceFactor } from './marin.ts'

/** Strength of a cap's material, Pa; a row of the materials table fits. */
export interface CapMaterial {
  readonly ultimate: number
  /** 0.2 % proof stress; none for gray iron */
  readonly yield?: number | undefined
  /** Crushing strength, or compressive yield of a ductile metal */
  readonly compressive: number
  /** Reversed bending, small specimen */
  readonly endurance: number
  /** What the endurance figure has in it already */
  readonly enduranceIncludes: 'nothing' | 'finish' | 'finish-and-size'
}

export interface CapGeometry extends CapArch {
  /** Width along the crank, m; 0.005 to 0.15 */
  readonly width: number
}

export interface CapSeat {
  /** Preload of one fastener, N; 0 to 5e5 */
  readonly preload: number
  /** Most that a pull adds to one fastener, N; at least 0 */
  readonly addedLoad: number
  /** Face under the head or washer, m */
  readonly headDiameter: number
  /** Clearance hole, m; below headDiameter */
  readonly holeDiameter: number
  /** Thickness of the cap beside the seat, square to the bore, m; the crown's when left out */
  readonly shoulderHeight?: number | undefined
}

export interface CapStrengthInput extends CapGeometry {
  /** Greatest pull over the cycle, N; 0 to 1e6 */
  readonly pull: number
  /** Least pull over the cycle, N; 0 when left out; up to `pull` */
  readonly pullMin?: number | undefined
  readonly material: CapMaterial
  /** Finish of the outer face of the crown; 'machined' when left out */
  readonly finish?: SurfaceFinish | undefined
  /** Fatigue notch factor Kf at the crown, on the alternating stress; 1 to 4, 1 when left out */
  readonly notchFactor?: number | undefined
  readonly seat?: CapSeat | undefined
}

export interface FaceStress {
  readonly mean: number
  readonly alternating: number
  readonly goodman: number
}

export interface CapStrength {
  /** Mean and alternating stress of the governing face of the crown, Pa */
  readonly crownMean: number
  readonly crownAlternating: number
  readonly governing: 'inner' | 'outer'
  readonly inner: FaceStress
  readonly outer: FaceStress
  /** At the greatest pull: moment (N m, positive closes the arch) and tension (N) */
  readonly crownMoment: number
  readonly crownTension: number
  /** Endurance with finish and size factors, Pa */
  readonly endurance: number
  /** The line that suits the metal: Smith–Dolan without yield, else Goodman */
  readonly fatigueMargin: number
  /** Growth of the load the governing face bears; the smaller of inner and outer */
  readonly goodmanMargin: number
  readonly gerberMargin: number
  /** Elliptic with yield; not given for a material without yield */
  readonly ellipticMargin?: number
  /** Line for brittle iron, at or below Goodman */
  readonly smithDolanMargin: number
  /** One pull to tension failure (yield, or breaking of a brittle iron) or crushing */
  readonly staticMargin: number
  /** Given a seat: pressure and bending there */
  readonly seat?: SeatStrength
}

export interface SeatStrength {
  /** Pressure under the head, Pa */
  readonly pressureMean: number
  readonly pressureAlternating: number
  /** The material's compressive strength over the greatest pressure */
  readonly pressureMargin: number
  /** Worse face of the section at the inner edge of the seat: stress, Pa, and Goodman margin */
  readonly shoulder: FaceStress
}

/**
 * Stress at both faces of the crown for each N of pull, Pa/N. Fixed by the drawing alone, so
 * worked once and scaled for every sample.
 *
 * @param geometry - see {@link CapGeometry}
 * @returns inner and outer stress per N, tension positive
 * @throws {DomainError} if a value is not a finite number in its range
 * @see Winkler–Bach, Shigley's Mechanical Engineering Design, 9th ed., eqs 3–64, 3–65
 */
function crownStressPerPull(geometry: CapGeometry): CurvedStress {
  return sectionStress(geometry, crownForces(geometry), geometry.height)
}

/** Stress at both faces of a section of the arch for each N of pull, Pa/N. */
function sectionStress(geometry: CapGeometry, forces: CrownForces, height: number): CurvedStress {
  const { boreRadius, width } = geometry
  requireWithin('width', width, 0.005, 0.15, 'm')
  const section = { innerRadius: boreRadius, outerRadius: boreRadius + height, width }
  // A moment that closes the arch is negative for the curved bar (it presses the inside).
  return curvedBeamStress(section, -forces.moment, forces.normal)
}

/**
 * Endurance of the cap's crown: the material's figure × finish × size of the section, each
 * only where the figure does not have it already.
 *
 * @param material - see {@link CapMaterial}
 * @param height - of the crown, m
 * @param width - along the crank, m
 * @param finish - of the outer face
 * @returns Se, Pa
 * @throws {DomainError} if a value is not a finite number in its range
 * @see Shigley, 9th ed., eq 6–18
 */
function capEndurance(
  material: CapMaterial,
  height: number,
  width: number,
  finish: SurfaceFinish = 'machined',
): number {
  const { endurance, enduranceIncludes, ultimate } = material
  if (enduranceIncludes === 'finish-and-size') return endurance
  const size = sizeFactor(equivalentDiameter(height, width))
  return endurance * size * (enduranceIncludes === 'finish' ? 1 : surfaceFactor(ultimate, finish))
}

function faceStress(perPull: number, input: CapStrengthInput, endurance: number): FaceStress {
  const { pull, pullMin = 0, notchFactor = 1 } = input
  const mean = (perPull * (pull + pullMin)) / 2
  const alternating = (Math.abs(perPull) * (pull - pullMin) * notchFactor) / 2
  const goodman = goodmanFactor({ mean, alternating }, endurance, input.material.ultimate)
  return { mean, alternating, goodman }
}

function staticMargin(material: CapMaterial, peaks: readonly number[]): number {
  const inTension = material.yield ?? material.ultimate
  return Math.min(
    ...peaks.map((peak) => (peak >= 0 ? inTension / peak : material.compressive / -peak)),
  )
}

function requireSeat(seat: CapSeat): void {
  const { preload, addedLoad, headDiameter, holeDiameter } = seat
  requireWithin('seat.preload', preload, 0, 5e5, 'N')
  requireWithin('seat.addedLoad', addedLoad, 0, 1e6, 'N')
  requireWithin('seat.holeDiameter', holeDiameter, 0.003, 0.05, 'm')
  if (!(headDiameter > holeDiameter && headDiameter < 0.2)) {
    throw new DomainError('seat.headDiameter', headDiameter, `above ${holeDiameter} m`)
  }
}

function seatStrength(seat: CapSeat, input: CapStrengthInput, endurance: number): SeatStrength {
  requireSeat(seat)
  const { preload, addedLoad, headDiameter, holeDiameter, shoulderHeight = input.height } = seat
  requireWithin('seat.shoulderHeight', shoulderHeight, 0.003, 0.2, 'm')
  const area = (Math.PI / 4) * (headDiameter ** 2 - holeDiameter ** 2)
  // The seat's inner edge on the centre line of the arch; past the foot the foot stands for it.
  const reach = (input.span - headDiameter) / 2 / (input.boreRadius + input.height / 2)
  const forces = archForces(input, Math.asin(Math.min(1, Math.max(0, reach))))
  const perPull = sectionStress(input, forces, shoulderHeight)
  const inner = faceStress(perPull.inner, input, endurance)
  const outer = faceStress(perPull.outer, input, endurance)
  return {
    pressureMean: (preload + addedLoad / 2) / area,
    pressureAlternating: addedLoad / 2 / area,
    pressureMargin: (input.material.compressive * area) / (preload + addedLoad),
    shoulder: outer.goodman <= inner.goodman ? outer : inner,
  }
}

function requireInput({ pull, pullMin = 0, notchFactor = 1 }: CapStrengthInput): void {
  requireWithin('pull', pull, 0, 1e6, 'N')
  requireWithin('pullMin', pullMin, 0, pull, 'N')
  requireWithin('notchFactor', notchFactor, 1, 4)
}

/**
 * Strength of a main cap as a thick curved beam between its fasteners: stress at both faces
 * of the crown over the cycle, fatigue margins, one-pull margin, pressure under the heads.
 *
 * A pull closes the arch: the outer face of the crown is stretched, the face at the bore
 * pressed. Both are reckoned and the worse governs. Feet are a quarter built in unless given
 * ({@link CapArch.endFixity}). For scale: an arch of 34 mm bore radius, 27 × 26 mm crown and
 * 102 mm span under 35 kN from nought comes by Goodman to 1.2 with class 25 and 1.4 with class
 * 30 gray iron, by the line for brittle iron to 1.0 and 1.2, and to two to three times that
 * with medium carbon steel: iron caps of that size do last at such loads, not far above them. Oil holes, shell crush and bolt-hole edges are outside it; give a notch
 * factor where the crown has one.
 *
 * @param input - see {@link CapStrengthInput}
 * @returns stresses, Pa, and margins; margins are infinite without pull
 * @throws {DomainError} if a value is not a finite number in its range
 * @see Shigley, 9th ed., sections 3–18 and 6–12 (between Goodman and Smith–Dolan for iron),
 *   eq 6–53 not credited; cap as a beam (M = P L/6) for comparison: Khurmi & Gupta
 */
export function capStrength(input: CapStrengthInput): CapStrength {
  requireInput(input)
  const { material, height, width, pull, seat } = input
  const perPull = crownStressPerPull(input)
  const endurance = capEndurance(material, height, width, input.finish)
  const inner = faceStress(perPull.inner, input, endurance)
  const outer = faceStress(perPull.outer, input, endurance)
  const governing = outer.goodman <= inner.goodman ? 'outer' : 'inner'
  const { mean, alternating, goodman } = governing === 'outer' ? outer : inner
  const forces = crownForces(input)
  const swing = { mean, alternating }
  const smithDolanMargin = smithDolanFactor(swing, endurance, material.ultimate)
  return {
    crownMean: mean,
    crownAlternating: alternating,
    governing,
    inner,
    outer,
    crownMoment: forces.moment * pull,
    crownTension: forces.normal * pull,
    endurance,
    fatigueMargin: material.yield ? goodman : smithDolanMargin,
    goodmanMargin: goodman,
    gerberMargin: gerberFactor(swing, endurance, material.ultimate),
    ...(material.yield && { ellipticMargin: ellipticFactor(swing, endurance, material.yield) }),
    smithDolanMargin,
    staticMargin: staticMargin(material, [perPull.inner * pull, perPull.outer * pull]),
    ...(seat && { seat: seatStrength(seat, input, endurance) }),
  }
}
