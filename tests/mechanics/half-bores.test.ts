import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Circle, halfStock } from '../../src/mechanics/half-bores.ts'

const small = fc.double({ min: -0.002, max: 0.002, noNaN: true })

/** The same by walking along the arc in small steps. */
function walked(half: Circle, side: 'block' | 'cap', face: number, bore: Circle) {
  const up = side === 'block' ? 1 : -1
  let [least, most, inside, all] = [Infinity, -Infinity, 0, 0]
  for (let place = 0; place < 20_000; place++) {
    const angle = (2 * Math.PI * place) / 20_000
    const [x, y] = [half.x + half.radius * Math.sin(angle), half.y + half.radius * Math.cos(angle)]
    if (up * (y - face) < 0) continue
    const stock = bore.radius - Math.hypot(x - bore.x, y - bore.y)
    least = Math.min(least, stock)
    most = Math.max(most, stock)
    all++
    if (stock >= 0) inside++
  }
  return { least, most, reached: inside / all }
}

describe('halfStock', () => {
  it('agrees with a walk along the arc, for any two circles and either half', () => {
    fc.assert(
      fc.property(
        small,
        small,
        small,
        small,
        small,
        fc.constantFrom('block' as const, 'cap' as const),
        (x, y, face, rise, grow, side) => {
          // Circles that all but coincide touch everywhere or nowhere by a rounding error.
          fc.pre(Math.hypot(x, y - rise) > 2e-5)
          const half = { x, y, radius: 0.035 }
          const bore = { x: 0, y: rise, radius: 0.035 + grow / 4 }
          const exact = halfStock(half, side, face, bore)
          const other = walked(half, side, face, bore)
          // A step of the walk is 11 µm of arc; distances change by at most that times the offset
          // over the radius, and ends of the reached arc fall between steps.
          expect(Math.abs(exact.least - other.least)).toBeLessThan(2e-6)
          expect(Math.abs(exact.most - other.most)).toBeLessThan(2e-6)
          expect(Math.abs(exact.reached - other.reached)).toBeLessThan(3e-4)
        },
      ),
      { numRuns: 60 },
    )
  })

  it('does not depend on where the origin is, nor on which side is which', () => {
    fc.assert(
      fc.property(small, small, small, small, (x, y, overX, overY) => {
        fc.pre(Math.hypot(x, y) > 2e-5)
        const half = { x, y, radius: 0.035 }
        const bore = { x: 0, y: 0, radius: 0.0352 }
        const here = halfStock(half, 'block', 0.0005, bore)
        const there = halfStock(
          { x: x + overX, y: y + overY, radius: 0.035 },
          'block',
          0.0005 + overY,
          { x: overX, y: overY, radius: 0.0352 },
        )
        const mirrored = halfStock({ x: -x, y, radius: 0.035 }, 'block', 0.0005, bore)
        for (const key of ['crown', 'least', 'most', 'reached'] as const) {
          expect(there[key]).toBeCloseTo(here[key], 10)
          expect(mirrored[key]).toBeCloseTo(here[key], 10)
        }
        expect(there.edges[0]).toBeCloseTo(here.edges[0], 10)
        expect(mirrored.edges[0]).toBeCloseTo(here.edges[1], 10)
      }),
    )
  })

  it('reaches all of a bore inside the new one, and nothing of one that holds it', () => {
    const about = (radius: number) => ({ x: 0, y: 0, radius })
    expect(halfStock(about(0.03), 'block', 0, about(0.0299)).reached).toBe(0)
    expect(halfStock(about(0.03), 'block', 0, about(0.03)).reached).toBe(1)
    const aside = { x: 0.00002, y: 0, radius: 0.03 }
    expect(halfStock(aside, 'cap', 0, about(0.031)).reached).toBe(1)
    expect(halfStock(aside, 'cap', 0, about(0.029)).reached).toBe(0)
  })

  it('has the same stock all round for circles that share a centre', () => {
    const stock = halfStock({ x: 0, y: 0, radius: 0.03 }, 'cap', 0, { x: 0, y: 0, radius: 0.031 })
    for (const value of [stock.crown, ...stock.edges, stock.least, stock.most]) {
      expect(value).toBeCloseTo(0.001, 12)
    }
    expect(stock.reached).toBe(1)
  })

  it('cuts the crown alone when the bore rises without growing', () => {
    // Stock s cos φ − s²/2R: nothing is left to cut near the parting face.
    const stock = halfStock({ x: 0, y: 0, radius: 0.03 }, 'block', 0, {
      x: 0,
      y: 0.0001,
      radius: 0.03,
    })
    expect(stock.crown).toBeCloseTo(0.0001, 12)
    expect(stock.edges[0]).toBeCloseTo(-(0.0001 ** 2) / 0.06, 12)
    expect(stock.reached).toBeGreaterThan(0.998)
    expect(stock.reached).toBeLessThan(1)
  })
})
