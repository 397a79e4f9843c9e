import { describe, expect, it } from 'vitest'
import { readSources } from '../../src/pages/source-list.ts'
import { ruleTexts } from '../support/rulebook.ts'

const sources = readSources(ruleTexts())

describe('source records', () => {
  it('stand in order of their ids, each once', () => {
    const ids = sources.map(({ id }) => id)
    expect(ids).toEqual([...new Set(ids)].sort())
  })

  it('never give as published what was not read', () => {
    const wrong = sources.filter(
      ({ kind, seen }) => kind === 'published' && /not at hand|^$/.test(seen),
    )
    expect(wrong).toEqual([])
  })

  it('name an author or a standard for whatever is from memory', () => {
    const wrong = sources.filter(({ kind, author }) => kind === 'memory' && author === '')
    expect(wrong).toEqual([])
  })

  it('refuse a record with a field too many or too few', () => {
    const [first] = sources
    const read = (record: unknown) =>
      readSources(new Map([['sources/gas.json', JSON.stringify([record])]]))
    expect(() => read({ ...first, more: 1 })).toThrow(/^sources\/gas\.json: [\s\S]*more/)
    expect(() => read({ ...first, usedFor: undefined })).toThrow(/usedFor/)
    expect(() => readSources(new Map())).toThrow(/missing/)
  })

  it('cover every work that a rule cites', () => {
    const cites = [...ruleTexts()].flatMap(([name, text]) =>
      name.startsWith('sources/')
        ? []
        : [...text.matchAll(/"cite":\s*"((?:[^"\\]|\\.)*)"/g)].map((match) => match[1] as string),
    )
    const works = sources.flatMap(({ author, title, id }) => [
      ...author.split(', ').map((name) => name.split(' ').at(-1) ?? ''),
      title.split(/[,:]/)[0] ?? '',
      id,
    ])
    const marks = works.filter((work) => work.length > 2)
    expect(cites.length).toBeGreaterThan(3)
    expect(cites.filter((cite) => !marks.some((mark) => cite.includes(mark)))).toEqual([])
  })
})
