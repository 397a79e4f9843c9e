import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  type ClearanceInput,
  clearance,
  partsForClearance,
  targetClearance,
  warmClearance,
} from '../../src/mechanics/clearance.ts'
import { DomainError } from '../../src/mechanics/domain-error.ts'
import { expansionOf } from '../../src/mechanics/thermal-growth.ts'

const bearing: ClearanceInput = {
  housing: { vertical: 0.06836, horizontal: 0.06837 },
  shell: { crown: 0.00237, parting: 0.002355 },
  journal: 0.06355,
}
const micro = fc.double({ min: -0.0001, max: 0.0001, noNaN: true })

describe('clearance', () => {
  it('is housing less two walls less journal, up and down and across', () => {
    const { vertical, horizontal, eccentricity, perDiameter } = clearance(bearing)
    expect(vertical).toBeCloseTo(0.00007, 12)
    expect(horizontal).toBeCloseTo(0.00011, 12)
    expect(eccentricity).toBeCloseTo(0.00004, 12)
    expect(perDiameter).toBeCloseTo(0.00007 / 0.06355, 12)
  })

  it('moves with the housing, twice the wall, and against the journal', () => {
    fc.assert(
      fc.property(micro, micro, micro, (bore, wall, shaft) => {
        const moved = clearance({
          housing: { ...bearing.housing, vertical: bearing.housing.vertical + bore },
          shell: { ...bearing.shell, crown: bearing.shell.crown + wall },
          journal: bearing.journal + shaft,
        })
        const change = moved.vertical - clearance(bearing).vertical
        expect(change).toBeCloseTo(bore - 2 * wall - shaft, 12)
      }),
    )
  })

  it('counts the widening of the housing by crush', () => {
    const wider = clearance({ ...bearing, crushGrowth: 0.00001 })
    expect(wider.vertical - clearance(bearing).vertical).toBeCloseTo(0.00001, 12)
    expect(wider.horizontal - clearance(bearing).horizontal).toBeCloseTo(0.00001, 12)
  })

  it('names what does not fit', () => {
    expect(() => clearance({ ...bearing, journal: 2.5 })).toThrow(/journal/)
    expect(() => clearance({ ...bearing, shell: { crown: 0.05, parting: 0.002 } })).toThrow(
      DomainError,
    )
  })
})

describe('a shell as thick as half the bore', () => {
  it.each([0.01, 0.012])('leaves no room for a journal: wall %d m in 20 mm', (crown) => {
    const housing = { vertical: 0.02, horizontal: 0.02 }
    const shell = { crown, parting: 0.001 }
    expect(() => clearance({ housing, shell, journal: 0.02 })).toThrow(/shell.crown/)
  })
})

describe('warmClearance', () => {
  // Source: definition of linear expansion; the coefficients are checked where they are kept.
  it('grows every part by α L ΔT, up and down and across', () => {
    const run = { block: 'gray-iron', cap: 'gray-iron', blockRise: 80, journalRise: 60 } as const
    const [warm, cold] = [warmClearance(bearing, run), clearance(bearing)]
    const alpha = { iron: expansionOf('gray-iron'), steel: expansionOf('steel') }
    const grown = (bore: number, wall: number) =>
      alpha.iron * bore * 80 - 2 * alpha.steel * wall * 80 - alpha.steel * 0.06355 * 60
    expect(warm.vertical - cold.vertical).toBeCloseTo(grown(0.06836, 0.00237), 12)
    expect(warm.horizontal - cold.horizontal).toBeCloseTo(grown(0.06837, 0.002355), 12)
    const journal = 0.06355 * (1 + alpha.steel * 60)
    expect(warm.perDiameter / (warm.vertical / journal)).toBeCloseTo(1, 9)
  })

  const still = { block: 'gray-iron', cap: 'gray-iron', blockRise: 0, journalRise: 0 } as const

  it('is the cold clearance when nothing warms', () => {
    const warm = warmClearance(bearing, still)
    expect(warm.vertical).toBeCloseTo(clearance(bearing).vertical, 15)
    expect(warm.horizontal).toBeCloseTo(clearance(bearing).horizontal, 15)
  })

  it('opens up more in aluminium than in iron, and lies between with iron caps', () => {
    const run = { ...still, blockRise: 80, journalRise: 80 }
    const iron = warmClearance(bearing, run).vertical
    const mixed = warmClearance(bearing, { ...run, block: 'aluminium' }).vertical
    const light = warmClearance(bearing, { ...run, block: 'aluminium', cap: 'aluminium' }).vertical
    expect(mixed).toBeGreaterThan(iron)
    expect(light).toBeGreaterThan(mixed)
    expect(mixed).toBeCloseTo((iron + light) / 2, 12)
  })

  it('closes when the crank is the warmer', () => {
    const warm = warmClearance(bearing, { ...still, journalRise: 20 })
    expect(warm.vertical).toBeLessThan(clearance(bearing).vertical)
  })
})

describe('partsForClearance', () => {
  it('names parts that give the wanted clearance', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 0.0002, noNaN: true }), (wanted) => {
        const parts = partsForClearance(bearing, wanted)
        for (const changed of [
          { ...bearing, shell: { ...bearing.shell, crown: parts.shellCrown } },
          { ...bearing, journal: parts.journal },
          { ...bearing, housing: { ...bearing.housing, vertical: parts.housing } },
        ]) {
          expect(clearance(changed).vertical).toBeCloseTo(wanted, 12)
        }
      }),
    )
  })
})

describe('targetClearance', () => {
  it('refuses a rule out of order or beyond reason', () => {
    expect(() => targetClearance(0.06, { low: 0.001, high: 0.0005 })).toThrow(DomainError)
    expect(() => targetClearance(0.06, { low: 0.001, high: 0.1 })).toThrow(/high/)
  })
})
