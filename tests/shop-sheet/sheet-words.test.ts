import { describe, expect, it } from 'vitest'
import { readFolder } from '../../src/rulebook/read-folder.ts'
import type { SheetRules } from '../../src/shop-sheet/sheet-rules.ts'
import { loadShopRules, type ShopRules } from '../../src/shop-sheet/shop-rules.ts'
import { shopRules } from '../check-in/case.ts'
import { blocks, pair, RACE, sheetOf } from './sheet-of.ts'

const PRACTICE = { source: { kind: 'practice' } }

/** The shop's rules with changes in rules/sheet.json. */
function edited(change: (json: SheetRules) => void): ShopRules {
  const files = readFolder(new URL('../../rules', import.meta.url).pathname)
  const json = JSON.parse(files.get('sheet.json') as string)
  change(json)
  return loadShopRules(new Map([...files, ['sheet.json', JSON.stringify(json)]]))
}

describe('rules/sheet.json', () => {
  it('says on the sheet what stands in it, figures in their places', async () => {
    const rules = edited((json) => {
      Object.assign(json.axis, {
        step: { in: 0.002, mm: 0.05 },
        note: 'Ask for readings. {{because}}',
      })
      Object.assign(json.fasteners, {
        torqueUnknown: { ...PRACTICE, text: 'Look into: {{from}}.' },
      })
      Object.assign(json.order.otherwise, { text: 'Not before the caps are here.' })
      Object.assign(json, { signOff: ['Weighed and found right', 'Paid for in full'] })
    })
    const sheet = await sheetOf(RACE, {}, 'us', rules)
    expect(pair(sheet, 'Final torque').note).toBe('Look into: Stud supplier’s sheet.')
    const text = JSON.stringify(sheet)
    // Plane geometry: gears at a pressure angle of 20° lose 2 × 0.002 × tan 20° = 0.00146 in.
    expect(text).toMatch(/For each 0\.0020\u00a0in that the axis rises.*lose about 0\.0015\u00a0in/)
    expect(text).toContain(`Ask for readings. ${shopRules.limits['axis-shift'].because}`)
    expect(text).toContain('Not before the caps are here.')
    const signed = blocks(sheet).find(({ kind }) => kind === 'sign-off')
    expect(signed).toMatchObject({ lines: ['Weighed and found right', 'Paid for in full'] })
  })
})
