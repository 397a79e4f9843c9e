import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { boundedCache } from '../../src/preview/bounded-cache.ts'
import { tokenBucket } from '../../src/preview/token-bucket.ts'
import { roughWidth, wrapWords } from '../../src/preview/wrap.ts'

describe('a bounded cache', () => {
  it('forgets what was longest not asked for', () => {
    const cache = boundedCache<string>(2, 100, ({ length }) => length)
    cache.set('a', 'one')
    cache.set('b', 'two')
    expect(cache.get('a')).toBe('one')
    cache.set('c', 'three')
    expect(cache.get('b')).toBeUndefined()
    expect([cache.get('a'), cache.get('c')]).toEqual(['one', 'three'])
  })

  it('never holds more than it may, by count or by size, and counts what it holds', () => {
    const step = fc.record({
      key: fc.integer({ min: 0, max: 8 }),
      size: fc.integer({ min: 0, max: 30 }),
    })
    fc.assert(
      fc.property(fc.array(step, { maxLength: 60 }), (steps) => {
        const cache = boundedCache<number>(4, 50, (size) => size)
        for (const { key, size } of steps) {
          cache.set(String(key), size)
          const kept = Array.from({ length: 9 }, (_, index) => cache.get(String(index))).filter(
            (value) => value !== undefined,
          )
          expect(kept.length).toBeLessThanOrEqual(4)
          expect(cache.size).toBeLessThanOrEqual(50)
          expect(kept.reduce((sum, value) => sum + value, 0)).toBe(cache.size)
        }
      }),
    )
  })

  it('does not push all else out for what is too large to keep', () => {
    const cache = boundedCache<number>(4, 50, (size) => size)
    cache.set('small', 10)
    cache.set('huge', 51)
    expect(cache.get('huge')).toBeUndefined()
    expect(cache.get('small')).toBe(10)
  })
})

describe('a token bucket', () => {
  it('lets a burst through, then as many as come back with time', () => {
    let now = 0
    const bucket = tokenBucket(3, 2, () => now)
    expect([bucket.take(), bucket.take(), bucket.take(), bucket.take()]).toEqual([
      true,
      true,
      true,
      false,
    ])
    expect(bucket.wait()).toBe(1)
    now = 500
    expect(bucket.wait()).toBe(0)
    expect([bucket.take(), bucket.take()]).toEqual([true, false])
  })

  it('never gives more over any time than burst plus rate, even if the clock jumps back', () => {
    const gaps = fc.array(fc.integer({ min: -1000, max: 2000 }), { maxLength: 80 })
    fc.assert(
      fc.property(gaps, (list) => {
        let now = 0
        let forward = 0
        let taken = 0
        const bucket = tokenBucket(5, 2, () => now)
        for (const gap of list) {
          now += gap
          forward += Math.max(0, gap)
          if (bucket.take()) taken++
        }
        expect(taken).toBeLessThanOrEqual(5 + (2 * forward) / 1000 + 1e-9)
      }),
    )
  })
})

describe('words to lines', () => {
  const words = fc.array(fc.stringMatching(/^[A-Za-z0-9]{1,9}$/), { minLength: 1, maxLength: 40 })

  it('loses no word and fits every line, as long as there are lines enough', () => {
    fc.assert(
      fc.property(words, (list) => {
        const lines = wrapWords(list.join(' '), 16, 100)
        expect(lines.join(' ')).toBe(list.join(' '))
        for (const line of lines) expect(roughWidth(line)).toBeLessThanOrEqual(16)
      }),
    )
  })

  it('keeps to the most lines and says that words are missing', () => {
    const lines = wrapWords('one two three four five six seven eight nine ten', 4, 2)
    expect(lines.length).toBe(2)
    expect(lines[1]?.endsWith('…')).toBe(true)
  })

  it('leaves no line with one short word where the others have room', () => {
    const lines = wrapWords('they hold in ninety nine of a hundred cases as needed: 80.', 27, 5)
    expect(lines.length).toBe(2)
    expect(lines[1]?.split(' ').length).toBeGreaterThan(3)
  })
})
