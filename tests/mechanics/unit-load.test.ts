import { describe, expect, it } from 'vitest'
import { unitLoad } from '../../src/mechanics/unit-load.ts'

describe('unitLoad', () => {
  it('rises as the groove takes width away', () => {
    expect(unitLoad(40_000, 0.06, 0.022)).toBeCloseTo(40_000 / (0.06 * 0.022), 6)
    expect(unitLoad(40_000, 0.06, 0.022, 0.004)).toBeCloseTo(40_000 / (0.06 * 0.018), 6)
  })

  it('names what does not fit', () => {
    expect(() => unitLoad(-1, 0.06, 0.02)).toThrow(/force/)
    expect(() => unitLoad(1, 0.06, 0.02, 0.02)).toThrow(/lost/)
  })
})
