import { describe, expect, it } from 'vitest'
import { DomainError } from '../../src/mechanics/domain-error.ts'
import { defaultMasses, type PartsKind } from '../../src/mechanics/masses.ts'

const KINDS: PartsKind[] = ['cast', 'forged', 'race']

describe('defaultMasses', () => {
  it.each(KINDS)('%s: low, likely and high in order, all with the cube of the bore', (kind) => {
    const small = defaultMasses(0.08, kind)
    const large = defaultMasses(0.1, kind)
    for (const part of ['reciprocating', 'bigEnd'] as const) {
      expect(small[part].low).toBeLessThan(small[part].likely)
      expect(small[part].likely).toBeLessThan(small[part].high)
      expect(large[part].likely / small[part].likely).toBeCloseTo((0.1 / 0.08) ** 3, 12)
    }
  })

  it('has lighter parts for racing than for the street', () => {
    const [cast, forged, race] = KINDS.map((kind) => defaultMasses(0.1, kind))
    expect(cast!.reciprocating.likely).toBeGreaterThan(forged!.reciprocating.likely)
    expect(forged!.reciprocating.likely).toBeGreaterThan(race!.reciprocating.likely)
    expect(cast!.bigEnd.likely).toBeGreaterThan(race!.bigEnd.likely)
  })

  it('refuses bores outside its range', () => {
    expect(() => defaultMasses(0.04, 'cast')).toThrow(/bore is 0\.04/)
    expect(() => defaultMasses(0.1, 'wooden' as PartsKind)).toThrow(DomainError)
  })
})
