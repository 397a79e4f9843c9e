import { describe, expect, it } from 'vitest'
import { readFolder } from '../../src/rulebook/read-folder.ts'
import { LIMIT_IDS } from '../../src/shop-sheet/limit-rules.ts'
import { checkShopReferences } from '../../src/shop-sheet/shop-references.ts'
import { loadShopRules, ShopRulesError } from '../../src/shop-sheet/shop-rules.ts'
import { rulebook, shopRules } from '../check-in/case.ts'

const files = readFolder(new URL('../../rules', import.meta.url).pathname)

function faultsWith(
  name: string,
  change: (json: Record<string, unknown>) => void,
): readonly string[] {
  const json = JSON.parse(files.get(name) as string) as Record<string, unknown>
  change(json)
  try {
    const changed = loadShopRules(new Map([...files, [name, JSON.stringify(json)]]))
    checkShopReferences(changed, rulebook)
  } catch (error) {
    if (error instanceof ShopRulesError) return error.faults
    throw error
  }
  return []
}

describe('the files of rules/ that sheet and check-in read', () => {
  it('gives every limit a source, and says what to do beyond each of its ends', () => {
    for (const id of LIMIT_IDS) {
      const { low, high, service, ifLow, ifHigh, source } = shopRules.limits[id]
      expect(['published', 'practice', 'memory'], id).toContain(source.kind)
      if (low !== undefined || service?.low !== undefined) expect(ifLow, id).toBeTruthy()
      if (high !== undefined || service?.high !== undefined) expect(ifHigh, id).toBeTruthy()
    }
  })

  it('refuses the name of a field, use, work, part or step that there is not', () => {
    const named = faultsWith('limits.json', (json) => {
      const limits = json.limits as Record<string, object>
      Object.assign(limits['end-float'] as object, { service: { low: 'endFlaot' } })
      Object.assign(limits.clearance as object, { uses: { circuit: { low: 0.0009 } } })
    })
    expect(named).toEqual([
      'limits.json: limits.clearance.uses: "circuit" is no choice of use',
      'limits.json: limits.end-float.service: no field is called "endFlaot"',
    ])
    const asked = faultsWith('parts.json', (json) => {
      Object.assign((json.questions as object[])[0] as object, { when: { work: ['line-bored'] } })
    })
    expect(asked).toEqual(['parts.json: bore-or-hone: when.work: "line-bored" is not in cost.json'])
    const told = faultsWith('sheet.json', (json) => {
      Object.assign(json.order as object, { toldBy: { 'bore-chek': 'recheck' } })
    })
    expect(told).toEqual([
      'sheet.json: order.toldBy: "bore-chek" is not in cost.json',
      'sheet.json: order.toldBy.bore-chek: "recheck" is not in follow-on.json',
    ])
    const before = faultsWith('sheet.json', (json) => {
      const { otherwise } = json.order as { otherwise: object }
      Object.assign(otherwise, { before: ['line-boar'] })
    })
    expect(before).toEqual(['sheet.json: order: before: "line-boar" is not in follow-on.json'])
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

  it('refuses a sentence that is missing, has no source, or a place that nothing fills', () => {
    const spoilt = faultsWith('sheet.json', (json) => {
      const part = (name: string) => json[name] as Record<string, unknown>
      delete part('metal').bored
      part('bores').reading = { text: 'Every size is read as it comes.' }
      part('fasteners').checkWould = 'It would give {{load}} in each fastener.'
      part('hedge').cutting = 'Settle {{open} before metal is cut.'
      part('measure').note = 'It takes {{these}} readings.'
    })
    expect(spoilt).toEqual([
      expect.stringMatching(/^sheet\.json: bores\.reading\.source: /),
      'sheet.json: fasteners.checkWould: no place is called {{load}}; there is {{preload}}, {{share}}',
      'sheet.json: hedge.cutting: write a place as {{name}}',
      'sheet.json: measure.note: no place is called {{these}}; there is none',
      expect.stringMatching(/^sheet\.json: metal\.bored: /),
    ])
  })

  it('refuses a check-in without a sentence, with a strange one, or with a share that is none', () => {
    const spoilt = faultsWith('check-in.json', (json) => {
      const part = (name: string) => json[name] as Record<string, unknown>
      delete part('how').shell
      const { coarse } = part('judged').near as { coarse: object }
      Object.assign(coarse, { share: 1.5 })
      part('overall').motto = 'Measure twice.'
      part('slips').looksLike = 'Was {{ment}} meant?'
    })
    expect(spoilt).toEqual([
      expect.stringMatching(/^check-in\.json: how\.shell: /),
      expect.stringMatching(/^check-in\.json: judged\.near\.coarse\.share: .*<=1/),
      expect.stringMatching(/^check-in\.json: overall: .*"motto"/),
      'check-in.json: slips.looksLike: no place is called {{ment}}; there is {{away}}, {{slip}}, {{meant}}',
    ])
  })

  it('says that a file is missing, or is no JSON', () => {
    const only = new Map([['limits.json', '{']])
    expect(() => loadShopRules(only)).toThrow(
      /limits\.json: is not JSON[\s\S]*parts\.json: the file is missing[\s\S]*sheet\.json: the file is missing[\s\S]*check-in\.json: the file is missing/,
    )
  })
})
