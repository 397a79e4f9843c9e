import { describe, expect, it } from 'vitest'
import { tensileStressArea } from '../../src/mechanics/threads.ts'
import { assemblyPreload, assemblyTorque } from '../../src/mechanics/vdi-preload.ts'

// Source: VDI 2230 (2001), table of assembly preloads and tightening torques at 90 % of yield,
// read in a catalogue's reprint: kN and N m for classes 8.8, 10.9, 12.9. The 8.8 column of
// sizes up to M16 answers to a yield strength of 640 MPa.
// Tolerance: preload 0.4 % (three digits and the 1.155 rounded); torque 1.2 % (M10 is printed
// in whole N m).
const M8 = { d: 8, pitch: 1, face: 11.63, hole: 9 }
const M10 = { d: 10, pitch: 1.25, face: 14.63, hole: 11 }
const YIELD = [640e6, 940e6, 1100e6]

const ROWS = [
  { thread: 'M8 × 1', size: M8, mu: 0.1, kN: [20.7, 30.4, 35.6], Nm: [22.8, 33.5, 39.2] },
  { thread: 'M8 × 1', size: M8, mu: 0.12, kN: [20.2, 29.7, 34.7], Nm: [26.1, 38.3, 44.9] },
  { thread: 'M8 × 1', size: M8, mu: 0.14, kN: [19.7, 28.9, 33.9], Nm: [29.2, 42.8, 50.1] },
  { thread: 'M10 × 1.25', size: M10, mu: 0.1, kN: [32.4, 47.5, 55.6], Nm: [44, 65, 76] },
  { thread: 'M10 × 1.25', size: M10, mu: 0.12, kN: [31.6, 46.4, 54.3], Nm: [51, 75, 87] },
  { thread: 'M10 × 1.25', size: M10, mu: 0.14, kN: [30.8, 45.2, 52.9], Nm: [57, 83, 98] },
]

describe.each(ROWS)('$thread at friction $mu', ({ size, mu, kN, Nm }) => {
  const thread = { nominalDiameter: size.d / 1000, pitch: size.pitch / 1000 }
  const head = { faceDiameter: size.face / 1000, holeDiameter: size.hole / 1000 }

  it.each([0, 1, 2])('class %i', (column) => {
    const strength = YIELD[column] as number
    const preload = assemblyPreload(thread.nominalDiameter, thread.pitch, strength, mu)
    expect(Math.abs(preload / 1000 / (kN[column] as number) - 1)).toBeLessThan(0.004)
    const torque = assemblyTorque(preload, thread, { thread: mu, head: mu }, head)
    expect(Math.abs(torque / (Nm[column] as number) - 1)).toBeLessThan(0.012)
  })
})

describe('limits', () => {
  // Source: worked example in a guide, M12 class 8.8: 41.9 kN at friction 0.14.
  it('M12 class 8.8 at friction 0.14', () => {
    const preload = assemblyPreload(0.012, 0.00175, 640e6, 0.14)
    expect(Math.abs(preload / 41.9e3 - 1)).toBeLessThan(0.004)
  })

  // Without twist the preload is plain tension: no more than area × yield.
  it('stays below yield of the stress area', () => {
    const area = tensileStressArea(0.01, 0.0015)
    expect(assemblyPreload(0.01, 0.0015, 940e6, 0, 1)).toBeLessThan(area * 940e6)
  })

  it('is refused outside its range', () => {
    expect(() => assemblyPreload(0.01, 0.0015, 940e6, 0.1, 1.1)).toThrow(/utilisation/)
    const friction = { thread: 0.1, head: 0.1 }
    const flat = { faceDiameter: 0.01, holeDiameter: 0.011 }
    const thread = { nominalDiameter: 0.01, pitch: 0.0015 }
    expect(() => assemblyTorque(1e4, thread, friction, flat)).toThrow(/faceDiameter/)
  })
})
