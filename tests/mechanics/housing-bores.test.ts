import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { DomainError } from '../../src/mechanics/domain-error.ts'
import { housingBore, THREE_DIRECTIONS } from '../../src/mechanics/housing-bores.ts'

const micro = fc.double({ min: -0.00005, max: 0.00005, noNaN: true })
const angle = fc.double({ min: -Math.PI / 2 + 0.01, max: Math.PI / 2 - 0.01, noNaN: true })

/** Readings of an oval of mean size `mean`, `ovality` between its axes, long axis at `axis`. */
function oval(mean: number, ovality: number, axis: number, directions = THREE_DIRECTIONS) {
  return directions.map((phi) => mean + (ovality / 2) * Math.cos(2 * (phi - axis)))
}

describe('housingBore', () => {
  it('reads sizes, out of round and taper plainly', () => {
    const bore = housingBore({
      front: [0.06835, 0.06838, 0.06837],
      rear: [0.06834, 0.06836, 0.06835],
    })
    expect(bore.front.outOfRound).toBeCloseTo(0.00003, 12)
    expect(bore.rear.outOfRound).toBeCloseTo(0.00002, 12)
    expect(bore.outOfRound).toBeCloseTo(0.00003, 12)
    expect(bore.taper).toBeCloseTo(0.00005 / 3, 12)
    expect(bore.directionalTaper).toBeCloseTo(0.00002, 12)
    expect([bore.least, bore.greatest]).toEqual([0.06834, 0.06838])
    expect(bore.mean).toBeCloseTo((0.06835 + 0.06838 + 0.06837 + 0.06834 + 0.06836 + 0.06835) / 6)
  })

  it('takes up and down and across as the mean of both ends', () => {
    // Ovals upright in front (70.02 by 70.00 mm) and lying behind (70.01 by 70.05).
    const front = oval(0.07001, 0.00002, 0)
    const rear = oval(0.07003, 0.00004, Math.PI / 2)
    const { vertical, horizontal } = housingBore({ front, rear })
    expect(vertical).toBeCloseTo((0.07002 + 0.07001) / 2, 12)
    expect(horizontal).toBeCloseTo((0.07 + 0.07005) / 2, 12)
  })

  it('finds an oval exactly from three readings, which may miss its axes', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 1e-4, noNaN: true }), angle, (ovality, axis) => {
        const ends = oval(0.07, ovality, axis)
        const { front } = housingBore({ front: ends, rear: ends })
        expect(front.ovality).toBeCloseTo(ovality, 12)
        expect(Math.cos(2 * (front.longAxis - axis))).toBeCloseTo(1, 6)
        expect(front.vertical).toBeCloseTo(0.07 + (ovality / 2) * Math.cos(2 * axis), 12)
        expect(front.horizontal).toBeCloseTo(0.07 - (ovality / 2) * Math.cos(2 * axis), 12)
        expect(front.residual).toBeLessThan(1e-12)
        // Cosines of three angles 120° apart range over 1.5 to √3, of 2 for the whole oval.
        expect(front.outOfRound).toBeLessThanOrEqual((ovality * Math.sqrt(3)) / 2 + 1e-12)
        expect(front.outOfRound).toBeGreaterThanOrEqual(0.75 * ovality - 1e-12)
      }),
    )
  })

  it('fits more readings by least squares and says what is left', () => {
    const directions = [0, 30, 60, 90, 120, 150].map((degrees) => (degrees * Math.PI) / 180)
    const clean = oval(0.07, 0.00002, 0.3, directions)
    // A fourth-order wave of 1 µm is none of an oval's business over six even directions.
    const wavy = clean.map((d, place) => d + 1e-6 * Math.cos(4 * directions[place]!))
    const { front, rear } = housingBore({ front: wavy, rear: clean }, directions)
    expect(front.ovality).toBeCloseTo(rear.ovality, 12)
    expect(front.residual).toBeCloseTo(1e-6 * Math.SQRT1_2, 12)
    expect(rear.residual).toBeLessThan(1e-12)
  })

  it('does not change out of round or taper when every reading is off by the same', () => {
    fc.assert(
      fc.property(fc.array(micro, { minLength: 6, maxLength: 6 }), micro, (errors, off) => {
        const read = (shift: number) => ({
          front: errors.slice(0, 3).map((e) => 0.07 + e + shift),
          rear: errors.slice(3).map((e) => 0.07 + e + shift),
        })
        const [one, other] = [housingBore(read(0)), housingBore(read(off))]
        expect(other.outOfRound).toBeCloseTo(one.outOfRound, 12)
        expect(other.taper).toBeCloseTo(one.taper, 12)
        expect(other.front.ovality).toBeCloseTo(one.front.ovality, 12)
        expect(other.mean - one.mean).toBeCloseTo(off, 12)
      }),
    )
  })

  it('refuses readings that do not match the directions, or see too few diameters', () => {
    const three = [0.07, 0.07, 0.07]
    expect(() => housingBore({ front: three, rear: [0.07, 0.07] })).toThrow(/rear/)
    expect(() => housingBore({ front: [0.07, 7, 0.07], rear: three })).toThrow(/front\[1\]/)
    // Straight up and straight down are one diameter.
    expect(() => housingBore({ front: three, rear: three }, [0, Math.PI, 1])).toThrow(DomainError)
  })
})
