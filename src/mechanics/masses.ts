import { DomainError, requireWithin } from './domain-error.ts'

/**
 * Masses of a cylinder's moving parts where nobody has weighed them. Parts of one kind are taken as
 * alike in shape, so that mass goes with the cube of the bore: m = k D³.
 */

/** How pistons and rods are made. */
export type PartsKind = 'cast' | 'forged' | 'race'

/** A mass and its spread, kg. */
export interface MassEstimate {
  low: number
  likely: number
  high: number
}

/** Per cylinder. */
export interface CylinderMasses {
  /** Piston, pin, rings and the rod's upper part. */
  reciprocating: MassEstimate
  /** The rod's lower part with its bearing and bolts. */
  bigEnd: MassEstimate
}

interface Density {
  readonly low: number
  readonly likely: number
  readonly high: number
}

/**
 * k, kg of part for each m³ of D³. `cast`: cast pistons on production rods; `forged`: forged
 * pistons with steel rods for street and track; `race`: light pistons and rods for high speed.
 *
 * Support: published balance sheets of three engines, names withheld, seen. An iron V8 of 4.00 in
 * bore: piston and pin 639.5 g, big end and bearing 666.5 g, which is 610 and 636 kg/m³ before
 * rings and small end. A drag-race V8: piston 584, pin 174, rings and locks 74, small end 162 g, in
 * all 994 g reciprocating. A four of about 82 mm bore: piston 384, pin 118, rings 37, small end 206
 * g, big end 492 g: 1350 and 890 kg/m³, an old and heavy design, the upper end of the cast row.
 * S. A. Kolchin & V. Demidov, Design of Automotive Engines, give by piston area (from memory):
 * aluminium piston group 80 to 150 kg/m², rod 100 to 200 kg/m² for bores of 60 to 100 mm, 0.275 of
 * the rod going with the piston; that is 107 to 205 and 72 to 145 kg/m². The kinds themselves and
 * their likely values are common practice, no published source.
 */
const DENSITIES: Record<PartsKind, { reciprocating: Density; bigEnd: Density }> = {
  cast: {
    reciprocating: { low: 780, likely: 920, high: 1150 },
    bigEnd: { low: 530, likely: 640, high: 800 },
  },
  forged: {
    reciprocating: { low: 720, likely: 850, high: 1000 },
    bigEnd: { low: 480, likely: 590, high: 710 },
  },
  race: {
    reciprocating: { low: 520, likely: 640, high: 780 },
    bigEnd: { low: 380, likely: 470, high: 570 },
  },
}

/**
 * Masses to assume for a bore.
 *
 * @param bore - D, m; 0.05 to 0.15
 * @param kind - how the parts are made
 * @returns reciprocating and big-end mass for each cylinder, low, likely and high, kg
 * @throws {DomainError} if the bore is out of range or the kind is not known
 *
 * @example
 * defaultMasses(0.1016, 'cast').reciprocating.likely // 0.965 kg
 */
export function defaultMasses(bore: number, kind: PartsKind): CylinderMasses {
  requireWithin('bore', bore, 0.05, 0.15, 'm')
  const densities = DENSITIES[kind]
  if (!densities) throw new DomainError('kind', kind, Object.keys(DENSITIES).join(', '))
  const cube = bore ** 3
  const scaled = ({ low, likely, high }: Density): MassEstimate => ({
    low: low * cube,
    likely: likely * cube,
    high: high * cube,
  })
  return { reciprocating: scaled(densities.reciprocating), bigEnd: scaled(densities.bigEnd) }
}
