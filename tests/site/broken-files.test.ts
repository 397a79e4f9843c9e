import { readFileSync, writeFileSync } from 'node:fs'
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

const BROKEN: readonly [string, () => void, RegExp][] = [
  [
    'a rule file that is not JSON',
    () => writeFileSync(files.path('rules/main-caps.json'), '[{"id": '),
    /main-caps\.json.*not JSON/,
  ],
  [
    'a wrong type in the rules',
    () =>
      spoil('rules/holding.json', (json) => ({ ...json, [Object.keys(json)[0] as string]: 'x' })),
    /holding\.json.*: .+/,
  ],
  [
    'an unknown key in the costs',
    () => spoil('rules/cost.json', (json) => ({ ...json, typo: 1 })),
    /cost\.json.*typo/,
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
})
