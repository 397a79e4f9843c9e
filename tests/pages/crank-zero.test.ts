import { describe, expect, it } from 'vitest'
import { CRANK_LAYOUTS } from '../../src/mechanics/crank-layouts.ts'
import { crankZero } from '../../src/pages/crank-zero.ts'
import { loadDiagram } from '../../src/pages/load-diagram.ts'
import { capViews, mainCapDrawing } from '../../src/pages/main-cap-drawing.ts'
import { sampleAssessment } from '../support/sample-assessment.ts'

describe('what crank angles count from', () => {
  it.each(Object.values(CRANK_LAYOUTS))('is said as the mechanics count it: $id', (layout) => {
    // The cylinder at whose firing dead centre the crank angle is nought.
    const [zero, ...others] = layout.cylinders.filter(({ firingAngle }) => firingAngle === 0)
    expect(others).toEqual([])
    expect(zero?.throw).toBe(0)
    // x is to the right seen from the front; in line and flat there is no side to say.
    const inVee = layout.bankSpread > 0 && !layout.splitCase
    const side = inVee ? ((zero?.bankAngle ?? 0) > 0 ? 'right' : 'left') : undefined
    const said = /in the (left|right) bank/.exec(crankZero(layout.id))?.[1]
    expect(said).toBe(side)
  })

  it('stands beside every picture that gives a crank angle', () => {
    const sample = sampleAssessment()
    const { worstPull, worstSide } = sample.loads
    const caps = capViews(sample)
    const zero = 'after firing top dead centre of the foremost cylinder'
    expect(`${mainCapDrawing({ caps, worstPull, worstSide, units: 'us' })}`).toContain(zero)
    expect(`${loadDiagram(sample.loads, 'us')}`).toContain(zero)
  })
})
