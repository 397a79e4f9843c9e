import { describe, expect, it } from 'vitest'
import { KINDS, type KindId, kindFromSi, kindToSi } from '../../src/worksheets/kinds.ts'
import { bodySchema, WORKSHEETS, worksheetAnswer } from '../../src/worksheets/registry.ts'
import { figures, post } from './call-worksheet.ts'

interface Refusal {
  type: string
  status: number
  errors: { field: string; code: string; found: string; fits: string }[]
}

/** The first error of a refusal; the answer must be a problem document of status 400. */
async function refused(name: string, body: unknown): Promise<Refusal['errors'][number]> {
  const { status, type, json } = await post(name, body)
  expect(status).toBe(400)
  expect(type).toContain('application/problem+json')
  const [first] = (json as unknown as Refusal).errors
  if (!first) throw new Error('no error was named')
  return first
}

const bolt = { thread: '1/2-13', torque: '85 lb ft' }

const MAINS = WORKSHEETS.find(({ name }) => name === 'main-loads')

describe('what a worksheet refuses', () => {
  it('names a key that it does not know, and those that it does', async () => {
    const error = await refused('preload', { ...bolt, tork: '85 lb ft' })
    expect(error).toMatchObject({ field: 'tork', code: 'unknown-field' })
    expect(error.fits).toContain('turnAngle')
  })

  it('wants a unit where one is needed, and names those that fit', async () => {
    const error = await refused('preload', { ...bolt, torque: 85 })
    expect(error).toMatchObject({ field: 'torque', code: 'unit-missing', found: '85' })
    expect(error.fits).toContain('lb ft')
    expect(error.fits).toContain('N m')
  })

  it('refuses a unit of another kind', async () => {
    const error = await refused('preload', { ...bolt, torque: '85 psi' })
    expect(error).toMatchObject({ field: 'torque', code: 'unit-unknown', found: '85 psi' })
  })

  it('reads fractions of an inch, and says which there are', async () => {
    const bore = { ...MAINS?.example, bore: '4 1/32 in' }
    expect((await figures('main-loads', bore)).answer).toMatchObject({
      inputs: { bore: { value: 4.03125, unit: 'in' } },
    })
    const error = await refused('main-loads', { ...bore, bore: '4 1/3 in' })
    expect(error.fits).toContain('4 1/32 in')
    const torque = await refused('preload', { ...bolt, torque: '85 1/2 lb ft' })
    expect(torque.fits).not.toContain('fraction')
  })

  it.each([
    [{ value: '85', unit: 'lb ft' }],
    [{ value: 85, unit: 'lb ft', note: 'x' }],
    [[85]],
    [null],
    ['much'],
    [''],
  ])('refuses %j as a figure', async (torque) => {
    expect(await refused('preload', { ...bolt, torque })).toMatchObject({ field: 'torque' })
  })

  it('refuses a figure with a unit where a plain number is needed', async () => {
    const error = await refused('preload', { ...bolt, nutFactor: '0.2 in' })
    expect(error).toMatchObject({ field: 'nutFactor', code: 'not-a-number' })
  })

  it('names every input that is missing', async () => {
    const { json } = await post('gas-cycle', { bore: '4 in', stroke: '3.5 in' })
    const fields = (json as unknown as Refusal).errors.map(({ field }) => field)
    expect(fields).toEqual([
      'speed',
      'compressionRatio',
      'startPressure',
      'startTemperature',
      'addedHeat',
      'burnDuration',
    ])
  })

  it('says a range of the mechanics in the worksheet’s own name and units', async () => {
    const error = await refused('preload', { ...bolt, threadFriction: 0.9, collarFriction: 0.1 })
    expect(error).toMatchObject({ field: 'threadFriction', code: 'out-of-range', found: '0.9' })
    expect(error.fits).toContain('0.6')
    const bore = await refused('clearance', {
      housingVertical: '2.641 in',
      shellCrown: '0.0948 in',
      journal: '24.49 in',
    })
    expect(bore).toMatchObject({ field: 'journal', found: '24.49 in' })
    // 0.02 to 0.2 m of the mechanics.
    expect(bore.fits).toContain('from 20 to 200 mm')
    expect(bore.fits).toContain('7.874 in')
  })

  it('names the place in a list', async () => {
    const item = { label: 'Line bore', low: '500 USD', likely: '400 USD', high: '600 USD' }
    expect(await refused('job-cost', { items: [item] })).toMatchObject({ field: 'items.0.likely' })
    const bare = { label: 'Line bore', likely: 400 }
    expect(await refused('job-cost', { items: [{ ...item, low: '300 USD' }, bare] })).toMatchObject(
      {
        field: 'items.1.likely',
        code: 'currency-missing',
      },
    )
  })

  it('refuses two currencies in one price', async () => {
    const items = [
      { label: 'Caps', likely: '400 USD' },
      { label: 'Line bore', likely: '400 EUR' },
    ]
    expect(await refused('job-cost', { items })).toMatchObject({ field: 'items.1.likely' })
  })

  it('refuses two figures where one decides the other', async () => {
    const error = await refused('preload', { ...bolt, preload: '10 kN' })
    expect(error).toMatchObject({ field: 'preload' })
    expect(error.fits).toContain('exactly one of torque, preload')
  })

  it('refuses units that are no system, other content, and names without a sheet', async () => {
    expect(await refused('preload', { ...bolt, units: 'imperial' })).toMatchObject({
      field: 'units',
    })
    expect(await refused('preload', '[1]')).toMatchObject({ field: 'body' })
    expect(await refused('preload', '{"thread":"1/2-13","thread":"1/2-13"}')).toMatchObject({
      code: 'duplicate',
    })
    expect((await post('nothing', {})).status).toBe(404)
  })
})

