import { DomainError, requireWithin } from './domain-error.ts'

/** A timing chain between two sprockets, and the shift of the crank axis; m and rad. */
export interface ChainDriveInput {
  /** Crank axis to cam axis before the shift, m; 0.03 to 2. */
  centreDistance: number
  /** Line from crank to cam, measured from the direction of the shift; 0 when not given. */
  camAngle?: number
  pitch: number
  crankTeeth: number
  camTeeth: number
  /** How far the crank axis moved, m, positive towards the cam; −0.005 to 0.005. */
  axisShift: number
  /** Slack in the chain's length before; 0 when not given. */
  slackBefore?: number
  /** How much shorter a centre distance the timing set is made for; 0 when not given. */
  setShortening?: number
}

export interface ChainDrive {
  centreDistance: number
  /** Centre distance lost, exact for a shift that is not along the line of centres. */
  shortening: number
  /** Extra length of chain set free, exact (belt length over two pitch circles). */
  slackFreed: number
  /** The same by 2 ΔC cos α. */
  slackFreedApproximate: number
  /** Slack with the set that is fitted: before + freed − what the set takes up; below 0, tight. */
  slack: number
  /** Length of one free strand between the sprockets. */
  strand: number
  /**
   * Sideways throw at mid-strand if all slack gathers in one strand; 0 when tight. Slack
   * beyond a tenth of the strand is not counted: the parabola would be no longer shallow.
   */
  sag: number
  /** Turn of the cam against the crank, late, when the driving strand stays taut; rad of cam. */
  camRetard: number
}

/** Radius of the circle through the pins of a chain on a sprocket, p / (2 sin(π/z)), m. */
export function sprocketRadius(pitch: number, teeth: number): number {
  requireWithin('pitch', pitch, 0.001, 0.1, 'm')
  requireWithin('teeth', teeth, 6, 200)
  return pitch / (2 * Math.sin(Math.PI / teeth))
}

/**
 * Length of a chain in pitches, 2C/p + (z₁ + z₂)/2 + ((z₂ − z₁)/2π)²/(C/p).
 *
 * @throws {DomainError} if a figure is not in its range
 * @see Shigley's Mechanical Engineering Design, 9th ed., section 17–5, eq. 17–34 (from memory);
 *   the same form in chain makers' tables
 */
export function chainPitches(
  centreDistance: number,
  pitch: number,
  crankTeeth: number,
  camTeeth: number,
): number {
  requireWithin('centreDistance', centreDistance, 0.03, 2, 'm')
  requireWithin('pitch', pitch, 0.001, 0.1, 'm')
  const centres = centreDistance / pitch
  const difference = (camTeeth - crankTeeth) / (2 * Math.PI)
  return 2 * centres + (crankTeeth + camTeeth) / 2 + (difference * difference) / centres
}

/**
 * What a moved crank axis does to the timing chain.
 *
 * The chain is taken as a belt over the two pitch circles: 2 C cos α along the
 * strands, R₁(π − 2α) + R₂(π + 2α) round the sprockets, sin α = (R₂ − R₁)/C.
 * Its length is fixed, so the difference of that sum is slack. A slack strand of
 * length s with an excess e hangs out √(3 s e / 8), as a shallow parabola. The
 * driving strand stays taut, so half of the freed length turns the cam late.
 *
 * @throws {DomainError} if a figure is not in its range or the sprockets would touch
 * Source: plane geometry; Shigley's Mechanical Engineering Design, 9th ed., figure 17–1 (open belt).
 */
