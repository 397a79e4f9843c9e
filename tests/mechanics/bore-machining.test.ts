import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  type BoreMachiningInput,
  boreMachining,
  finishedLimits,
  leastCapFaceCut,
} from '../../src/mechanics/bore-machining.ts'
import { DomainError } from '../../src/mechanics/domain-error.ts'

const INCH = 0.0254
const standard = { low: 2.6906 * INCH, high: 2.6916 * INCH }

/** A block with new caps whose bore is 0.100 in under size. */
const newCaps: BoreMachiningInput = {
  blockBore: 2.691 * INCH,
  capBore: 2.591 * INCH,
  finished: standard,
  aim: 2.6913 * INCH,
  honingStock: 0.002 * INCH,
  honeLimit: 0.003 * INCH,
}

/** The same block with its own caps, cut at the parting faces. */
const oldCaps: BoreMachiningInput = {
  blockBore: 2.691 * INCH,
  capBore: 2.691 * INCH,
  capFaceCut: 0.003 * INCH,
  finished: standard,
  aim: 2.691 * INCH,
  honeLimit: 0.004 * INCH,
}

describe('boreMachining with undersized new caps', () => {
  const work = boreMachining(newCaps)

  it('takes half of the undersize and the growth off the cap, next to nothing off the block', () => {
    // Common practice: about 0.100 in on the diameter of the cap, 0.050 in radially.
    expect(work.finished.cap.crown / INCH).toBeCloseTo(0.05 + 0.00015, 8)
    expect(work.finished.block.crown / INCH).toBeCloseTo(0.00015, 8)
    expect(work.axisShift).toBe(0)
    expect(work.boring.diameter / INCH).toBeCloseTo(2.6893, 8)
  })

  it('is far beyond a hone alone', () => {
    expect(work.honeAlone.stock / INCH).toBeCloseTo(0.0503, 8)
    expect(work.honeAlone.removable / INCH).toBeCloseTo(0.003, 8)
    expect(work.honeAlone.beyond / INCH).toBeCloseTo(0.0473, 8)
  })

  it('leaves the honing stock on the diameter, half of it on the radius', () => {
    const left = work.finished.cap.crown - work.boring.cap.crown
    expect(left).toBeCloseTo(newCaps.honingStock! / 2, 12)
  })

  it('steps at the parting face by half of the undersize', () => {
    expect((work.rough.blockWidth - work.rough.capWidth) / INCH).toBeCloseTo(0.1, 8)
    expect(work.rough.outOfRound / INCH).toBeCloseTo(0.1, 8)
  })
})

describe('boreMachining with caps cut at the parting faces', () => {
  it('closes the bore up and down by the cut', () => {
    const { rough } = boreMachining(oldCaps)
    expect(rough.vertical / INCH).toBeCloseTo(2.688, 9)
    // At the faces the cut narrows the cap by c²/R only.
    expect((rough.blockWidth - rough.capWidth) / INCH).toBeCloseTo(0.003 ** 2 / 1.3455, 8)
  })

  it('moves the axis up by half of the cut when honed, and by what is chosen when bored', () => {
    const { honeAlone, axisShift, gripChange } = boreMachining({
      ...oldCaps,
      axisShift: 0.001 * INCH,
    })
    expect(honeAlone.axis / INCH).toBeCloseTo(0.0015, 9)
    expect(honeAlone.beyond).toBe(0)
    expect(axisShift / INCH).toBeCloseTo(0.001, 12)
    expect(gripChange / INCH).toBeCloseTo(-0.003, 12)
  })

  it('moves it by the share that the hone cuts from the block', () => {
    for (const share of [0, 0.25, 1]) {
      const { honeAlone } = boreMachining({ ...oldCaps, honeBlockShare: share })
      expect(honeAlone.axis / INCH).toBeCloseTo(0.003 * share, 9)
    }
  })

  it('gives a range of axis heights as wide as the metal there is', () => {
    const { axisRange } = boreMachining(oldCaps)
    expect(axisRange.low).toBeCloseTo(0, 12)
    expect(axisRange.high / INCH).toBeCloseTo(0.003, 9)
    const wanting = boreMachining({ ...oldCaps, cleanUp: 0.002 * INCH }).axisRange
    expect(wanting.low).toBeGreaterThan(wanting.high)
  })

  it('lets the block rise too when its faces are cut', () => {
    const work = boreMachining({ ...oldCaps, capFaceCut: 0, blockFaceCut: 0.003 * INCH })
    expect(work.rough.partingFace / INCH).toBeCloseTo(0.003, 12)
    expect(work.rough.vertical / INCH).toBeCloseTo(2.688, 9)
    expect(work.gripChange).toBeCloseTo(0, 15)
  })
})

