import { describe, expect, it } from 'vitest'
import { methodPage } from '../../src/pages/method.ts'
import { readSources } from '../../src/pages/source-list.ts'
import { content } from '../content/read-content.ts'
import { ruleTexts } from '../support/rulebook.ts'

const sources = readSources(ruleTexts())
const page = String(methodPage({ content, sources, units: 'us', link: '' }))
const escaped = (text: string) =>
  text.replaceAll('&', '&amp;').replaceAll("'", '&#39;').replaceAll('"', '&quot;')

describe('method page', () => {
  it('leads to its own parts, and folds the sources away topic by topic', () => {
    const places = [...page.matchAll(/<li><a href="#([^"]+)"/g)].map(([, id]) => id)
    expect(places.length).toBeGreaterThan(3)
    expect(places.filter((id) => !page.includes(`id="${id}"`))).toEqual([])
    expect(page.match(/<details class="prints" id="sources-/g)?.length).toBeGreaterThan(5)
  })

  it('gives every source with its use and how it was read', () => {
    const missing = sources.filter(
      ({ title, usedFor, seen }) =>
        ![title, usedFor, seen].every((part) => page.includes(escaped(part))),
    )
    expect(missing).toEqual([])
  })

  it('counts what is published, from memory and practice', () => {
    for (const kind of ['published', 'memory', 'practice']) {
      const count = sources.filter((source) => source.kind === kind).length
      expect(page).toMatch(new RegExp(`\\b${count} (?:from |common )?${kind}`))
    }
  })

  it.each([
    'not a finite-element study',
    'hydrodynamic film',
    'A crank bends',
    'A block flexes',
    'not a failure probability',
  ])('says its limit: %s', (limit) => expect(page).toContain(limit))

  it('ends with the cautions', () => {
    for (const word of ['Lifting', 'Tightening', 'Turning parts', 'Detonation', 'Heat, solvents']) {
      expect(page).toMatch(new RegExp(`id="cautions-[^"]+">${word}`))
    }
  })

  it('has ids that are its own', () => {
    const ids = [...page.matchAll(/ id="([^"]+)"/g)].map((match) => match[1])
    expect(ids).toEqual([...new Set(ids)])
  })
})
