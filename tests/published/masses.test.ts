import { describe, expect, it } from 'vitest'
import { defaultMasses } from '../../src/mechanics/masses.ts'

describe('defaultMasses', () => {
  it('spans a published balance sheet of an iron V8 of 4.00 in bore', () => {
    // Read; name withheld: piston and pin 639.5 g, big end with bearing 666.5 g. Rings (70 g) and
    // small end (about 200 g) are not on that page and are added from like engines.
    const masses = defaultMasses(0.1016, 'cast')
    expect(masses.bigEnd.low).toBeLessThan(0.6665)
    expect(masses.bigEnd.high).toBeGreaterThan(0.6665)
    const reciprocating = 0.6395 + 0.07 + 0.2
    expect(masses.reciprocating.low).toBeLessThan(reciprocating)
    expect(masses.reciprocating.high).toBeGreaterThan(reciprocating)
  })

  it.each([0.06, 0.08, 0.1])('stays in the textbook ranges by piston area, bore %d m', (bore) => {
    // S. A. Kolchin & V. Demidov, Design of Automotive Engines (from memory): aluminium piston
    // group 80 to 150, rod 100 to 200 kg/m² for bores of 60 to 100 mm, low figures for small bores;
    // 0.275 of the rod goes with the piston. Today's parts are lighter than the book's: only the
    // likely value of production parts is held to it, and at small bores to within 0.5 of its
    // lower end, where the cube law falls faster than the book.
    const area = (Math.PI / 4) * bore * bore
    const masses = defaultMasses(bore, 'cast')
    const reciprocating = masses.reciprocating.likely / area
    const bigEnd = masses.bigEnd.likely / area
    expect(reciprocating).toBeGreaterThan(0.5 * (80 + 0.275 * 100))
    expect(reciprocating).toBeLessThan(150 + 0.275 * 200)
    expect(bigEnd).toBeGreaterThan(0.5 * 0.725 * 100)
    expect(bigEnd).toBeLessThan(0.725 * 200)
  })
})
