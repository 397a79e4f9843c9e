import { describe, expect, it } from 'vitest'
import type { Rulebook } from '../../src/rulebook/load.ts'
import type { Rule } from '../../src/rulebook/schema.ts'
import { sinceText, sinceVersion } from '../../src/what-if/since-version.ts'
import { rulebook, STREET_V8, said } from '../support/rulebook.ts'

const RACE = said({ ...STREET_V8, compressionRatio: 12.4, fuel: 'race-gasoline' })
const first = {
  version: '1.0.0',
  date: '2026-11-25',
  area: 'whole rulebook',
  effect: 'First rulebook.',
}

/** A later rulebook: 13:1 has become 12:1, and a text was mended after that. */
function later(): Rulebook {
  const rule = rulebook.rules.find(({ id }) => id === 'compression-13-on-ordinary-caps') as Rule
  const text = JSON.stringify(rule).replace('"value":13', '"value":12')
  const changed = JSON.parse(text) as Rule
  const before = rulebook.rules.find(({ id }) => id === 'estimate-only') as Rule
  return {
    ...rulebook,
    version: '1.1.0',
    rules: rulebook.rules.map((one) => (one.id === rule.id ? changed : one)),
    changes: [
      first,
      {
        version: '1.0.9',
        date: '2027-01-10',
        area: 'texts',
        effect: 'Says better what the estimate leaves out.',
        was: { [before.id]: { ...before, because: 'This is an estimate.' } },
      },
      {
        version: '1.1.0',
        date: '2027-02-01',
        area: 'main caps',
        effect: 'Cast caps give way at 12:1 where it was 13:1.',
        was: { [rule.id]: rule },
      },
    ],
  }
}

describe('a link that was made with an older rulebook', () => {
  it.each([undefined, rulebook.version])('nothing is said of version %s', async (version) => {
    expect(await sinceVersion(RACE, version, rulebook)).toBeUndefined()
  })

  it('says that the call has changed, and by which rule', async () => {
    const since = await sinceVersion(RACE, '1.0.0', later())
    expect(since?.now).toBe('steel-caps')
    expect(since?.then).toBe('keep-caps-and-bolts')
    expect(since?.because).toEqual([{ version: '1.1.0', rule: 'compression-13-on-ordinary-caps' }])
    const text = since ? sinceText(since, later()) : ''
    expect(text).toMatch(
      /was “Keep the caps and the fasteners” and is now “Fit steel caps with studs”/,
    )
    expect(text).toMatch(/About 13:1 on caps of no known quality/)
  })

  it('says that the call is the same where the changes do not touch it', async () => {
    const since = await sinceVersion(said(STREET_V8), '1.0.0', later())
    expect(since?.then).toBe(since?.now)
    expect(since?.changes.map(({ version }) => version)).toEqual(['1.0.9', '1.1.0'])
    expect(since ? sinceText(since, later()) : '').toBe('The call is the same by both.')
  })

  it('looks only at the changes since the link', async () => {
    const since = await sinceVersion(RACE, '1.0.9', later())
    expect(since?.changes.map(({ version }) => version)).toEqual(['1.1.0'])
    expect(since?.because).toHaveLength(1)
  })

  it('a rule that is new since then counts as a change', async () => {
    const book = later()
    const added = book.changes.map((change) =>
      change.version === '1.1.0'
        ? { ...change, was: { 'compression-13-on-ordinary-caps': null } }
        : change,
    )
    const since = await sinceVersion(RACE, '1.0.9', { ...book, changes: added })
    expect([since?.then, since?.now]).toEqual(['keep-caps-and-bolts', 'steel-caps'])
  })

  it.each(['0.9.0', '7.0.0', 'yesterday'])('does not guess at version %s', async (version) => {
    const since = await sinceVersion(RACE, version, later())
    expect(since?.known).toBe(false)
    expect(since?.then).toBe(since?.now)
    expect(since ? sinceText(since, later()) : '').toMatch(/not listed here/)
  })
})
