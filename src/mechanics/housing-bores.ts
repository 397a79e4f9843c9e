import { DomainError, requireWithin } from './domain-error.ts'

/** Diameters of one main's housing, caps torqued, read in the same directions at both ends; m. */
export interface HousingReadings {
  front: readonly number[]
  rear: readonly number[]
}

/** One end of a housing: size, out of round, and the oval that fits the readings. */
export interface BoreSection {
  mean: number
  least: number
  greatest: number
  /** Greatest less least diameter as read. */
  outOfRound: number
  /** Greatest less least diameter of the fitted oval, which the readings may straddle. */
  ovality: number
  /** Direction of the oval's long axis, rad from vertical, −π/2 to π/2. */
  longAxis: number
  /** Fitted diameters up and down, and side to side. */
  vertical: number
  horizontal: number
  /** Root mean square of what the oval leaves; 0 for three readings. */
  residual: number
}

export interface HousingBore {
  front: BoreSection
  rear: BoreSection
  /** Mean of all readings. */
  mean: number
  least: number
  greatest: number
  /** The worse of both ends. */
  outOfRound: number
  /** Mean at the front less mean at the rear. */
  taper: number
  /** Greatest difference front to rear in any one direction. */
  directionalTaper: number
  /** Mean of both ends, fitted. */
  vertical: number
  horizontal: number
}

/** Up and down, and 60° to either side: clear of the parting faces, and evenly spread. */
export const THREE_DIRECTIONS: readonly number[] = [0, Math.PI / 3, -Math.PI / 3]

/**
 * Roundness, taper and size of a main's housing bore from diameters read in
 * three or more directions at each end.
 *
 * Out of round is the plain difference of readings. Three even directions show
 * only 75 to 87 % of an oval, by how they happen to lie to its axes; so the oval
 * D(φ) = D₀ + A cos 2φ + B sin 2φ is fitted as well, exactly through three
 * readings, by least squares through more. Two-point readings cannot see
 * lobes of odd number.
 *
 * @param directions - rad from vertical; at least three, no two the same diameter
 * @throws {DomainError} if a row does not match the directions or a number does not fit
 *
 * @see ISO 12181-1, roundness terms; two-point diameters by ISO 14405-1 (from memory)
 */
export function housingBore(
  readings: HousingReadings,
  directions: readonly number[] = THREE_DIRECTIONS,
): HousingBore {
  const front = boreSection('front', readings.front, directions)
  const rear = boreSection('rear', readings.rear, directions)
  const differences = readings.front.map((d, place) => Math.abs(d - readings.rear[place]!))
  return {
    front,
    rear,
    mean: (front.mean + rear.mean) / 2,
    least: Math.min(front.least, rear.least),
    greatest: Math.max(front.greatest, rear.greatest),
    outOfRound: Math.max(front.outOfRound, rear.outOfRound),
    taper: front.mean - rear.mean,
    directionalTaper: Math.max(...differences),
    vertical: (front.vertical + rear.vertical) / 2,
    horizontal: (front.horizontal + rear.horizontal) / 2,
  }
}

function boreSection(
  end: string,
  diameters: readonly number[],
  directions: readonly number[],
): BoreSection {
  requireSection(end, diameters, directions)
  const mean = diameters.reduce((sum, d) => sum + d, 0) / diameters.length
  // Fit the small differences from the mean, so that no digits are lost.
  const oval = fitOval(
    diameters.map((d) => d - mean),
    directions,
  )
  const half = Math.hypot(oval.cosine, oval.sine)
  const left = diameters.map((d, place) => d - mean - ovalAt(oval, directions[place]!))
  return {
    mean,
    least: Math.min(...diameters),
    greatest: Math.max(...diameters),
    outOfRound: Math.max(...diameters) - Math.min(...diameters),
    ovality: 2 * half,
    longAxis: Math.atan2(oval.sine, oval.cosine) / 2,
    vertical: mean + oval.level + oval.cosine,
    horizontal: mean + oval.level - oval.cosine,
    residual: Math.sqrt(left.reduce((sum, r) => sum + r * r, 0) / left.length),
  }
}

interface Oval {
  level: number
  cosine: number
  sine: number
}

function ovalAt({ level, cosine, sine }: Oval, direction: number): number {
  return level + cosine * Math.cos(2 * direction) + sine * Math.sin(2 * direction)
}

/** Least-squares D₀, A, B from the three normal equations, by Cramer's rule. */
function fitOval(values: readonly number[], directions: readonly number[]): Oval {
  const rows = directions.map((phi) => [1, Math.cos(2 * phi), Math.sin(2 * phi)])
  const normal = [0, 1, 2].map((one) =>
    [0, 1, 2].map((other) => rows.reduce((sum, row) => sum + row[one]! * row[other]!, 0)),
  )
  const right = [0, 1, 2].map((one) =>
    rows.reduce((sum, row, place) => sum + row[one]! * values[place]!, 0),
  )
  const whole = determinant(normal)
  if (!(whole > 1e-6)) {
    throw new DomainError('directions', directions.join(', '), 'spread over three diameters')
  }
  const [level, cosine, sine] = [0, 1, 2].map((column) => {
    const swapped = normal.map((row, place) => row.with(column, right[place]!))
    return determinant(swapped) / whole
  })
  return { level: level!, cosine: cosine!, sine: sine! }
}

function determinant(m: readonly (readonly number[])[]): number {
  const [a, b, c] = m as [number[], number[], number[]]
  return (
    a[0]! * (b[1]! * c[2]! - b[2]! * c[1]!) -
    a[1]! * (b[0]! * c[2]! - b[2]! * c[0]!) +
    a[2]! * (b[0]! * c[1]! - b[1]! * c[0]!)
  )
}

function requireSection(
  end: string,
  diameters: readonly number[],
  directions: readonly number[],
): void {
  requireWithin('directions', directions.length, 3, 36)
  if (diameters.length !== directions.length) {
    throw new DomainError(end, diameters.length, `${directions.length} readings`)
  }
  diameters.forEach((d, place) => {
    requireWithin(`${end}[${place}]`, d, 0.02, 0.3, 'm')
  })
}
