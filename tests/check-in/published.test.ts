import { linearRegression } from 'simple-statistics'
import { describe, expect, it } from 'vitest'
import { thermalGrowth } from '../../src/mechanics/thermal-growth.ts'
import { check, engineOf, goodBlock, measure } from './case.ts'

const INCH = 0.0254

/** Inches to the gauge's last digit: half of a hundredth of a thousandth. */
const HALF_DIGIT = 0.000005 * INCH

describe('roundness and taper, through the door of the check-in', () => {
  // Source: definition of local size differences, ISO 14405-1 (two-point size) and ISO 12181-1: out
  // of round is the greatest less the least diameter of a section, taper that of one direction
  // along the bore (from memory). Worked by hand from the readings typed here.
  const report = check(
    goodBlock({
      'housing.2.fv': '2.6414',
      'housing.2.fl': '2.6411',
      'housing.2.fr': '2.6412',
      'housing.2.rv': '2.6413',
      'housing.2.rl': '2.6412',
      'housing.2.rr': '2.6409',
    }),
  )

  it('takes the worse section', () => {
    const { value } = measure(report, 'housing-out-of-round', 2)
    expect(Math.abs(value - 0.0004 * INCH)).toBeLessThan(HALF_DIGIT)
  })

  it('takes the worst direction', () => {
    const { value } = measure(report, 'housing-taper', 2)
    expect(Math.abs(value - 0.0003 * INCH)).toBeLessThan(HALF_DIGIT)
  })
})

describe('straightness by least squares', () => {
  // Against a general library's regression line on the same heights, evenly spaced mains.
  it('agrees with a regression line about uneven heights', () => {
    const heights = [0.0001, -0.0003, 0.0005, 0.0002, -0.0004]
    const fields = Object.fromEntries(heights.map((y, place) => [`line.${place + 1}.y`, `${y}`]))
    const { m, b } = linearRegression(heights.map((y, place) => [place, y]))
    const residuals = heights.map((y, place) => y - (m * place + b))
    const expected = (Math.max(...residuals) - Math.min(...residuals)) * INCH
    const report = check(goodBlock(fields))
    expect(Math.abs(measure(report, 'bore-straightness').value - expected)).toBeLessThan(1e-12)
    residuals.forEach((off, place) => {
      expect(Math.abs((report.offAxis[place] ?? 0) - Math.abs(off) * INCH)).toBeLessThan(1e-12)
    })
  })

  // Source: Anscombe, American Statistician 27 (1973) 17–21, first set: y = 3.00 + 0.500 x. At
  // x = 4, 5, 6 … the set's points, scaled to thousandths; here five of them at their own places.
  it('uses the distances that were given, and a lean drops out', () => {
    const places = [4, 5, 7, 11, 13]
    const lean = Object.fromEntries(
      places.flatMap((z, at) => [
        [`line.${at + 1}.z`, `${z}`],
        [`line.${at + 1}.y`, `${(3 + 0.5 * z) / 1000}`],
      ]),
    )
    const straight = measure(check(goodBlock(lean)), 'bore-straightness')
    expect(straight.value).toBeLessThan(1e-12)
    const evenly = Object.fromEntries(Object.entries(lean).filter(([name]) => !name.endsWith('.z')))
    expect(measure(check(goodBlock(evenly)), 'bore-straightness').value).toBeGreaterThan(1e-5)
  })
})

describe('clearance cold and warm', () => {
  it('is housing less two walls less journal', () => {
    const { value } = measure(check(goodBlock()), 'clearance', 1)
    expect(Math.abs(value - (2.6412 - 2 * 0.0953 - 2.44845) * INCH)).toBeLessThan(HALF_DIGIT)
  })

  // Source: α L ΔT with Callister, Materials Science and Engineering, Table B.6 (1e-6 per °C):
  // gray iron G3000 11.4, steel 4140 12.3, aluminium 356.0 21.5. Rises as rules/limits.json has them.
  it.each([
    ['gray-iron', 11.4],
    ['aluminium', 21.5],
  ])('warms in a block of %s as the table says', (blockMaterial, perMillion) => {
    const engine = engineOf({
      layout: 'v8-cross-plane',
      mainJournalDiameter: '2.44845in',
      blockMaterial,
      use: 'street',
    })
    const report = check(goodBlock(), engine)
    const cold = measure(report, 'clearance', 1).value
    const warm = measure(report, 'clearance-warm', 1).value
    // Steel caps: the bore grows by the mean of block and cap.
    const bore = ((perMillion + 12.3) / 2) * 1e-6 * 2.6412 * 80
    const walls = 12.3e-6 * 2 * 0.0953 * 80
    const journal = 12.3e-6 * 2.44845 * 90
    const change = (bore - walls - journal) * INCH
    expect(Math.abs(warm - cold - change)).toBeLessThan(HALF_DIGIT)
    expect(thermalGrowth(INCH, 12.3e-6, 80)).toBeCloseTo(INCH * 12.3e-6 * 80, 12)
  })
})

