import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { fromOperatorFiles } from '../src/operator-files.ts'
import { readFolder } from '../src/rulebook/read-folder.ts'

const root = new URL('..', import.meta.url).pathname
const read = () => ({
  rules: readFolder(`${root}rules`),
  shops: readFolder(`${root}content/shops`),
  content: (path: string) => readFileSync(`${root}content/${path}`, 'utf8'),
})

/** The first key of the first object once more, before itself: JSON.parse keeps what stood there. */
function repeatFirstKey(files: Map<string, string>, name: string): string {
  const [, key] = /\{\s*("[^"]+")\s*:/.exec(files.get(name) as string) as unknown as [
    string,
    string,
  ]
  files.set(name, (files.get(name) as string).replace('{', `{${key}: 0, `))
  return key
}

describe('a key that stands twice in one object', () => {
  it.each([
    ...['money.json', 'cost.json', 'facts.json', 'limits.json', 'sheet.json'],
    ...['vocabulary/units.json', 'sources/joint.json'],
  ])('of rules/%s is refused with file, key and line', (name) => {
    const files = read()
    const key = repeatFirstKey(files.rules, name)
    const words = `${name}: a key stands twice in one object: ${key} (line `
    expect(() => fromOperatorFiles(files)).toThrow(words)
  })

  it('of a shop is refused, too', () => {
    const files = read()
    const name = [...files.shops.keys()].find((one) => one.endsWith('.json')) as string
    const key = repeatFirstKey(files.shops, name)
    const words = `${name}: a key stands twice in one object: ${key} (line `
    expect(() => fromOperatorFiles(files)).toThrow(words)
  })

  it('is fine in objects beside each other', () => {
    expect(fromOperatorFiles(read()).rulebook.rules.length).toBeGreaterThan(0)
  })
})
