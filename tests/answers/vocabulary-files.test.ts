import { describe, expect, it } from 'vitest'
import { createReader } from '../../src/answers/read-message.ts'
import { VocabularyError, vocabularyFromFiles } from '../../src/answers/vocabulary-files.ts'
import { readerWith, readMessage, vocabularyFile, withVocabulary } from '../support/reader.ts'
import { ruleTexts } from '../support/rulebook.ts'

const NAMES = [...ruleTexts().keys()].filter((name) => name.startsWith('vocabulary/'))

function faultsOf(texts: ReadonlyMap<string, string>): readonly string[] {
  try {
    vocabularyFromFiles(texts)
  } catch (error) {
    if (error instanceof VocabularyError) return error.faults
    throw error
  }
  return []
}

describe('a vocabulary of one’s own', () => {
  it('adds a shop’s words to the shipped ones', () => {
    const choices = vocabularyFile<{ fuel: { methanol: string[] } }>('choices-plan.json')
    const fuel = { ...choices.fuel, methanol: [...choices.fuel.methanol, 'jungle sauce'] }
    const read = readerWith({ 'choices-plan.json': { ...choices, fuel } })
    expect(read('runs on jungle sauce').facts).toEqual({ fuel: 'methanol' })
    expect(readMessage('runs on jungle sauce').facts).toEqual({})
  })

  it('may stand in files of its own, beside the shipped ones', () => {
    const read = readerWith({
      'choices-own.json': { fuel: { methanol: ['jungle sauce'] } },
      'cues-own.json': [{ fact: 'boost', phrases: ['huff'] }],
    })
    const text = 'jungle sauce, huff of 14 psi'
    expect(read(text).facts).toMatchObject({ fuel: 'methanol', boost: { value: 14, unit: 'psi' } })
    expect(read('runs on methanol').facts).toEqual(readMessage('runs on methanol').facts)
  })

  it.each<[string, string, unknown, RegExp]>([
    [
      'a fact that is none',
      'cues-plan.json',
      [{ fact: 'colour', phrases: ['blue'] }],
      /: 0\.fact: /,
    ],
    [
      'a choice that is none',
      'choices-own.json',
      { fuel: { diesel: ['oil'] } },
      /: fuel\.diesel: /,
    ],
    [
      'a unit that is none',
      'units.json',
      spoilt('units.json', 'units', { furlong: ['furlong'] }),
      /: units\.furlong: .*psi/,
    ],
    [
      'an answer that its fact does not take',
      'units.json',
      spoilt('units.json', 'fixedFigures', [
        { fact: 'salesTax', answer: 'much', phrases: ['tax'] },
      ]),
      /: fixedFigures\.0\.\w+: /,
    ],
    ['a list that is none', 'markers.json', spoilt('markers.json', 'past', 'was'), /: past: /],
    ['a part that is unknown', 'spelling.json', spoilt('spelling.json', 'slips', {}), /: .*slips/],
    [
      'a name that no file has',
      'slang.json',
      {},
      /: no file of the vocabulary is called that; use .*choices-\*/,
    ],
  ])('with %s is refused by file, place and reason', (_, name, json, says) => {
    const faults = faultsOf(withVocabulary({ [name]: json }))
    expect(faults.length).toBeGreaterThan(0)
    for (const fault of faults) {
      expect(fault).toContain(`vocabulary/${name}: `)
      expect(fault).toMatch(says)
    }
  })

  it('names every broken file at once', () => {
    const texts = ruleTexts().set('vocabulary/names.json', '{').set('vocabulary/noise.json', '{}')
    texts.delete('vocabulary/words.json')
    const faults = faultsOf(texts)
    for (const name of ['names', 'noise', 'words']) {
      expect(faults.filter((fault) => fault.startsWith(`vocabulary/${name}.json: `))).toHaveLength(
        1,
      )
    }
    for (const name of NAMES) texts.delete(name)
    expect(faultsOf(texts).join('\n')).toMatch(/choices-\*\.json: the file is missing/)
  })

  it('is the same whatever the order in which its files are found', () => {
    const turned = new Map([...ruleTexts()].reverse())
    expect(JSON.stringify(vocabularyFromFiles(turned))).toBe(
      JSON.stringify(vocabularyFromFiles(ruleTexts())),
    )
  })

  it('with a file emptied is refused when it is read, or reads without a fault', () => {
    const text = 'two bolt iron v8, half inch thirteen studs, 12 psi, why? $2,000 in it, not steel'
    let read = 0
    for (const name of NAMES.map((path) => path.replace('vocabulary/', ''))) {
      const isList = Array.isArray(vocabularyFile<unknown>(name))
      const texts = withVocabulary({ [name]: isList ? [] : {} })
      if (faultsOf(texts).length > 0) continue
      read += 1
      expect(createReader(vocabularyFromFiles(texts)).read(text).intent).toBeTypeOf('string')
    }
    // Choices, cues, clues, names, noise, shadows: a shop may have no use for them.
    expect(read).toBeGreaterThan(5)
  })
})

function spoilt(name: string, key: string, value: unknown): unknown {
  return { ...vocabularyFile<object>(name), [key]: value }
}
