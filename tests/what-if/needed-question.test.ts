import { describe, expect, it } from 'vitest'
import { readAnswers, UNKNOWN } from '../../shared/answers.ts'
import { toQuery } from '../../shared/share-link.ts'
import { assess } from '../../src/assess.ts'
import { conversationPage } from '../../src/pages/conversation.ts'
import { app, rulebook } from '../support/app.ts'
import { viewWith } from '../support/conversation-views.ts'

const FIRST = { induction: 'naturally-aspirated', use: 'street', capFastening: 'two-bolt' }
const REST = { peakRpm: '6000 rpm', compressionRatio: 9.5, layout: 'v8-cross-plane' }

const next = async (raw: Record<string, unknown>, talking: boolean) => {
  const { answers } = readAnswers(raw)
  return (await assess(rulebook, answers, { withoutTurningPoints: true, talking })).next
}

describe('while a question is needed', () => {
  it.each([
    ['nothing is said', {}],
    ['a few things are said', FIRST],
    ['one is not known', { ...FIRST, peakRpm: UNKNOWN }],
    ['nothing is needed any more', { ...FIRST, ...REST }],
  ])('the conversation asks as the assessment does, when %s', async (_, raw) => {
    expect(await next(raw, true)).toEqual(await next(raw, false))
  })

  it('each answer, known or not, leaves one less of them', async () => {
    let said: Record<string, unknown> = {}
    let needed = (await next(said, true))?.needed ?? 0
    expect(needed).toBeGreaterThan(3)
    for (const [key, answer] of Object.entries({ ...FIRST, ...REST, peakRpm: UNKNOWN })) {
      said = { ...said, [key]: answer }
      const now = await next(said, true)
      expect(now?.needed).toBe(needed - 1)
      expect(now?.left).toBeGreaterThanOrEqual(now?.needed ?? 0)
      needed -= 1
    }
    expect(needed).toBe(0)
  })

  it('the page says how many are needed, and makes no count of the others', () => {
    const page = String(conversationPage(viewWith({ needed: 4, left: 30 })))
    expect(page).toContain('<span class="stamp">4</span> needed first')
    expect(page).not.toContain('<span class="stamp">30</span>')
  })
})

describe('a needed answer that is missing', () => {
  const CASE =
    'boost=10psi&bore=4.03in&capFastening=two-bolt&fuel=e85&induction=turbocharged&invested=6000USD&layout=v8-cross-plane&peakRpm=6200rpm&stroke=3.48in&use=street-strip'
  const textOf = async (path: string): Promise<string> =>
    (await (await app.request(path)).text()).replace(/<[^>]+>/g, ' ').replace(/\s+/g, ' ')

  it('is what every page names first', async () => {
    expect(await textOf(`/?${CASE}`)).toContain('What is the compression ratio?')
    expect(await textOf(`/call?${CASE}`)).toMatch(
      /An answer that a call needs is assumed ?; find this one out first: Compression ratio/,
    )
    expect(await textOf(`/sheet?${CASE}`)).toMatch(/Still open: compression ratio (and|\.)/)
    expect(await textOf(`/forum?${CASE}`)).toMatch(
      /Assumed, because nobody said it: - Compression ratio:/,
    )
  })

  it.each([
    ['is named before what weighs more', CASE, 'compressionRatio'],
    ['once given, leaves what is asked next', `${CASE}&compressionRatio=9`, undefined],
  ])('%s, and settles the call as the guide asks', async (_, link, key) => {
    const { answers } = readAnswers(Object.fromEntries(new URLSearchParams(link)))
    const { call, next } = await assess(rulebook, answers, { withoutTurningPoints: true })
    expect(next).not.toBeNull()
    expect(call.settledBy).toBe(next?.fact)
    if (key) expect(next?.fact).toBe(key)
    else expect(next?.needed).toBe(0)
  })
})

describe('figures of a diesel without a fuel', () => {
  const DIESEL = {
    ...{ layout: 'inline-6', bore: '4.02 in', stroke: '4.72 in', capFastening: 'two-bolt' },
    ...{ induction: 'turbocharged', compressionRatio: 16.5, boost: '55 psi' },
    ...{ peakRpm: '3500 rpm', use: 'towing' },
  }
  const found = async (raw: Record<string, unknown>) =>
    assess(rulebook, readAnswers(raw).answers, { withoutTurningPoints: true })

  it('get no call and no advice on knock, but the question which fuel', async () => {
    const { call, cautions, contradictions, next } = await found(DIESEL)
    expect(call.confidence).toBe('withheld')
    expect(contradictions[0]?.text).toContain('diesel')
    expect(contradictions[0]?.between).toEqual(['fuel', 'compressionRatio', 'boost'])
    expect(cautions.filter(({ rule }) => rule.startsWith('detonation'))).toEqual([])
    expect(next).toMatchObject({ fact: 'fuel', needed: 1 })
  })

  it('are asked for the fuel before anything else, but not twice', async () => {
    const { use, ...unsaid } = DIESEL
    expect((await found(unsaid)).next).toMatchObject({ fact: 'fuel', needed: 2 })
    expect((await found({ ...unsaid, fuel: UNKNOWN })).next).toMatchObject({ fact: 'use' })
    expect((await found({ ...DIESEL, fuel: 'methanol' })).call.confidence).not.toBe('withheld')
  })

  it('offer the fuel to be answered, not to be changed', async () => {
    const link = toQuery(readAnswers(DIESEL).answers, rulebook.version)
    const page = await (await app.request(`/call?${link}`)).text()
    expect(page).toContain('Answer: Fuel</a>')
    expect(page).toContain('Change: Compression ratio</a>')
  })
})
