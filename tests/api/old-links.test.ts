import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { readAnswers } from '../../shared/answers.ts'
import { talkFromQuery, talkToQuery } from '../../src/talk/state.ts'

interface OldLink {
  readonly name: string
  readonly query: string
  readonly answers: Readonly<Record<string, unknown>>
  readonly parked?: Readonly<Record<string, unknown>>
  /** What the last turn changed; null for no answer before. */
  readonly before?: Readonly<Record<string, unknown>>
  readonly other?: Readonly<Record<string, string>>
  readonly problems?: readonly (readonly [string, string])[]
  readonly version?: string
}

/** Links that are out in the world. A row is never changed: a link that was given out must open for ever. */
const links: readonly OldLink[] = JSON.parse(
  readFileSync(new URL('old-links.json', import.meta.url), 'utf8'),
)

describe('old links', () => {
  it.each(links.map((link) => [link.name, link] as const))('%s', (_, link) => {
    const { state, problems, other, version } = talkFromQuery(link.query)
    expect(state.answers).toEqual(link.answers)
    expect(state.parked).toEqual(link.parked ?? {})
    const before = [...state.before].map(([key, answer]) => [key, answer ?? null])
    expect(before.sort()).toEqual(Object.entries(link.before ?? {}).sort())
    expect([...other].sort()).toEqual(Object.entries(link.other ?? {}).sort())
    expect(problems.map(({ field, code }) => [field, code])).toEqual(link.problems ?? [])
    expect(version).toBe(link.version)
  })

  it('written anew, hold the same case', () => {
    for (const { query } of links) {
      const { state } = talkFromQuery(query)
      expect(talkFromQuery(talkToQuery(state, '1.0.0')).state).toEqual(state)
    }
  })

  it('say what the dictionary still takes', () => {
    for (const { answers } of links) expect(readAnswers(answers).problems).toEqual([])
  })
})
