import { requireWithin } from './domain-error.ts'

export type FastenerGrade =
  | 'sae-2'
  | 'sae-5'
  | 'sae-7'
  | 'sae-8'
  | 'iso-8.8'
  | 'iso-10.9'
  | 'iso-12.9'
  | 'high-strength-stud'

/** Strength of a fastener in tension, Pa; `fromMemory` marks rows not read in print. */
export interface FastenerStrength {
  /** Greatest stress with no permanent set. */
  readonly proof: number
  readonly yield: number
  readonly ultimate: number
  /** Fully corrected endurance strength of a rolled thread, axial, at zero mean load. */
  readonly endurance: number
  readonly source: string
  readonly fromMemory: boolean
}

interface GradeRow extends FastenerStrength {
  /** The row holds up to this nominal diameter, m. */
  readonly upTo: number
}

const KSI = 6.894757293168361e6
const MPA = 1e6

const J429 = 'SAE J429, as in Shigley & Mischke, 5th ed., p. 341; endurance: Shigley Table 8–17'
const ISO898 = 'ISO 898-1, proof, yield and tensile strength; endurance: Shigley Table 8–17'

function inksi(
  upTo: number,
  [proof, yielding, ultimate, endurance]: readonly [number, number, number, number],
  source: string,
  fromMemory = false,
): GradeRow {
  return {
    upTo: upTo * 0.0254,
    proof: proof * KSI,
    yield: yielding * KSI,
    ultimate: ultimate * KSI,
    endurance: endurance * KSI,
    source,
    fromMemory,
  }
}

function inMPa(
  upTo: number,
  [proof, yielding, ultimate, endurance]: readonly [number, number, number, number],
  source: string,
  fromMemory = false,
): GradeRow {
  return {
    upTo,
    proof: proof * MPA,
    yield: yielding * MPA,
    ultimate: ultimate * MPA,
    endurance: endurance * MPA,
    source,
    fromMemory,
  }
}

const GRADES: Readonly<Record<FastenerGrade, readonly GradeRow[]>> = {
  // The table gives no rolled-thread endurance for grade 2; the ratio of grade 5 is kept.
  'sae-2': [
    inksi(
      0.75,
      [55, 57, 74, 11.5],
      `${J429}; endurance from memory, in proportion to grade 5`,
      true,
    ),
    inksi(1.5, [33, 36, 60, 9.3], 'SAE J429, over 3/4 in, from memory', true),
  ],
  'sae-5': [
    inksi(1, [85, 92, 120, 18.6], J429),
    inksi(
      1.5,
      [74, 81, 105, 16.3],
      'SAE J429 and Shigley Table 8–17, over 1 in, from memory',
      true,
    ),
  ],
  'sae-7': [inksi(1.5, [105, 115, 133, 20.6], J429)],
  'sae-8': [inksi(1.5, [120, 130, 150, 23.2], J429)],
  'iso-8.8': [
    inMPa(0.016, [580, 640, 800, 129], 'ISO 898-1, up to 16 mm, from memory', true),
    inMPa(0.039, [600, 660, 830, 129], ISO898),
  ],
  'iso-10.9': [inMPa(0.039, [830, 940, 1040, 162], ISO898)],
  'iso-12.9': [inMPa(0.039, [970, 1100, 1220, 190], ISO898)],
  // Sold by tensile strength alone, 190 to 200 ksi; the lower end is taken, proof and yield
  // in the proportions of ISO 12.9, and no endurance above that of ISO 12.9.
  'high-strength-stud': [
    inksi(
      1.5,
      [151, 171, 190, 27.6],
      'Alloy steel studs of 190–200 ksi: common practice, no published source; from memory',
      true,
    ),
  ],
}

export const FASTENER_GRADES: readonly FastenerGrade[] = Object.keys(GRADES) as FastenerGrade[]

/**
 * Proof, yield, tensile and rolled-thread endurance strength of a grade at a size.
 *
 * @param grade - property class or grade
 * @param nominalDiameter - d, m; from 0.003, since outer and cross bolts are smaller than those of a main
 *   cap, to the largest size the row is printed for (SAE 1½ in, ISO 39 mm); a first row stands for
 *   all below it
 * @returns strengths, Pa, with their source
 * @throws {DomainError} if the diameter is outside the rows of the grade
 * @see SAE J429; ISO 898-1; Shigley, 9th ed., Tables 8–9, 8–11, 8–17
 */
export function fastenerStrength(grade: FastenerGrade, nominalDiameter: number): FastenerStrength {
  const rows = GRADES[grade]
  const largest = rows[rows.length - 1]?.upTo ?? 0
  requireWithin('nominalDiameter', nominalDiameter, 0.003, largest, 'm')
  // A hair of room: sizes arrive by unit conversion.
  const row = rows.find(({ upTo }) => nominalDiameter <= upTo * (1 + 1e-9)) as GradeRow
  const { upTo: _, ...strength } = row
  return strength
}
