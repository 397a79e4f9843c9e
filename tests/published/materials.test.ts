import { describe, expect, it } from 'vitest'
import {
  indentationPressure,
  MATERIAL_IDS,
  type MaterialId,
  materialOf,
} from '../../src/mechanics/materials.ts'

const KSI = 6.894757293168361e6

describe('gray iron', () => {
  // Source: Shigley, 9th ed., Table A–24, read in a reprint, ksi: tensile, compressive, shear,
  // endurance; E in Mpsi between the two printed values.
  it.each<[MaterialId, number, number, number, number, number, number]>([
    ['gray-iron-20', 22, 83, 26, 10, 9.6, 14],
    ['gray-iron-25', 26, 97, 32, 11.5, 11.5, 14.8],
    ['gray-iron-30', 31, 109, 40, 14, 13, 16.4],
    ['gray-iron-35', 36.5, 124, 48.5, 16, 14.5, 17.2],
    ['gray-iron-40', 42.5, 140, 57, 18.5, 16, 20],
  ])('%s', (id, tensile, compressive, shear, endurance, least, most) => {
    const iron = materialOf(id)
    expect(iron.ultimate / KSI).toBeCloseTo(tensile, 9)
    expect(iron.compressive / KSI).toBeCloseTo(compressive, 9)
    expect(iron.shear / KSI).toBeCloseTo(shear, 9)
    expect(iron.endurance / KSI).toBeCloseTo(endurance, 9)
    expect(iron.modulus / KSI / 1000).toBeGreaterThanOrEqual(least)
    expect(iron.modulus / KSI / 1000).toBeLessThanOrEqual(most)
    expect(iron.yield).toBeUndefined()
  })

  // The class is the least tensile strength in ksi (ASTM A48); typical values lie above it.
  it.each([20, 25, 30, 35, 40])('class %i is at least as strong as its name', (grade) => {
    expect(materialOf(`gray-iron-${grade}` as MaterialId).ultimate / KSI).toBeGreaterThanOrEqual(
      grade,
    )
  })
})

describe('specified minima', () => {
  // Source: ASTM A536, tensile and yield, ksi, which are the name of the grade.
  it.each(['60-40-18', '65-45-12', '80-55-06', '100-70-03'])('ductile %s', (grade) => {
    const [tensile, yielding] = grade.split('-').map(Number)
    const iron = materialOf(`ductile-${grade}` as MaterialId)
    expect(iron.ultimate / KSI).toBeCloseTo(tensile as number, 9)
    expect((iron.yield ?? 0) / KSI).toBeCloseTo(yielding as number, 9)
  })

  // Source: ASTM A842, Table 1, MPa, read.
  it.each<[MaterialId, number, number]>([
    ['compacted-iron-350', 350, 245],
    ['compacted-iron-400', 400, 280],
    ['compacted-iron-450', 450, 315],
  ])('%s', (id, tensile, yielding) => {
    expect(materialOf(id).ultimate).toBe(tensile * 1e6)
    expect(materialOf(id).yield).toBe(yielding * 1e6)
  })
})

