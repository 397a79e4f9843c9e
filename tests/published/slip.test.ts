import { describe, expect, it } from 'vitest'
import { FACE_FRICTION, gripCapacity } from '../../src/mechanics/parting-face.ts'

describe('clamp against slip', () => {
  // Source: VDI 2230, R2 (from memory): F_K = F_Q/(q μ); 5 kN, one face, μ 0.15: 33.33 kN.
  it('33.33 kN at friction 0.15 carry 5 kN', () => {
    expect(Math.abs(gripCapacity(33.33e3, 0.15) - 5e3)).toBeLessThan(1)
  })

  it('is refused without a clamp', () => {
    expect(() => gripCapacity(-1, 0.2)).toThrow(/clamp is -1/)
  })
})

describe('friction of the parting face', () => {
  // Sources differ (read): steel on gray iron dry 0.18–0.24, steel on iron degreased 0.15–0.25,
  // iron on iron 0.18–0.25, lubricated 0.10, greasy 0.21. The range must hold them.
  it('dry holds the published dry values', () => {
    for (const value of [0.15, 0.18, 0.24, 0.25]) {
      expect(value).toBeGreaterThanOrEqual(FACE_FRICTION.dry.low)
      expect(value).toBeLessThanOrEqual(FACE_FRICTION.dry.high)
    }
  })

  it('oiled holds the lubricated value and lies below dry', () => {
    expect(FACE_FRICTION.oiled.low).toBeLessThanOrEqual(0.1)
    expect(FACE_FRICTION.oiled.high).toBeGreaterThanOrEqual(0.1)
    expect(FACE_FRICTION.oiled.likely).toBeLessThan(FACE_FRICTION.dry.likely)
  })

  it.each(['dry', 'oiled'] as const)('%s is a range with the likely value inside', (state) => {
    const { low, likely, high } = FACE_FRICTION[state]
    expect(low).toBeLessThan(likely)
    expect(likely).toBeLessThan(high)
  })
})
