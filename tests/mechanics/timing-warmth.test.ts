import { describe, expect, it } from 'vitest'
import { gearDrive } from '../../src/mechanics/gear-backlash.ts'
import { chainDrive } from '../../src/mechanics/timing-drive.ts'
import { warmBacklash, warmChainSlack } from '../../src/mechanics/timing-warmth.ts'

const chain = {
  centreDistance: 0.127,
  pitch: 0.009525,
  crankTeeth: 30,
  camTeeth: 30,
  axisShift: 0.0002,
  slackBefore: 0.001,
}
const gears = {
  centreDistance: 0.12,
  pressureAngle: (20 * Math.PI) / 180,
  axisShift: 0.00002,
  backlashBefore: 0.0001,
}
const warm = (perKelvin: number) => ({
  block: { perKelvin, rise: 80 },
  drive: { perKelvin: 12e-6, rise: 80 },
})
const cold = { block: { perKelvin: 2e-5, rise: 0 }, drive: { perKelvin: 12e-6, rise: 0 } }

describe('warmChainSlack', () => {
  it('is the cold slack when nothing warms', () => {
    expect(warmChainSlack(chain, cold)).toBeCloseTo(chainDrive(chain).slack, 15)
  })

  it('grows with everything else when all is one metal', () => {
    const { slack } = chainDrive(chain)
    expect(warmChainSlack(chain, warm(12e-6))).toBeCloseTo(slack * (1 + 12e-6 * 80), 12)
  })

  it('tightens in aluminium by twice the difference of growths, over even sprockets', () => {
    const { centreDistance } = chainDrive(chain)
    const lost = warmChainSlack(chain, warm(12e-6)) - warmChainSlack(chain, warm(21.5e-6))
    expect(lost).toBeCloseTo(2 * 9.5e-6 * 80 * centreDistance, 12)
  })
})

describe('warmBacklash', () => {
  it('is the cold backlash when nothing warms, or all grows alike', () => {
    expect(warmBacklash(gears, cold)).toBeCloseTo(gearDrive(gears).backlash, 15)
    // The standard centres grow from 120 mm, the true ones from 119.98: 20 nm of difference.
    expect(Math.abs(warmBacklash(gears, warm(12e-6)) - gearDrive(gears).backlash)).toBeLessThan(
      2e-8,
    )
  })

  it('opens in aluminium by about 2 ΔC tan φ', () => {
    const opened = warmBacklash(gears, warm(21.5e-6)) - warmBacklash(gears, warm(12e-6))
    const closed = 2 * 9.5e-6 * 80 * 0.12 * Math.tan(gears.pressureAngle)
    expect(Math.abs(opened / closed - 1)).toBeLessThan(0.02)
  })

  it('refuses a temperature out of range', () => {
    const hot = { ...cold, block: { perKelvin: 2e-5, rise: 5000 } }
    expect(() => warmBacklash(gears, hot)).toThrow(/rise/)
    expect(() => warmChainSlack(chain, hot)).toThrow(/rise/)
  })
})