describe('boreMachining in general', () => {
  const cut = fc.double({ min: 0, max: 0.0005, noNaN: true })

  it('takes from top and bottom together what the vertical bore lacks', () => {
    fc.assert(
      fc.property(cut, cut, cut, (capFaceCut, blockFaceCut, shift) => {
        const work = boreMachining({ ...oldCaps, capFaceCut, blockFaceCut, axisShift: shift })
        const { block, cap, diameter } = work.finished
        expect(block.crown + cap.crown).toBeCloseTo(diameter - work.rough.vertical, 12)
      }),
    )
  })

  it('moves metal from cap to block one for one as the axis rises', () => {
    fc.assert(
      fc.property(cut, (shift) => {
        const [low, high] = [0, shift].map((axisShift) =>
          boreMachining({ ...oldCaps, axisShift }),
        ) as [ReturnType<typeof boreMachining>, ReturnType<typeof boreMachining>]
        expect(high.finished.block.crown - low.finished.block.crown).toBeCloseTo(shift, 12)
        expect(low.finished.cap.crown - high.finished.cap.crown).toBeCloseTo(shift, 12)
      }),
    )
  })

  it('needs no shift at the next oversize', () => {
    const oversize = finishedLimits(standard, 0.01 * INCH)
    const work = boreMachining({
      ...oldCaps,
      capFaceCut: 0,
      finished: oversize,
      aim: (oversize.low + oversize.high) / 2,
      cleanUp: 0.004 * INCH,
    })
    expect(work.axisShift).toBe(0)
    expect(work.finished.block.reached).toBe(1)
    expect(work.finished.cap.reached).toBe(1)
    expect(work.finished.block.least / INCH).toBeGreaterThan(0.004)
  })

  it('shows a walked cap as more metal on one side and less on the other', () => {
    const work = boreMachining({ ...oldCaps, capSideOffset: 0.002 * INCH })
    const [left, right] = work.finished.cap.edges
    expect((left - right) / INCH).toBeCloseTo(0.004, 5)
    expect(work.honeAlone.sideShift / INCH).toBeCloseTo(0.001, 12)
    expect(work.finished.cap.reached).toBeLessThan(1)
  })

  it('names what does not fit', () => {
    expect(() => boreMachining({ ...oldCaps, blockBore: 2.691 })).toThrow(/blockBore/)
    expect(() => boreMachining({ ...oldCaps, aim: 2.7 * INCH })).toThrow(/aim/)
    expect(() => boreMachining({ ...oldCaps, capFaceCut: Number.NaN })).toThrow(/capFaceCut/)
    const crossed = { low: standard.high, high: standard.low }
    expect(() => boreMachining({ ...oldCaps, finished: crossed })).toThrow(DomainError)
  })
})

describe('leastCapFaceCut', () => {
  it('is just enough for both crowns to clean up', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 0.0001, noNaN: true }),
        fc.double({ min: 0, max: 0.0001, noNaN: true }),
        (worn, cleanUp) => {
          const bores = { blockBore: 0.07 + worn, capBore: 0.07 + worn }
          const finishedBore = 0.07
          const capFaceCut = leastCapFaceCut({
            ...bores,
            finishedBore,
            cleanUp,
            mostAxisShift: 0.001,
          })
          const { axisRange } = boreMachining({
            ...bores,
            capFaceCut,
            finished: { low: 0.07, high: 0.07 },
            cleanUp,
            honeLimit: 0,
          })
          expect(axisRange.high - axisRange.low).toBeCloseTo(0, 12)
        },
      ),
    )
  })

  it('is nothing for an undersized cap and out of reach when the axis may not move', () => {
    const bores = { blockBore: 0.0701, capBore: 0.068, finishedBore: 0.07, cleanUp: 0 }
    expect(leastCapFaceCut({ ...bores, mostAxisShift: 0.0001 })).toBe(0)
    expect(leastCapFaceCut({ ...bores, mostAxisShift: 0.00001 })).toBe(Number.POSITIVE_INFINITY)
    expect(() => leastCapFaceCut({ ...bores, cleanUp: -1, mostAxisShift: 0 })).toThrow(/cleanUp/)
  })
})

describe('finishedLimits', () => {
  it('adds the oversize to both limits', () => {
    const { low, high } = finishedLimits(standard, 0.005 * INCH)
    expect(low / INCH).toBeCloseTo(2.6956, 9)
    expect(high / INCH).toBeCloseTo(2.6966, 9)
    expect(() => finishedLimits(standard, 0.01)).toThrow(/oversize/)
  })
})
