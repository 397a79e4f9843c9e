import { describe, expect, it } from 'vitest'
import type { Fields } from '../../src/worksheets/fields.ts'
import { runWorksheet } from '../../src/worksheets/input.ts'
import { KINDS, type Kind } from '../../src/worksheets/kinds.ts'
import { WORKSHEETS } from '../../src/worksheets/registry.ts'

const EXTREMES = [0, -1, 1e-9, 1e9, -1e9, 0.5, 12, 400, 90_000]

/** Inputs beside each example's that bring every part of a worksheet into play. */
const MORE: Readonly<Record<string, readonly Record<string, unknown>[]>> = {
  preload: [
    {
      lubricant: undefined,
      threadFriction: 0.12,
      collarFriction: 0.12,
      faceDiameter: '0.75 in',
      holeDiameter: '0.53 in',
      scatter: '20 %',
      blockShear: '40 ksi',
      blockUltimate: '31 ksi',
      fastenerUltimate: '150 ksi',
      screwMajorMin: '0.4876 in',
    },
    { torque: undefined, stretch: '0.006 in', fastenerStiffness: '2 Mlbf/in' },
    {
      torque: undefined,
      turnAngle: '60 deg',
      fastenerStiffness: '2 Mlbf/in',
      memberStiffness: '6 Mlbf/in',
    },
    { torque: undefined, shareOfProof: '75 %' },
  ],
  'cap-joint': [
    {
      embedding: '5 µm',
      warmRise: '80 K',
      crossBoltCount: 2,
      crossBoltPreload: '20 kN',
      girdleClamp: '10 kN',
      girdleShare: '20 %',
      registerSpan: '5 in',
    },
    {
      layers: [
        { thickness: '2 in', modulus: '30 Mpsi' },
        { thickness: '0.25 in', modulus: '14 Mpsi' },
      ],
    },
  ],
  'gas-cycle': [{ wallHeat: 'share', wallTemperature: undefined, wallShare: '20 %', gamma: 1.3 }],
  'main-loads': [
    { crankAngle: '30 deg', gravity: '1 g' },
    { compressionRatio: undefined, gaugePressure: '50 bar' },
  ],
  'bore-machining': [
    {
      mostAxisShift: '0.01 in',
      blockMaterial: 'aluminium',
      blockRise: '80 K',
      mostSlack: '0.01 in',
      bore: '4 in',
      stroke: '3.5 in',
      rodLength: '5.7 in',
      compressionRatio: 10,
      inputShaft: '7 in',
    },
    {
      chainPitch: undefined,
      pressureAngle: '20 deg',
      helix: '15 deg',
      backlashBefore: '0.004 in',
      leastBacklash: '0.002 in',
      blockMaterial: 'gray-iron',
      blockRise: '80 K',
    },
  ],
  clearance: [
    {
      overstand: '0.002 in',
      bearingWidth: '0.8 in',
      housingOutside: '4 in',
      housingModulus: '100 GPa',
      expansionDifference: '1e-5 1/K',
      crushRise: '80 K',
      load: '5000 lbf',
      viscosity: '10 mPa s',
      speed: '3000 rpm',
      housingLow: '2.6406 in',
      housingHigh: '2.6415 in',
      wallLow: '0.0946 in',
      wallHigh: '0.0949 in',
      journalLow: '2.4485 in',
      journalHigh: '2.4495 in',
    },
  ],
  'job-cost': [{ chance: '5 %', instead: '100 USD', besides: '500 USD', protection: '80 %' }],
}

/** One field after another set to an extreme, the rest as in the example. */
function* extremes(fields: Fields, example: Record<string, unknown>): Generator<[string, unknown]> {
  for (const [key, field] of Object.entries(fields)) {
    const { control } = field
    if (control.type === 'quantity') {
      const unit = (KINDS[control.kind] as Kind).metric
      for (const value of EXTREMES) yield [key, { ...example, [key]: { value, unit } }]
    }
    if (control.type === 'number') {
      for (const value of EXTREMES) yield [key, { ...example, [key]: value }]
    }
    if (control.type === 'choice') {
      for (const word of Object.keys(control.choices)) yield [key, { ...example, [key]: word }]
    }
    if (control.type === 'list' && Array.isArray(example[key])) {
      const [first, ...rest] = example[key] as Record<string, unknown>[]
      for (const [inner, row] of extremes(control.fields, first ?? {})) {
        yield [`${key}.0.${inner}`, { ...example, [key]: [row, ...rest] }]
      }
    }
  }
}

interface Said {
  readonly found: string
  readonly fits: string
}

/** Whether a refusal says a range with nothing in it, or one that the figure is in. */
function isSelfContradictory({ found, fits }: Said): boolean {
  const [, figure, unit = ''] = /^(-?[\d.e+-]+)(?: ([^(]+))?$/.exec(found) ?? []
  const ranges = [...fits.matchAll(/from (-?[\d.e+-]+) to (-?[\d.e+-]+) ?([^()]*)/g)]
  return ranges.some(([, low, high, of = '']) => {
    if (Number(low) > Number(high)) return true
    // Ranges are rounded to five digits.
    const inside = Number(figure) > Number(low) * 1.001 && Number(figure) < Number(high) * 0.999
    return of.trim() === unit.trim() && inside
  })
}

describe.each(WORKSHEETS.map((sheet) => [sheet.name, sheet] as const))('%s', (_, sheet) => {
  it('answers or refuses every extreme, and names one of its own inputs and what would fit', () => {
    const unnamed = new Set<string>()
    const broken = new Set<string>()
    const contradictory = new Set<string>()
    let refusals = 0
    const bases = [{}, ...(MORE[sheet.name] ?? [])].map((more) => ({ ...sheet.example, ...more }))
    for (const base of bases) expect(runWorksheet(sheet, base, 'us')).toHaveProperty('ok')
    for (const [key, raw] of bases.flatMap((base) => [...extremes(sheet.fields, base)])) {
      const outcome = runWorksheet(sheet, raw, 'metric')
      if ('problems' in outcome) {
        refusals += 1
        for (const problem of outcome.problems) {
          const { field, found, fits } = problem
          if (!Object.hasOwn(sheet.fields, field.split('.')[0] ?? ''))
            unnamed.add(`${key}: ${field}`)
          if (isSelfContradictory(problem)) contradictory.add(`${key}: ${field}: ${found}, ${fits}`)
        }
      } else if (/NaN|undefined/.test(JSON.stringify(outcome))) broken.add(key)
    }
    expect([...unnamed]).toEqual([])
    expect([...broken]).toEqual([])
    expect([...contradictory]).toEqual([])
    expect(refusals).toBeGreaterThan(0)
  })
})

describe('a count of cylinders that is none', () => {
  const sheet = WORKSHEETS.find(({ name }) => name === 'gas-cycle') as (typeof WORKSHEETS)[number]

  it.each([0, -8, 2.5, 400])('%d is refused as a count, not as a volume', (cylinders) => {
    const outcome = runWorksheet(sheet, { ...sheet.example, cylinders }, 'us')
    expect(outcome).toMatchObject({
      problems: [
        {
          field: 'cylinders',
          found: String(cylinders),
          fits: 'give a whole number from 1 to 24',
        },
      ],
    })
  })
})
