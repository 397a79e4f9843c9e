import { describe, expect, it } from 'vitest'
import { SHIPPED_VOCABULARY } from '../../src/answers/default-vocabulary.ts'
import { createReader, type MessageReader, readMessage } from '../../src/answers/read-message.ts'
import { readVocabulary } from '../../src/answers/vocabulary.ts'

const { words, numbers, spelling } = SHIPPED_VOCABULARY

/** A reader that knows what the rulebook ships and a shop's own words beside. */
function readerOf(own: object): MessageReader {
  return createReader(readVocabulary({ ...SHIPPED_VOCABULARY, ...own }))
}

describe('a word that a shop adds', () => {
  it('is unknown before', () => {
    expect(readMessage('7k flatout').facts.peakRpm).toBeUndefined()
    expect(readMessage('383 lump, two bolt').facts.displacement).toBeUndefined()
    expect(readMessage('cobber undo that').intent).not.toBe('undo')
  })

  it('says how far it revs', () => {
    const figures = { ...words.figures, most: [...words.figures.most, 'flatout'] }
    const { facts } = readerOf({ words: { ...words, figures } })('7k flatout')
    expect(facts.peakRpm).toEqual({ value: 7000, unit: 'rpm' })
  })

  it('calls an engine by its size', () => {
    const engines = { ...words.engines, names: [...words.engines.names, 'lump'] }
    const { facts } = readerOf({ words: { ...words, engines } })('383 lump, two bolt')
    expect(facts.displacement).toEqual({ value: 383, unit: 'cu in' })
  })

  it('leads up to a request', () => {
    const asking = { ...words.asking, openers: [...words.asking.openers, 'cobber'] }
    expect(readerOf({ words: { ...words, asking } })('cobber undo that').intent).toBe('undo')
  })

  it('is the size of a thread', () => {
    const threadSizes = { ...numbers.threadSizes, 'fat half': 8 }
    const { facts } = readerOf({ numbers: { ...numbers, threadSizes } })(
      'main studs, fat half thirteen',
    )
    expect(facts.fastenerThread).toBe(readMessage('main studs 1/2-13').facts.fastenerThread)
  })

  it('is known with two letters changed about', () => {
    const turned = [...spelling.turned, 'webs']
    const read = readerOf({ spelling: { ...spelling, turned } })
    const text = 'the wbes are too thin for four bolts'
    expect(read(text).facts).toEqual(read(text.replace('wbes', 'webs')).facts)
  })
})

it('reads the pitch of a thread in any number words that its size is made with', () => {
  for (const [said, thread] of [
    ['half inch thirteen', '1/2-13'],
    ['half inch twenty', '1/2-20'],
    ['three eighths twenty four', '3/8-24'],
    ['seven sixteenths fourteen', '7/16-14'],
  ]) {
    const { facts } = readMessage(`main studs, ${said}`)
    expect(facts.fastenerThread, said).toBe(readMessage(`studs ${thread}`).facts.fastenerThread)
    expect(facts.fastenerThread, said).toBeDefined()
  }
})
