import { describe, expect, it } from 'vitest'
import { readFolder } from '../../src/rulebook/read-folder.ts'
import { SINGLE_FIELDS } from '../../src/shop-sheet/fields.ts'
import { LIMIT_IDS, loadShopRules, ShopRulesError } from '../../src/shop-sheet/shop-rules.ts'
import { rulebook, shopRules } from '../check-in/case.ts'

const files = readFolder(new URL('../../rules', import.meta.url).pathname)

function faultsWith(
  name: string,
  change: (json: Record<string, unknown>) => void,
): readonly string[] {
  const json = JSON.parse(files.get(name) as string) as Record<string, unknown>
  change(json)
  try {
    loadShopRules(new Map([...files, [name, JSON.stringify(json)]]))
  } catch (error) {
    if (error instanceof ShopRulesError) return error.faults
    throw error
  }
  return []
}

describe('rules/limits.json and rules/parts.json', () => {
  it('gives every limit a source, and says what to do beyond each of its ends', () => {
    for (const id of LIMIT_IDS) {
      const { low, high, service, ifLow, ifHigh, source } = shopRules.limits[id]
      expect(['published', 'practice', 'memory'], id).toContain(source.kind)
      if (low !== undefined || service?.low !== undefined) expect(ifLow, id).toBeTruthy()
      if (high !== undefined || service?.high !== undefined) expect(ifHigh, id).toBeTruthy()
    }
  })

  it('names only fields, works and parts that there are', () => {
    const fields = SINGLE_FIELDS.map(({ id }) => id)
    const services = LIMIT_IDS.flatMap((id) =>
      Object.values<string | undefined>(shopRules.limits[id].service ?? {}),
    )
    expect(services.filter((id) => id !== undefined && !fields.includes(id))).toEqual([])
    const items = rulebook.cost.items.map(({ id }) => id)
    const { parts, questions, before, after } = shopRules.often
    const named = [...parts, ...questions, ...before, ...after].flatMap(({ when }) => [
      ...(when?.work ?? []),
      ...(when?.parts ?? []),
    ])
    expect(named.length).toBeGreaterThan(20)
    expect(named.filter((id) => !items.includes(id))).toEqual([])
  })

  it('names file and field of every fault', () => {
    expect(
      faultsWith('limits.json', (json) => Object.assign(json, { warmth: { blockRise: 900 } })),
    ).toEqual(expect.arrayContaining([expect.stringMatching(/^limits\.json: warmth\.blockRise: /)]))
    const backwards = faultsWith('limits.json', (json) => {
      const limits = json.limits as Record<string, { low?: number }>
      Object.assign(limits['end-float'] as object, { low: 1 })
    })
    expect(backwards).toEqual(['limits.json: limits.end-float: low exceeds high'])
    const priced = faultsWith('parts.json', (json) => {
      Object.assign((json.parts as object[])[0] as object, {
        price: { low: 9, likely: 1, high: 2 },
      })
    })
    expect(priced).toEqual(['parts.json: parts.0.price: low ≤ likely ≤ high'])
  })

  it('says that a file is missing, or is no JSON', () => {
    const only = new Map([['limits.json', '{']])
    expect(() => loadShopRules(only)).toThrow(
      /limits\.json: is not JSON[\s\S]*parts\.json: the file is missing/,
    )
  })
})
