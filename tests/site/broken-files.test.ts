import { readFileSync, rmSync, writeFileSync } from 'node:fs'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { operatorCopy, spawnServer, startServer } from '../support/server-process.ts'

let files: ReturnType<typeof operatorCopy>
beforeEach(() => {
  files = operatorCopy()
})
afterEach(() => files.remove())

/** Change one value of a JSON file, or write it anew. */
function spoil(name: string, change: (json: Record<string, unknown>) => unknown): void {
  const json = JSON.parse(readFileSync(files.path(name), 'utf8')) as Record<string, unknown>
  writeFileSync(files.path(name), JSON.stringify(change(json)))
}

interface Priced {
  readonly id: string
  readonly price: object
}

function spoilPrice(id: string, price: object): void {
  spoil('rules/cost.json', ({ items, ...rest }) => ({
    ...rest,
    items: (items as Priced[]).map((item) => (item.id === id ? { ...item, price } : item)),
  }))
}

function spoilAssumed(key: string, take: object): void {
  spoil('rules/assumptions.json', (json) => ({
    ...json,
    [key]: { ...(json[key] as object), take },
  }))
}

function dear(parts: unknown): unknown {
  const [first, ...rest] = parts as Priced[]
  return [{ ...first, price: { ...first?.price, high: 1e30 } }, ...rest]
}

const BROKEN: readonly [string, () => void, RegExp][] = [
  [
    'a rule file that is not JSON',
    () => writeFileSync(files.path('rules/main-caps.json'), '[{"id": '),
    /main-caps\.json.*not JSON/,
  ],
  [
    'a page in another encoding',
    () => writeFileSync(files.path('content/method.md'), Buffer.from('# Bor\u00e9', 'latin1')),
    /content\/method\.md: is not UTF-8/,
  ],
  [
    'a rule without an end to its conditions',
    () =>
      writeFileSync(
        files.path('rules/deep.json'),
        `[{"id":"deep","conditions":${'{"all":['.repeat(3000)}${']}'.repeat(3000)}}]`,
      ),
    /deep\.json: deep: is nested deeper than 32/,
  ],
  [
    'a wrong type in the rules',
    () =>
      spoil('rules/holding.json', (json) => ({ ...json, [Object.keys(json)[0] as string]: 'x' })),
    /holding\.json.*: .+/,
  ],
  [
    'a place in a sentence of the sheet that nothing fills',
    () => spoil('rules/sheet.json', (json) => ({ ...json, parts: { quoted: 'Plus {{tax}}.' } })),
    /sheet\.json: parts\.quoted: no place is called \{\{tax\}\}/,
  ],
  [
    'a place in a sentence of the check-in that nothing fills',
    () =>
      spoil('rules/check-in.json', (json) => ({
        ...json,
        gaugesUnsaid: 'Empty: {{gages}}, usual.',
      })),
    /check-in\.json: gaugesUnsaid: no place is called \{\{gages\}\}; there is \{\{gauges\}\}/,
  ],
  [
    'an unknown key in the costs',
    () => spoil('rules/cost.json', (json) => ({ ...json, typo: 1 })),
    /cost\.json.*typo/,
  ],
  [
    'a price below nothing',
    () => spoilPrice('main-studs', { low: -70, likely: 95, high: 160 }),
    /cost\.json: items\.0\.price\.low: .*>=0/,
  ],
  [
    'a price beyond all reason',
    () => spoilPrice('main-studs', { low: 70, likely: 95, high: 1e30 }),
    /cost\.json: items\.0\.price\.high: .*<=10000000/,
  ],
  [
    'a price whose ends are the wrong way round',
    () => spoilPrice('main-studs', { low: 160, likely: 95, high: 70 }),
    /cost\.json: items\.0\.price: low ≤ likely ≤ high/,
  ],
  [
    'a currency that is worth something else than itself',
    () => spoil('rules/cost.json', (json) => ({ ...json, rates: { USD: 2, EUR: 0.92 } })),
    /cost\.json: rates: .*own currency is 1/,
  ],
  [
    'an assumed price below nothing',
    () => spoilAssumed('studsPrice', { value: 95, low: -70, high: 160 }),
    /assumptions\.json: studsPrice: take: -70 is not from 0 to 10000000/,
  ],
  [
    'an assumed figure outside its own ends',
    () => spoilAssumed('studsPrice', { value: 300, low: 70, high: 160 }),
    /assumptions\.json: studsPrice: take: 70, 300, 160: low ≤ value ≤ high/,
  ],
  [
    'a price of an often forgotten part beyond all reason',
    () => spoil('rules/parts.json', ({ parts, ...rest }) => ({ ...rest, parts: dear(parts) })),
    /parts\.json: parts\.0\.price\.high: .*<=10000000/,
  ],
  [
    'words of the trade that are not JSON',
    () => writeFileSync(files.path('rules/vocabulary/clues.json'), '['),
    /vocabulary\/clues\.json: is not JSON: .+/,
  ],
  [
    'words for a fact that there is none of',
    () => spoil('rules/vocabulary/names.json', (json) => ({ ...json, colour: ['paint'] })),
    /vocabulary\/names\.json: colour: is no fact key/,
  ],
  [
    'another dictionary of facts than was built in',
    () =>
      spoil('rules/facts.json', (json) => ({
        ...json,
        boost: { ...(json.boost as object), high: 75 },
      })),
    /facts\.json: boost\.high: is “75”, and was built as “.+”; facts are built in: .*npm start/,
  ],
  [
    'a page of a fact that is missing',
    () => rmSync(files.path('content/questions/bore.md')),
    /questions\/bore\.md: the file is missing/,
  ],
  [
    'a page without a text',
    () => writeFileSync(files.path('content/method.md'), '---\ntitle: Method\n---\n'),
    /method\.md: the file has no text/,
  ],
  [
    'an index that names an explanation which is missing',
    () => rmSync(files.path('content/learn/girdles.md')),
    /learn\.md names learn\/girdles\.md: the file is missing/,
  ],
  [
    'limits that are missing a part',
    () => spoil('rules/limits.json', () => ({})),
    /limits\.json: \w+: .+/,
  ],
  [
    'sources that are not JSON',
    () => writeFileSync(files.path('rules/sources.json'), 'no'),
    /sources\.json: .*JSON/,
  ],
  [
    'a shop that is not JSON',
    () => writeFileSync(files.path('content/shops/millpond.json'), '{'),
    /millpond\.json: is not JSON: .+/,
  ],
  [
    'a shop with an address that is none',
    () => spoil('content/shops/millpond.json', (json) => ({ ...json, origins: ['javascript:1'] })),
    /millpond\.json: origins\.0: .+/,
  ],
]

