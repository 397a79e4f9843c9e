import { describe, expect, it } from 'vitest'
import { createApp } from '../../src/app.ts'
import { checkIn } from '../../src/check-in/check-in.ts'
import { readFolder } from '../../src/rulebook/read-folder.ts'
import { measuredQuery } from '../../src/shop-sheet/link-code.ts'
import { loadShopRules } from '../../src/shop-sheet/shop-rules.ts'
import { realDeps } from '../support/app.ts'
import { ANSWERS, check, engineOf, goodBlock } from './case.ts'

const files = readFolder(new URL('../../rules', import.meta.url).pathname)

/** What the file says for its reader, not for the person: why a threshold is what it is. */
const NOT_SAID = /(^|\.)(source|judged\.near\.coarse\.because)(\.|$)/

/** Every text of the file with the name of its own place before it: `‹main.passed› All …`. */
function marked(value: unknown, place: string, places: string[]): unknown {
  if (NOT_SAID.test(place)) return value
  if (typeof value === 'string') {
    places.push(place)
    return `‹${place}› ${value}`
  }
  if (typeof value !== 'object' || value === null) return value
  return Object.fromEntries(
    Object.entries(value).map(([name, one]) => [
      name,
      marked(one, place === '' ? name : `${place}.${name}`, places),
    ]),
  )
}

const each = (table: string, columns: readonly string[], text: string, mains = [1, 2, 3, 4, 5]) =>
  Object.fromEntries(
    mains.flatMap((main) => columns.map((column) => [`${table}.${main}.${column}`, text])),
  )
const HOUSING = ['fv', 'fl', 'fr', 'rv', 'rl', 'rr']
const JOURNAL = ['fv', 'fh', 'rv', 'rh']
const shift = { 'axis.1.told': '.004', 'axis.2.told': '.004' }
const box = { boxTop: '.002', boxRight: '0', boxBottom: '-.002', boxLeft: '0' }
const chain = {
  drive: 'chain',
  driveCentres: '5',
  chainPitch: '.375',
  crankTeeth: '21',
  camTeeth: '42',
}
const gears = { drive: 'gears', driveCentres: '3', pressureAngle: '20', gearBacklash: '.004' }
const journalLimits = { journalLow: '2.4480', journalHigh: '2.4490' }
const ODD = each('journal', JOURNAL, '2.4460', [3])

/** The good block without the fields that match. */
function without(pattern: RegExp, changes: Readonly<Record<string, string>> = {}) {
  const { fields } = goodBlock()
  const left = Object.entries(fields).filter(([name]) => !pattern.test(name))
  return { ...Object.fromEntries(left), ...changes }
}

const stands = (fields: Record<string, string>) =>
  check({ unit: 'in', fields })
    .odd.map(({ confirm }) => confirm)
    .join('; ')
const oddAlone = without(/^(housing|shell)/, ODD)
const twoOdd = { ...oddAlone, ...each('journal', JOURNAL, '2.4510', [5]) }

const small = each('housing', HOUSING, '.5', [1])

