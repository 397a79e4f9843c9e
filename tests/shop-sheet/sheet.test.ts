import { describe, expect, it } from 'vitest'
import { rulebook } from '../check-in/case.ts'
import { blocks, pair, RACE, SAFETY, sheetOf } from './sheet-of.ts'

describe('the shop sheet', () => {
  it('tells the order of work, boring before honing and fitting before both', async () => {
    const sheet = await sheetOf(RACE)
    const order = sheet.sections.find(({ id }) => id === 'order')?.blocks[0]
    const steps = order?.kind === 'ticks' ? order.items.map(({ text }) => text) : []
    const place = (words: string) => steps.findIndex((text) => text.startsWith(words))
    expect(place('Fit the caps')).toBeGreaterThan(place('Send the block'))
    expect(place('Line bore')).toBeGreaterThan(place('Fit the caps'))
    expect(place('Line hone')).toBeGreaterThan(place('Line bore'))
    expect(place('Measure every clearance')).toBeGreaterThan(place('Line hone'))
  })

  it('leaves what is not known blank, and invents nothing', async () => {
    const sheet = await sheetOf(RACE)
    for (const label of [
      'Block: casting number',
      'Finished housing bore, least',
      'Finished housing bore, most',
      'Final torque',
      'Lubricant',
      'Tightening sequence',
      'Studs with nuts',
      'Bearing clearance aimed at',
      'Block’s half bore now',
    ]) {
      expect(pair(sheet, label).value, label).toBeNull()
    }
  })

  it('prints no assumption as a fact: every value was said, is a rule, or is worked out', async () => {
    const sheet = await sheetOf({ ...RACE, bore: 'unknown' })
    expect(pair(sheet, 'Bore').value).toBeNull()
    expect(pair(sheet, 'Bore').note).toContain('not said')
  })

  it('leaves room for the angle that follows a torque, so that nobody stops at the torque', async () => {
    const sheet = await sheetOf({
      ...RACE,
      compressionRatio: '9.5',
      use: 'street',
      peakRpm: '5800rpm',
      fastenerThread: 'M11x1.5',
      fastenerGrade: 'iso-10.9',
      fastenerTorque: '30Nm',
      tightening: 'torque-angle',
    })
    expect(pair(sheet, 'First torque').value?.replace(/\s/g, ' ')).toBe('30 N m, before the turn')
    expect(pair(sheet, 'Then turned by').value).toBeNull()
    expect(pair(sheet, 'Check by the guide').note).toContain('No torque comes to it')
    expect(JSON.stringify(sheet)).not.toContain('Final torque')
  })

  it('leaves room for the stretch that follows a torque', async () => {
    const sheet = await sheetOf({
      ...RACE,
      compressionRatio: '9.5',
      use: 'street',
      peakRpm: '5800rpm',
      fastenerTorque: '30lbft',
      tightening: 'stretch',
    })
    expect(pair(sheet, 'Torque to begin with').value).toBe('30\u00a0lb ft')
    expect(pair(sheet, 'Then stretched by').value).toBeNull()
    expect(JSON.stringify(sheet)).not.toContain('Final torque')
  })

  it('puts the supplier’s figures first, ours only as a check', async () => {
    const fields = {
      supplierTorque: '70 lb ft + 60°',
      supplierLubricant: 'their own moly',
      housingLow: '2.6406',
      housingHigh: '2.6415',
      clearanceLow: '.0020',
      clearanceHigh: '.0026',
      roundMost: '.0003',
      capMark: '1 2 3 4 5',
    }
    const sheet = await sheetOf(RACE, fields)
    expect(pair(sheet, 'Final torque').value).toBe('70 lb ft + 60°')
    expect(pair(sheet, 'Lubricant').value).toBe('their own moly')
    expect(pair(sheet, 'Check by the guide').note).toContain('ask why')
    expect(pair(sheet, 'Finished housing bore, least').value).toBe('2.6406\u00a0in')
    expect(pair(sheet, 'Bearing clearance aimed at').value).toBe('0.0020 to 0.0026\u00a0in')
    expect(pair(sheet, 'Out of round')).toMatchObject({
      value: 'at most 0.0003\u00a0in',
      note: 'Your service data',
    })
    expect(pair(sheet, 'Taper').note).toBe('Common practice')
    const map = blocks(sheet).find((block) => block.kind === 'cap-map')
    expect(map?.kind === 'cap-map' && map.map).toMatchObject({
      mains: 5,
      fasteners: 2,
      stamps: ['1', '2', '3', '4', '5'],
    })
  })

  // Plane geometry of two half circles, by hand: block half 2.6410, cap half 2.5410, finish 2.6410:
  // the cap's crown has (2.6410 − 2.5410)/2 = 0.0500 to cut, the block's nothing; axis stays.
  it('works out how much metal, where the halves were measured', async () => {
    const fields = {
      blockBore: '2.6410',
      capBore: '2.5410',
      housingLow: '2.6405',
      housingHigh: '2.6415',
      honingStock: '.002',
    }
    const sheet = await sheetOf(RACE, fields)
    expect(pair(sheet, 'Bore to').value).toBe('2.6390\u00a0in')
    expect(pair(sheet, 'Metal off the cap’s crown').value).toBe('0.0500\u00a0in')
    expect(pair(sheet, 'Metal off the block’s crown').value).toBe('0.0000\u00a0in')
    expect(pair(sheet, 'If it were only honed').value).toContain('more than a hone should take')
  })

  it('counts four studs to a cap where four fasteners hold it', async () => {
    const sheet = await sheetOf({
      ...RACE,
      compressionRatio: '12.5',
      capFastening: 'four-bolt',
      capMaterial: 'steel',
    })
    const rows = blocks(sheet).flatMap((block) => (block.kind === 'table' ? block.table.rows : []))
    expect(rows.find(([label]) => label?.startsWith('Main studs'))?.[1]).toBe('1 set: 20')
  })

  it('lists quantities, prices and what is often forgotten', async () => {
    const tables = blocks(await sheetOf(RACE)).flatMap((block) =>
      block.kind === 'table' ? [block.table] : [],
    )
    const bill = tables.find(({ caption }) => caption.startsWith('The route’s bill'))
    expect(bill?.rows.find(([label]) => label === 'Main studs, set')?.[1]).toBe('1 set: 10')
    const forgotten = tables.find(({ caption }) => caption.startsWith('Often forgotten'))
    const names = forgotten?.rows.map(([label]) => label).join(' ') ?? ''
    for (const word of [
      'bearing set',
      'Timing set',
      'dowels',
      'lube',
      'plugs',
      'Wash',
      'pickup',
      'Balance',
    ]) {
      expect(names).toContain(word)
    }
    const blank = tables.find(({ caption }) => caption.startsWith('Housing bores after'))
    expect(blank?.rows).toHaveLength(5)
    expect(blank?.rows[0]).toEqual(['1', null, null, null, null, null, null])
  })

  it('asks a shop that only hones nothing about boring', async () => {
    const kept = await sheetOf({ layout: 'v8-cross-plane', capHistory: 'walked', use: 'street' })
    const asked = JSON.stringify(kept.sections.find(({ id }) => id === 'questions'))
    expect(asked).not.toContain('Can you line bore')
    expect(asked).toContain('gauge')
  })

  it('sets the limits that a lower target comes down to', async () => {
    const preset = rulebook.presets.find(({ id }) => id === 'small-budget-boost')
    const sheet = await sheetOf((preset?.answers ?? {}) as Readonly<Record<string, string>>)
    expect(sheet.title).toContain('Lower the target')
    expect(JSON.stringify(sheet.sections[0])).toMatch(
      /at most [\d.]+\u00a0psi of boost and [\d,]+\u00a0rpm/,
    )
  })

  it('reads in millimetres for who counts in them', async () => {
    const sheet = await sheetOf(RACE, { housingLow: '2.6406' }, 'metric')
    expect(pair(sheet, 'Finished housing bore, least').value).toBe('67.071\u00a0mm')
    expect(pair(sheet, 'Out of round').value).toBe('at most 0.013\u00a0mm')
  })

  it('says what can hurt before the cautions of the case', async () => {
    const cautions = (await sheetOf(RACE)).sections.find(({ id }) => id === 'cautions')?.blocks
    const texts = (cautions ?? []).map((block) => (block.kind === 'text' ? block.text : ''))
    expect(texts.slice(0, SAFETY.length)).toEqual(SAFETY)
    expect(texts.length).toBeGreaterThan(SAFETY.length)
  })

  it('is the same for the same case', async () => {
    expect(await sheetOf(RACE)).toEqual(await sheetOf(RACE))
  })
})