describe('broken files of an operator', () => {
  it.each(BROKEN)('%s stops the start with file, place and reason', async (_, spoilIt, says) => {
    spoilIt()
    const { output, ended } = spawnServer(files.env)
    expect(await ended).toBe(1)
    expect(output.log).toMatch(/^Mainstay cannot start: /)
    expect(output.log).toMatch(says)
    expect(output.log).not.toContain('    at ')
    expect(output.out).toBe('')
  })

  it('are none where an editor put a mark of byte order before them', async () => {
    for (const name of ['rules/cost.json', 'content/method.md']) {
      writeFileSync(files.path(name), `\ufeff${readFileSync(files.path(name), 'utf8')}`)
    }
    const server = await startServer(files.env)
    const method = await (await fetch(`${server.origin}/method`)).text()
    expect(method).not.toContain('\ufeff')
    // What stands before the text of a page is for us.
    expect(method).not.toContain('title: ')
    server.child.kill('SIGTERM')
    expect(await server.ended).toBe(0)
  })

  it('are refused when read again, the last good ones kept; good ones are taken', async () => {
    const server = await startServer(files.env)
    const version = async () =>
      ((await (await fetch(`${server.origin}/healthz`)).json()) as { version: string }).version
    const before = await version()
    const good = readFileSync(files.path('rules/changes.json'), 'utf8')
    writeFileSync(files.path('rules/changes.json'), '{')
    server.child.kill('SIGHUP')
    await server.says(/"level":"error","reload":"the last good files are kept".*changes\.json/)
    expect(await version()).toBe(before)
    const changes = JSON.parse(good) as { version: string }[]
    const next = { ...changes.at(-1), version: '987.6.5' }
    writeFileSync(files.path('rules/changes.json'), JSON.stringify([...changes, next]))
    server.child.kill('SIGHUP')
    await server.says(/"reload":"done"/)
    expect(await version()).toBe('987.6.5')
    server.child.kill('SIGTERM')
    expect(await server.ended).toBe(0)
  })

  it('are words of a shop’s own too: read at the start and again, the last good ones kept', async () => {
    const own = 'rules/vocabulary/choices-own.json'
    const add = (word: string) =>
      writeFileSync(files.path(own), JSON.stringify({ fuel: { methanol: [word] } }))
    add('jungle sauce')
    const server = await startServer(files.env)
    const fuelIn = async (text: string) => {
      const response = await fetch(`${server.origin}/api/understand`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify({ text }),
      })
      return ((await response.json()) as { facts: { fuel?: string } }).facts.fuel
    }
    const message = (word: string) =>
      fetch(`${server.origin}/?said=${encodeURIComponent(`runs on ${word}`)}&fuel=methanol`)
    expect(await fuelIn('runs on jungle sauce')).toBe('methanol')
    expect(await (await message('jungle sauce')).text()).toContain('from “jungle sauce”')
    add('swamp water')
    server.child.kill('SIGHUP')
    await server.says(/"reload":"done"/)
    expect(await fuelIn('runs on swamp water')).toBe('methanol')
    expect(await fuelIn('runs on jungle sauce')).toBeUndefined()
    writeFileSync(files.path(own), JSON.stringify({ fuel: { diesel: ['oil'] } }))
    server.child.kill('SIGHUP')
    await server.says(/"reload":"the last good files are kept".*choices-own\.json: fuel\.diesel: /)
    expect(await fuelIn('runs on swamp water')).toBe('methanol')
    server.child.kill('SIGTERM')
    expect(await server.ended).toBe(0)
  })

  it('with a page missing change no page when read again, not even one nobody opened', async () => {
    const server = await startServer(files.env)
    rmSync(files.path('content/learn/girdles.md'))
    writeFileSync(files.path('content/learn/register.md'), '# Half a set\n')
    server.child.kill('SIGHUP')
    await server.says(/"reload":"the last good files are kept".*girdles\.md: the file is missing/)
    const girdles = await fetch(`${server.origin}/learn/girdles`)
    expect(girdles.status).toBe(200)
    const register = await (await fetch(`${server.origin}/learn/register`)).text()
    expect(register).not.toContain('Half a set')
    server.child.kill('SIGTERM')
    expect(await server.ended).toBe(0)
  })
})