describe('steel, sintered steel and aluminium', () => {
  // Sources: Shigley Tables A–20 and A–21; ASM Handbook vol. 7; tables of typical cast and wrought
  // aluminium; all read except 4340. Tensile and yield, MPa. Tolerance 1 MPa: ksi rounded.
  it.each<[MaterialId, number, number]>([
    ['steel-1045-hot-rolled', 570, 310],
    ['steel-1045-cold-drawn', 630, 530],
    ['steel-4140-annealed', 655, 417],
    ['steel-4140-tempered-1000f', 951, 834],
    ['steel-4140-tempered-1200f', 758, 655],
    ['sintered-diffusion-steel', 540, 430],
    ['sintered-infiltrated-steel', 530, 340],
    ['aluminium-319-t6', 248.2, 165.5],
    ['aluminium-356-t6', 227.5, 165.5],
    ['aluminium-6061-t6', 310.3, 275.8],
    ['aluminium-7075-t6', 572.3, 503.3],
  ])('%s', (id, tensile, yielding) => {
    expect(Math.abs(materialOf(id).ultimate / 1e6 - tensile)).toBeLessThan(1)
    expect(Math.abs((materialOf(id).yield ?? 0) / 1e6 - yielding)).toBeLessThan(1)
  })

  // Source: Shigley, 9th ed., Table A–5: 30.0 and 10.4 Mpsi.
  it('moduli', () => {
    expect(Math.abs(materialOf('steel-4140-annealed').modulus / KSI / 1000 / 30 - 1)).toBeLessThan(
      0.005,
    )
    expect(Math.abs(materialOf('aluminium-7075-t6').modulus / KSI / 1000 / 10.4 - 1)).toBeLessThan(
      0.01,
    )
  })

  // Source: table of thermal expansion, 1e-6/K, read.
  it.each<[MaterialId, number]>([
    ['steel-4140-annealed', 12.3],
    ['gray-iron-30', 11.4],
    ['ductile-60-40-18', 11.2],
    ['ductile-80-55-06', 10.6],
    ['aluminium-356-t6', 21.5],
    ['aluminium-7075-t6', 23.4],
  ])('%s expands by %f', (id, expansion) => {
    expect(materialOf(id).expansion * 1e6).toBeCloseTo(expansion, 9)
  })
})

describe('indentation', () => {
  it('lies between tensile and crushing strength of gray iron, at yield of the others', () => {
    for (const id of MATERIAL_IDS) {
      const row = materialOf(id)
      const pressure = indentationPressure(row)
      expect(pressure).toBeLessThanOrEqual(row.compressive)
      expect(pressure).toBeGreaterThan(row.yield === undefined ? row.ultimate : 0.99 * row.yield)
    }
  })
})

describe('every material', () => {
  it.each(MATERIAL_IDS)('%s hangs together', (id) => {
    const row = materialOf(id)
    expect(row.endurance).toBeLessThan(row.ultimate)
    if (row.yield !== undefined) expect(row.yield).toBeLessThan(row.ultimate)
    expect(row.modulus).toBeGreaterThan(60e9)
    expect(row.modulus).toBeLessThan(215e9)
    expect(row.source.length).toBeGreaterThan(10)
    expect(row.fromMemory && !row.source.includes('memory')).toBe(false)
  })
})

describe('strengths that follow from tension', () => {
  // Distortion energy (Shigley, 9th ed., eq. 5–21): shear is 0.577 of tension in ductile steel.
  it.each([
    'steel-4140-tempered-1200f',
    'steel-1045-hot-rolled',
    'sintered-diffusion-steel',
  ] as const)('%s shears at 0.577 of its tensile strength', (id) => {
    const { shear, ultimate } = materialOf(id)
    expect(Math.abs(shear / ultimate / Math.sqrt(1 / 3) - 1)).toBeLessThan(0.01)
  })

  // Ratio 0.9 for ductile iron: from memory; Shigley's gray irons print 1.2 to 1.3.
  it('iron shears nearer to its tensile strength than steel does', () => {
    const share = (id: MaterialId) => materialOf(id).shear / materialOf(id).ultimate
    expect(share('ductile-65-45-12')).toBeCloseTo(0.9, 12)
    expect(share('ductile-65-45-12')).toBeGreaterThan(share('steel-4140-annealed'))
    expect(share('gray-iron-30')).toBeGreaterThan(1.1)
  })

  // Handbook ranges: irons and steels 10 to 13, aluminium alloys 21 to 24, in 1e-6/K.
  it.each(MATERIAL_IDS)('%s grows with heat as its kind does', (id) => {
    const [low, high] = id.startsWith('aluminium') ? [21e-6, 24e-6] : [10e-6, 13e-6]
    expect(materialOf(id).expansion).toBeGreaterThan(low)
    expect(materialOf(id).expansion).toBeLessThan(high)
  })

  it('a wall gives way at compressive yield, or at twice the tensile strength of gray iron', () => {
    const iron = materialOf('gray-iron-30')
    expect(indentationPressure(iron)).toBe(2 * iron.ultimate)
    const steel = materialOf('steel-1045-hot-rolled')
    expect(indentationPressure(steel)).toBe(steel.yield)
  })
})