/** Readings that between them bring up everything that the check-in has to say. */
const READINGS: readonly Record<string, string>[] = [
  {},
  { 'journal.1.fv': '2.44845' },
  { 'journal.1.fv': '2.44845', 'journal.1.fh': '2.44845' },
  goodBlock().fields,
  goodBlock(journalLimits).fields,
  without(/^housing\.5/, { shellWall: '.0953', ...shift, ...box, boxShaft: '7', endFloat: '.006' }),
  without(/^(housingLow|housingHigh|shell)/, { shellWall: '.0953', ...box, ...chain }),
  goodBlock({ ...shift, ...gears, 'shell.1.uo': '.001', 'shell.2.c': '.00245' }).fields,
  goodBlock({ 'axis.1.told': '-.02', ...chain, 'line.3.x': '.001' }).fields,
  goodBlock({ ...each('line', ['x'], '0'), ...each('line', ['z'], '0'), 'line.1.z': '0' }).fields,
  goodBlock({ 'line.2.z': '4', 'line.3.z': '8', 'line.4.z': '12', 'line.5.z': '16' }).fields,
  without(/^line/, { ...each('line', ['p'], '.001'), ...each('line', ['r'], '.0015') }),
  without(/^line/, { ...each('line', ['p'], '.009'), ...each('line', ['r'], '.0015') }),
  goodBlock({ ...ODD, 'housing.4.fv': '2.6424' }).fields,
  goodBlock({ ...ODD, ...journalLimits }).fields,
  goodBlock({ ...ODD, ...journalLimits, ...each('housing', HOUSING, '2.6424', [4, 3]) }).fields,
  goodBlock(each('shell', ['uc', 'lc'], '.0983', [2])).fields,
  goodBlock({ 'gauge-bore': '.0004' }).fields,
  goodBlock(each('shell', ['uc', 'lc'], '.0951', [2])).fields,
  goodBlock({ ...each('shell', ['c'], '.0021'), 'shell.2.c': '.0041' }).fields,
  goodBlock(each('housing', HOUSING, '2.6390', [2])).fields,
  oddAlone,
  { ...oddAlone, stands: stands(oddAlone) },
  { ...twoOdd, stands: stands(twoOdd) },
  goodBlock(each('journal', JOURNAL, '3.2')).fields,
  // Beyond what can be: a bore of half an inch, a shell that stands 0.05 in proud, one two inches
  // thick, a row that bends by five, a crown of three yards, an axis a third of an inch higher.
  { ...small, stands: check({ unit: 'in', fields: small }).suspects[0]?.confirm ?? '' },
  goodBlock({ 'shell.1.uo': '.05' }).fields,
  without(/^shell/, { shellWall: '2' }),
  { 'axis.1.cb': '120', 'axis.1.ca': '120', 'axis.1.db': '2.6412', 'axis.1.da': '2.6412' },
  { 'axis.1.told': '.3' },
  goodBlock({ 'line.3.y': '5' }).fields,
  goodBlock({ 'journal.1.fv': '2.7', 'journal.2.fv': 'abc' }).fields,
  goodBlock({ 'housing.1.fv': '2.4485', 'journal.1.fv': '2.6412', 'journal.1.fh': '2.6412' })
    .fields,
  ...['2.412', '2.6412 mm', '2.4612', '22.6412', '26.412', '67.086', '2.6662', '2.9412'].map(
    (typed) => goodBlock({ 'housing.4.fl': typed }).fields,
  ),
]

const LINK = new URLSearchParams(ANSWERS).toString()

const rulesWith = (changed: unknown) =>
  loadShopRules(new Map([...files, ['check-in.json', JSON.stringify(changed)]]))

async function allSaid(changed: unknown): Promise<string> {
  const app = createApp({ ...realDeps(), shopRules: rulesWith(changed) })
  const said: string[] = []
  for (const fields of READINGS) {
    for (const unit of ['in', 'mm'] as const) {
      const link = `${LINK}&${measuredQuery({ unit, fields })}`
      for (const path of ['/check-in', '/check-in.csv']) {
        said.push(await (await app.request(`${path}?${link}`)).text())
      }
    }
  }
  return said.join('\n')
}

describe('rules/check-in.json', () => {
  it('has no text that the check-in does not say', async () => {
    const places: string[] = []
    const said = await allSaid(marked(JSON.parse(files.get('check-in.json') as string), '', places))
    expect(places.length).toBeGreaterThan(100)
    expect(places.filter((place) => !said.includes(`‹${place}›`))).toEqual([])
  })
  it('says nothing of its own beside it and rules/limits.json', () => {
    const changed = marked(JSON.parse(files.get('check-in.json') as string), '', [])
    const limits = files.get('limits.json') as string
    const rules = rulesWith(changed)
    const strange = READINGS.flatMap((fields) => {
      const report = checkIn({ unit: 'in', fields }, engineOf(), rules, 'us')
      const { overall, mains, whole, suspects, notes } = report
      const parts = [...mains, ...whole]
      return [
        ...[overall.title, overall.words, ...overall.reasons, ...overall.advice, ...notes],
        ...mains.flatMap((one) => [one.words, one.short, ...one.reasons, ...one.advice]),
        ...whole.map(({ title }) => title),
        ...parts.flatMap(({ worked }) => worked.map(({ label }) => label)),
        ...parts.flatMap(({ judged }) =>
          judged.flatMap((one) => [one.title, one.words, one.reason, one.advice]),
        ),
        ...suspects.map(({ question }) => question),
      ].filter(
        (text) =>
          text !== '' && !text.startsWith('‹') && !limits.includes(text.split(', ')[0] as string),
      )
    })
    expect([...new Set(strange)]).toEqual([])
  })
})
