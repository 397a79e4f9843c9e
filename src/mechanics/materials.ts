/** Mechanical and thermal properties at room temperature; SI. */
export interface Material {
  /** E, Pa */
  readonly modulus: number
  readonly poisson: number
  /** Tensile strength, Pa */
  readonly ultimate: number
  /** 0.2 % proof stress, Pa; none for gray iron, which breaks first */
  readonly yield?: number
  /** Crushing strength of gray iron; compressive yield of the others, Pa */
  readonly compressive: number
  /** Shear strength, Pa, for stripped threads */
  readonly shear: number
  /** Reversed bending of a small specimen, Pa; aluminium at 5 × 10⁸ turns */
  readonly endurance: number
  /** What the endurance figure has in it already, so that it is not taken off again */
  readonly enduranceIncludes: 'nothing' | 'finish' | 'finish-and-size'
  /** Linear thermal expansion, 1/K */
  readonly expansion: number
  readonly density: number
  readonly source: string
  /** True when a strength in the row was not read in print */
  readonly fromMemory: boolean
}

const KSI = 6.894757293168361e6
const GPA = 1e9
const PPM = 1e-6

const A24 = 'Shigley Table A–24 (typical), read in a reprint; expansion: handbook table, G3000'

/** Gray iron from the figures of the table, ksi; E is the middle of its range. */
function grayIron(
  [ultimate, compressive, shear, endurance]: readonly [number, number, number, number],
  modulus: number,
): Material {
  return {
    modulus: modulus * GPA,
    poisson: 0.211,
    ultimate: ultimate * KSI,
    compressive: compressive * KSI,
    shear: shear * KSI,
    endurance: endurance * KSI,
    // Shigley, section 6–12: the table's endurance is ka kb Se′.
    enduranceIncludes: 'finish-and-size',
    expansion: 11.4 * PPM,
    density: 7200,
    source: A24,
    fromMemory: false,
  }
}

/**
 * Ductile and compacted iron by specified minimum strengths, Pa. Shear 0.9 and endurance
 * 0.40 of tensile strength, compressive yield as in tension: from memory.
 */
function nodular(
  ultimate: number,
  yielding: number,
  modulus: number,
  expansion: number,
  source: string,
): Material {
  return {
    modulus: modulus * GPA,
    poisson: 0.28,
    ultimate,
    yield: yielding,
    compressive: yielding,
    shear: 0.9 * ultimate,
    endurance: 0.4 * ultimate,
    enduranceIncludes: 'nothing',
    expansion: expansion * PPM,
    density: 7100,
    source: `${source}; ratios of shear and endurance from memory`,
    fromMemory: true,
  }
}

/**
 * Wrought steel, MPa. Shear 0.58 of tensile strength (distortion energy), endurance half of
 * tensile strength, polished (Shigley eq 6–8, from memory).
 */
function steel(
  ultimate: number,
  yielding: number,
  expansion: number,
  source: string,
  fromMemory = false,
): Material {
  return {
    modulus: 207 * GPA,
    poisson: 0.292,
    ultimate: ultimate * 1e6,
    yield: yielding * 1e6,
    compressive: yielding * 1e6,
    shear: 0.58 * ultimate * 1e6,
    endurance: Math.min(ultimate / 2, 700) * 1e6,
    enduranceIncludes: 'nothing',
    expansion: expansion * PPM,
    density: 7850,
    source: fromMemory ? `${source}, from memory` : source,
    fromMemory,
  }
}

/** Copper steel as pressed and sintered; figures of the table, MPa and GPa. */
function sintered(
  [ultimate, yielding, endurance]: readonly [number, number, number],
  modulus: number,
  density: number,
  source: string,
): Material {
  return {
    modulus: modulus * GPA,
    poisson: 0.27,
    ultimate: ultimate * 1e6,
    yield: yielding * 1e6,
    compressive: yielding * 1e6,
    shear: 0.58 * ultimate * 1e6,
    endurance: endurance * 1e6,
    enduranceIncludes: 'finish',
    expansion: 11.5 * PPM,
    density,
    source: `${source}; expansion, shear and Poisson's ratio from memory`,
    fromMemory: true,
  }
}

/** Aluminium; figures of the tables, ksi. */
function aluminium(
  [ultimate, yielding, shear, endurance]: readonly [number, number, number, number],
  modulus: number,
  expansion: number,
  source: string,
): Material {
  return {
    modulus: modulus * GPA,
    poisson: 0.333,
    ultimate: ultimate * KSI,
    yield: yielding * KSI,
    compressive: yielding * KSI,
    shear: shear * KSI,
    endurance: endurance * KSI,
    enduranceIncludes: 'finish',
    expansion: expansion * PPM,
    density: 2700,
    source,
    fromMemory: false,
  }
}

