import { describe, expect, it } from 'vitest'
import { readAnswer } from '../../shared/answers.ts'
import { answerText } from '../../shared/share-link.ts'

const ok = (key: string, raw: unknown) => {
  const read = readAnswer(key as 'bore', raw)
  return 'ok' in read ? read.ok : read.problem
}

describe('a length in fractions of an inch', () => {
  it.each([
    // Sizes on a ruler: 1/32 in is 0.03125 in, 7/16 in is 0.4375 in (arithmetic).
    ['bore', '4-1/32 in', { value: 4.03125, unit: 'in' }],
    ['bore', '4 1/32 in', { value: 4.03125, unit: 'in' }],
    ['bore', '4 1/32"', { value: 4.03125, unit: 'in' }],
    ['bore', '4 63/64 inches', { value: 4.984375, unit: 'in' }],
  ])('%s takes %j, and a link holds it exactly', (key, raw, answer) => {
    expect(ok(key, raw)).toEqual(answer)
    expect(ok(key, answerText(answer))).toEqual(answer)
  })

  it.each([
    ['bore', '4 1/3 in', 'unit-unknown'],
    ['bore', '4 33/32 in', 'unit-unknown'],
    ['bore', '4 1/32', 'unit-unknown'],
    ['bore', '102 1/2 mm', 'unit-unknown'],
    ['bore', '-4 1/32 in', 'unit-unknown'],
    ['bore', '7/16 in', 'out-of-range'],
    ['bore', '4½ in', 'unit-unknown'],
    ['boost', '12 1/2 psi', 'unit-unknown'],
  ])('%s refuses %j: %s', (key, raw, code) => expect(ok(key, raw)).toMatchObject({ code }))

  it.each(['4 1/3 in', '4 33/32 in', '4½ in', '102 1/2 mm', '4 1/32'])(
    'says of the fraction in %s which fractions there are',
    (raw) =>
      expect(ok('bore', raw)).toMatchObject({
        fits: expect.stringMatching(/in, mm; decimals, or fractions of an inch .*4 1\/32 in$/),
      }),
  )

  it('speaks of no fractions where nobody wrote one', () => {
    expect(ok('bore', '4 furlongs')).toMatchObject({ fits: 'give a figure with a unit: in, mm' })
    expect(ok('boost', '12 1/2 psi')).toMatchObject({
      fits: expect.not.stringContaining('fraction'),
    })
  })
})
