import { describe, expect, it } from 'vitest'
import { DomainError, requireWithin } from '../../src/mechanics/domain-error.ts'

describe('requireWithin', () => {
  it('lets both ends and all between pass', () => {
    for (const found of [0, 0.5, 1]) expect(() => requireWithin('x', found, 0, 1)).not.toThrow()
  })

  it.each([-0.001, 1.001, Number.NaN, Number.POSITIVE_INFINITY])('refuses %d', (found) => {
    expect(() => requireWithin('x', found, 0, 1)).toThrow(DomainError)
  })

  it('names the argument, what was found and what would do, with its unit where it has one', () => {
    expect(() => requireWithin('bore', 7, 0.02, 0.3, 'm')).toThrow(
      /^bore is 7; it must be from 0.02 to 0.3 m$/,
    )
    expect(() => requireWithin('friction', 2, 0, 1)).toThrow(
      /^friction is 2; it must be from 0 to 1$/,
    )
  })
})