const A536 = 'ASTM A536, specified minima; E 169 GPa from memory'
const A842 = 'ASTM A842 Table 1, specified minima; E from memory'
const A20 = 'Shigley Table A–20, estimated minima; E: Table A–5'
const TEMPERED = 'Open table of alloy steels, agreeing with Shigley Table A–21; E: Table A–5'
const P_M = 'ASM Handbook vol. 7, table of MPIF Standard 35 (typical)'
const SAND = 'Table of typical sand castings; expansion: handbook table'
const WROUGHT = 'Table of typical wrought alloys; expansion: handbook table'

/**
 * Materials of caps and blocks. Strength follows the condition, so the condition is part of
 * the name. Iron classes count tensile strength in ksi; ductile grades tensile–yield–stretch.
 *
 * @see ASTM A48, A536, A842; Shigley's Mechanical Engineering Design, 9th ed., Tables A–5,
 *   A–20, A–24; ASM Handbook vol. 7; per row in `source`
 */
const MATERIALS = {
  'gray-iron-20': grayIron([22, 83, 26, 10], 81),
  'gray-iron-25': grayIron([26, 97, 32, 11.5], 91),
  'gray-iron-30': grayIron([31, 109, 40, 14], 101),
  'gray-iron-35': grayIron([36.5, 124, 48.5, 16], 109),
  'gray-iron-40': grayIron([42.5, 140, 57, 18.5], 124),
  'compacted-iron-350': nodular(350e6, 245e6, 140, 11, A842),
  'compacted-iron-400': nodular(400e6, 280e6, 145, 11, A842),
  'compacted-iron-450': nodular(450e6, 315e6, 150, 11, A842),
  'ductile-60-40-18': nodular(60 * KSI, 40 * KSI, 169, 11.2, A536),
  'ductile-65-45-12': nodular(65 * KSI, 45 * KSI, 169, 11.2, A536),
  'ductile-80-55-06': nodular(80 * KSI, 55 * KSI, 169, 10.6, A536),
  'ductile-100-70-03': nodular(100 * KSI, 70 * KSI, 169, 10.6, A536),
  'sintered-copper-steel': sintered([410, 380, 160], 120, 6700, `${P_M}, FC-0208-50, from memory`),
  'sintered-diffusion-steel': sintered([540, 430, 230], 135, 6900, `${P_M}, FD-0208-55`),
  'sintered-infiltrated-steel': sintered([530, 340, 200], 160, 7300, `${P_M}, FX-1005-40`),
  'steel-1045-hot-rolled': steel(570, 310, 11.3, `${A20}; expansion of 1040`),
  'steel-1045-cold-drawn': steel(630, 530, 11.3, `${A20}; expansion of 1040`),
  'steel-4140-annealed': steel(655, 417, 12.3, TEMPERED),
  'steel-4140-tempered-1200f': steel(758, 655, 12.3, TEMPERED),
  'steel-4140-tempered-1000f': steel(951, 834, 12.3, TEMPERED),
  'steel-4340-tempered-1000f': steel(1172, 1076, 12.3, 'Shigley Table A–21, 170/156 ksi', true),
  'aluminium-319-t5': {
    ...aluminium([30, 26, 24, 11], 74, 21.5, `${SAND}; shear, E and expansion from memory`),
    fromMemory: true,
  },
  'aluminium-319-t6': aluminium([36, 24, 29, 10], 74, 21.5, `${SAND}; E from memory`),
  'aluminium-356-t6': aluminium([33, 24, 26, 8.5], 72.4, 21.5, `${SAND}; E from memory`),
  'aluminium-6061-t6': aluminium([45, 40, 30, 14], 69, 23.6, WROUGHT),
  'aluminium-2024-t4': aluminium([68, 47, 41, 20], 73, 22.9, WROUGHT),
  'aluminium-7075-t6': aluminium([83, 73, 48, 23], 72, 23.4, WROUGHT),
} as const satisfies Readonly<Record<string, Material>>

export type MaterialId = keyof typeof MATERIALS

export const MATERIAL_IDS: readonly MaterialId[] = Object.keys(MATERIALS) as MaterialId[]

/**
 * A material by its id, with the optional fields in view.
 *
 * @param id - key of {@link MATERIALS}
 * @returns its row
 */
export function materialOf(id: MaterialId): Material {
  return MATERIALS[id]
}

/**
 * Pressure at which a wall of the material is indented for good: compressive yield, and for
 * gray iron, which has none, twice the tensile strength (its 0.1 % proof stress in
 * compression; from memory, common in iron data sheets).
 *
 * @param material - row of {@link MATERIALS}
 * @returns Pa
 */
export function indentationPressure(material: Material): number {
  return material.yield === undefined ? 2 * material.ultimate : material.compressive
}