export function chainDrive(input: ChainDriveInput): ChainDrive {
  const { pitch, crankTeeth, camTeeth, slackBefore = 0, setShortening = 0 } = input
  const small = sprocketRadius(pitch, crankTeeth)
  const large = sprocketRadius(pitch, camTeeth)
  const before = input.centreDistance
  requireWithin('centreDistance', before, Math.max(0.03, small + large), 2, 'm')
  requireWithin('slackBefore', slackBefore, -0.005, 0.05, 'm')
  requireWithin('setShortening', setShortening, 0, 0.005, 'm')
  const after = shiftedCentres(before, input.axisShift, input.camAngle ?? 0)
  requireWithin('centreDistance after the shift', after, small + large, 2, 'm')
  const shortening = before - after
  const freed = beltLength(before, small, large) - beltLength(after, small, large)
  const takenUp =
    beltLength(before, small, large) - beltLength(before - setShortening, small, large)
  const slack = slackBefore + freed - takenUp
  const strand = Math.sqrt(after * after - (large - small) ** 2)
  return {
    centreDistance: after,
    shortening,
    slackFreed: freed,
    slackFreedApproximate: 2 * shortening * Math.sqrt(1 - ((large - small) / before) ** 2),
    slack,
    strand,
    sag: midStrandSag(strand, Math.min(Math.max(0, slack), strand / 10)),
    camRetard: (freed - takenUp) / 2 / large,
  }
}

/**
 * Sideways throw of a strand at its middle, √(3 s e / 8), for a small excess.
 *
 * @param strand - s, straight distance between its ends, m; above 0
 * @param excess - e, length beyond that distance, m; 0 up to a tenth of s
 * @throws {DomainError} if an argument does not fit
 * Source: arc length of a shallow parabola, s (1 + 8/3 (f/s)²), solved for f.
 */
export function midStrandSag(strand: number, excess: number): number {
  requireWithin('strand', strand, 1e-6, 2, 'm')
  requireWithin('excess', excess, 0, strand / 10, 'm')
  return Math.sqrt((3 * strand * excess) / 8)
}

/**
 * Centre distance after the crank axis has moved, exact.
 *
 * @param before - m
 * @param shift - along the direction from which `angle` is measured, m
 * @param angle - of the line of centres from that direction, rad
 */
export function shiftedCentres(before: number, shift: number, angle: number): number {
  requireWithin('axisShift', shift, -0.005, 0.005, 'm')
  requireWithin('camAngle', angle, -Math.PI, Math.PI, 'rad')
  return Math.hypot(before * Math.sin(angle), before * Math.cos(angle) - shift)
}

/**
 * Shift that brings the centres from one distance to another: the inverse of
 * `shiftedCentres`, on the near side.
 *
 * @throws {DomainError} if the line of centres leans too far for the wanted distance
 */
export function shiftToCentres(before: number, after: number, angle: number): number {
  const across = before * Math.sin(angle)
  requireWithin('centre distance wanted', after, Math.abs(across), 2, 'm')
  return before * Math.cos(angle) - Math.sqrt(after * after - across * across)
}

/**
 * Greatest axis shift that leaves a chain's slack within a limit, to a nanometre.
 *
 * @param input - the drive; its own `axisShift` does not count
 * @param mostSlack - in the chain's length, m; 0 or above
 * @returns m towards the cam, between −0.005 and 0.005; an end of that range if the limit is beyond
 * @throws {DomainError} as `chainDrive`
 */
export function mostShiftForSlack(
  input: Omit<ChainDriveInput, 'axisShift'>,
  mostSlack: number,
): number {
  requireWithin('mostSlack', mostSlack, 0, 0.05, 'm')
  const over = (axisShift: number) => chainDrive({ ...input, axisShift }).slack - mostSlack
  let low = -0.005
  let high = 0.005
  if (over(high) <= 0) return high
  if (over(low) >= 0) return low
  while (high - low > 1e-10) {
    const middle = (low + high) / 2
    if (over(middle) > 0) high = middle
    else low = middle
  }
  return low
}

/**
 * Length of an open belt over two pulleys, m.
 *
 * @throws {DomainError} if one pulley would lie inside the other
 */
export function beltLength(centres: number, small: number, large: number): number {
  const difference = large - small
  if (Math.abs(difference) >= centres) {
    throw new DomainError('centreDistance', centres, `above ${Math.abs(difference)} m`)
  }
  const lean = Math.asin(difference / centres)
  const strands = 2 * Math.sqrt(centres * centres - difference * difference)
  return strands + small * (Math.PI - 2 * lean) + large * (Math.PI + 2 * lean)
}