describe.each(WORKSHEETS.map((sheet) => [sheet.name, sheet] as const))('%s', (name, sheet) => {
  it.each(['us', 'metric'] as const)('answers its example in %s as described', async (units) => {
    const { answer } = await figures(name, { ...sheet.example, units })
    const parsed = worksheetAnswer.safeParse(answer)
    expect(parsed.error?.issues ?? []).toEqual([])
    expect(JSON.stringify(answer)).not.toMatch(/NaN|undefined|\[object/)
    for (const step of answer.steps) {
      expect(step.withNumbers).toMatch(/\d|throw|as given/)
      expect(step.source.cite !== '' || step.source.kind === 'said').toBe(true)
    }
  })

  it('describes what it takes', () => {
    expect(bodySchema(sheet).safeParse(sheet.example).error?.issues ?? []).toEqual([])
    expect(bodySchema(sheet).safeParse({ ...sheet.example, nothing: 1 }).success).toBe(false)
  })

  it('puts every input of a form on its page once', () => {
    const shown = sheet.groups.flatMap(({ fields }) => fields)
    const apiOnly = name === 'main-loads' ? ['pressure'] : []
    expect([...shown, ...apiOnly].sort()).toEqual(Object.keys(sheet.fields).sort())
  })
})

describe('units of worksheets', () => {
  // US customary units from exact definitions, NIST SP 811: 1 Mpsi 6.894757 GPa, 1 °F 5/9 K,
  // 212 °F 373.15 K, 1 Mlbf/in 175.1268 kN/mm, 1 reyn 6894.757 Pa s, 1 Btu (IT) 1055.056 J.
  it.each([
    ['modulus', 1, 'Mpsi', 6.894757e9],
    ['rise', 9, '°F', 5],
    ['temperature', 212, '°F', 373.15],
    ['temperature', 100, '°C', 373.15],
    ['stiffness', 1, 'Mlbf/in', 1.751268e8],
    ['viscosity', 1, 'µreyn', 6.894757e-3],
    ['heat', 1, 'Btu', 1055.056],
    ['expansion', 1, '1/°F', 1.8],
    ['acceleration', 1, 'g', 9.80665],
    ['mass', 1, 'g', 0.001],
    ['torque', 12, 'lb in', 1.355818],
  ] as const)('%s: %d %s', (kind, value, unit, si) => {
    expect(Math.abs(kindToSi(kind, value, unit) / si - 1)).toBeLessThan(5e-7)
  })

  it('come back the same from SI, all of them', () => {
    for (const [id, { units }] of Object.entries(KINDS)) {
      for (const unit of units) {
        const back = kindFromSi(id as KindId, kindToSi(id as KindId, 7.25, unit), unit)
        expect(Math.abs(back - 7.25)).toBeLessThan(1e-9)
      }
    }
  })
})

describe('a figure that the mechanics work out of several inputs', () => {
  const caps = {
    grade: 'sae-8',
    pull: '9000 lbf',
    side: '4000 lbf',
    capMaterial: 'gray-iron-30',
    blockMaterial: 'gray-iron-30',
  }
  const group = { count: 2, thread: '1/2-13', preload: '12000 lbf', grip: '2 in', kind: 'bolt' }

  it('is refused by an input that was given, without a range of something else', async () => {
    const error = await refused('preload', {
      ...bolt,
      torque: '0 lb ft',
      grade: 'sae-8',
      engagement: '0.9 in',
      blockMaterial: 'gray-iron-30',
    })
    expect(error).toMatchObject({ field: 'torque', found: '0 lb ft' })
    expect(error.fits).toBe('with the other inputs it is outside what the equations cover')
  })

  it('is refused in the row of a list that it stands in', async () => {
    const second = { ...group, preload: '9e9 lbf' }
    const error = await refused('cap-joint', { ...caps, fasteners: [group, second] })
    expect(error).toMatchObject({ field: 'fasteners.1.preload', found: '9000000000 lbf' })
  })

  it('is refused by the one of several like inputs that does not fit', async () => {
    const { example } = WORKSHEETS.find(({ name }) => name === 'clearance') as { example: object }
    const error = await refused('clearance', { ...example, journalRise: '900 K' })
    expect(error).toMatchObject({ field: 'journalRise', found: '900 K' })
    // −100 to 300 K of the mechanics.
    expect(error.fits).toContain('-100 to 300')
  })

  it('says ends that a person can use', async () => {
    const item = { label: 'Line bore', likely: '400 USD' }
    const stake = await refused('job-cost', { items: [item], invested: '0 USD' })
    expect(stake).toMatchObject({
      field: 'invested',
      fits: 'give above 0, at most 1000000000000',
    })
    const { example } = WORKSHEETS.find(({ name }) => name === 'gas-cycle') as { example: object }
    const rod = await refused('gas-cycle', { ...example, rodLength: '40000 in' })
    // No rod of a piston engine comes near 2 m at a stroke of half a metre or less.
    expect(rod).toMatchObject({ field: 'rodLength' })
    expect(rod.fits).toMatch(/ to 2000 mm /)
  })

  it('names the upper of two limits when that is the one at fault', async () => {
    const { example } = WORKSHEETS.find(({ name }) => name === 'clearance') as { example: object }
    const error = await refused('clearance', { ...example, perDiameterHigh: -0.001 })
    expect(error).toMatchObject({ field: 'perDiameterHigh', fits: 'give from 0 to 0.01' })
  })
})