describe('chain and gears after the axis moved', () => {
  const front = { 'axis.1.told': '.005', 'axis.2.told': '.005' }

  // Source: chain makers' length formula and slack 2 ΔC cos α, sin α = (R₂ − R₁)/C: 21 and 42 teeth,
  // 0.375 in pitch, 5.000 in centres, 0.005 in off them: 0.00968 in freed; strand 4.840 in; a
  // shallow parabola throws √(3 s e/8). 0.3 %: 0.2 % of the freed length, and the strand's digits.
  it('throws the chain as the parabola says', () => {
    const report = check(
      goodBlock({
        ...front,
        drive: 'chain',
        driveCentres: '5',
        chainPitch: '.375',
        crankTeeth: '21',
        camTeeth: '42',
      }),
    )
    const expected = Math.sqrt((3 * 4.84 * 0.00968) / 8) * INCH
    const { value } = measure(report, 'chain-throw')
    expect(Math.abs(value / expected - 1)).toBeLessThan(0.003)
  })

  // Source: 2 ΔC tan φ, as in open calculators; 20°, centres 75 mm: −0.0364 mm for −0.05 mm, exact by
  // involutes −0.03628. From 0.1 mm before. Half of the last digit.
  it('takes backlash from gears as involutes say', () => {
    const report = check(
      goodBlock({
        'axis.1.told': '.05 mm',
        drive: 'gears',
        driveCentres: '75 mm',
        pressureAngle: '20',
        gearBacklash: '.1 mm',
      }),
    )
    const { value } = measure(report, 'backlash')
    expect(Math.abs(value - (0.1 - 0.03628) / 1000)).toBeLessThanOrEqual(5e-9)
  })
})

describe('deck height, compression and gearbox', () => {
  // Source: definition of the ratio. Inline four, 4.000 × 3.500 in, 10:1: clearance height
  // 3.5/9 = 0.38889 in over the bore; 0.005 in of rise leaves 0.38389: 1 + 3.5/0.38389 = 10.117.
  it('raises the ratio by what the piston rises', () => {
    const engine = engineOf({
      layout: 'inline-4',
      bore: '4in',
      stroke: '3.5in',
      rodLength: '6in',
      compressionRatio: '10',
      mainJournalDiameter: '2.44845in',
      use: 'street',
    })
    const report = check(
      goodBlock({ 'axis.1.told': '.005', 'axis.2.told': '.005', deckBefore: '.020' }),
      engine,
    )
    const expected = 3.5 / (3.5 / 9 - 0.005) - 9
    expect(Math.abs(measure(report, 'compression-change').value - expected)).toBeLessThan(1e-9)
    const deck = measure(report, 'deck-clearance')
    expect(Math.abs(deck.value - 0.015 * INCH)).toBeLessThan(HALF_DIGIT)
  })

  // A turned indicator reads twice the offset: bore 0.002 in up before, axis 0.003 in up since.
  it('reads the gearbox bore as twice its offset, the shift taken off', () => {
    const sides = { boxTop: '.002', boxRight: '0', boxBottom: '-.002', boxLeft: '0' }
    const before = check(goodBlock({ ...sides, 'axis.2.told': '.003' }))
    expect(Math.abs(measure(before, 'gearbox').value - 0.002 * INCH)).toBeLessThan(HALF_DIGIT)
    const after = check(goodBlock({ ...sides, 'axis.2.told': '.003', boxTaken: 'after' }))
    expect(Math.abs(measure(after, 'gearbox').value - 0.004 * INCH)).toBeLessThan(HALF_DIGIT)
  })
})
