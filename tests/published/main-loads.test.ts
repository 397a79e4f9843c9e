import { describe, expect, it } from 'vitest'
import type { CrankLayout } from '../../src/mechanics/crank-layouts.ts'
import { CRANK_LAYOUTS } from '../../src/mechanics/crank-layouts.ts'
import { mainLoads } from '../../src/mechanics/main-loads.ts'

// Source: R. S. Khurmi & J. K. Gupta, A Textbook of Machine Design, ch. 32, read in a reprint:
// bearing loads act at the middles of the bearings; 400 mm piston, 2.5 MPa, bearing centres 800
// mm, load midway: 314.2 kN on the piston, 157.1 kN on each bearing. Tolerance 0.05 %: the print
// rounds to four digits.
const published = { force: 314_200, each: 157_100 }
const oneCylinder: CrankLayout = {
  ...CRANK_LAYOUTS['inline-3'],
  mains: 2,
  throws: [{ angle: 0 }],
  cylinders: [{ throw: 0, bankAngle: 0, firingAngle: 0, pinOffset: 0 }],
}
const centreCrank = {
  layout: oneCylinder,
  bore: 0.4,
  stroke: 0.6,
  rodLength: 1.5,
  reciprocatingMass: 0,
  bigEndMass: 0,
  speed: 0,
  pressure: new Float64Array(720).fill(2.5e6),
  crankcasePressure: 0,
}

describe('centre crank between two bearings', () => {
  it('hands half of its load to each', () => {
    const loads = mainLoads(centreCrank)
    for (const main of [0, 1]) {
      expect(Math.abs(-loads.gasY[main]![0]! / published.each - 1)).toBeLessThan(0.0005)
      expect(loads.gasX[main]![0]).toBeCloseTo(0, 9)
    }
  })

  it('hands over by the lever rule H₁ = F b₂/b, H₂ = F b₁/b where the load is not midway', () => {
    const [front, rear] = [(published.force * 0.5) / 0.8, (published.force * 0.3) / 0.8]
    const loads = mainLoads({ ...centreCrank, frontShare: front / published.force })
    expect(Math.abs(-loads.gasY[0]![0]! / front - 1)).toBeLessThan(0.0005)
    expect(Math.abs(-loads.gasY[1]![0]! / rear - 1)).toBeLessThan(0.0005)
  })
})

describe('load along a bore that leans by the bank angle', () => {
  it.each([30, 45, 90])('has parts F cos α down and F sin α across at %d°', (degrees) => {
    // Plain statics: at dead centre the rod lies along the bore, which leans to the right, so the
    // push on the crank is down and to the left.
    const bankAngle = (degrees * Math.PI) / 180
    const layout: CrankLayout = {
      ...oneCylinder,
      throws: [{ angle: bankAngle }],
      cylinders: [{ throw: 0, bankAngle, firingAngle: 0, pinOffset: 0 }],
    }
    const loads = mainLoads({ ...centreCrank, layout })
    const force = 2.5e6 * Math.PI * 0.04
    expect(loads.gasY[0]![0]).toBeCloseTo((-force * Math.cos(bankAngle)) / 2, 6)
    expect(loads.gasX[0]![0]).toBeCloseTo((-force * Math.sin(bankAngle)) / 2, 6)
  })
})
