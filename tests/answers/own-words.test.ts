import { describe, expect, it } from 'vitest'
import { readerWith, readMessage, vocabularyFile } from '../support/reader.ts'

type Lists = Readonly<Record<string, readonly string[]>>
const words =
  vocabularyFile<Readonly<Record<'figures' | 'engines' | 'asking', Lists>>>('words.json')
const numbers = vocabularyFile<{ readonly threadSizes: object }>('numbers.json')
const spelling = vocabularyFile<{ readonly turned: readonly string[] }>('spelling.json')

/** A list with a word more. */
const more = (lists: Lists, name: string, word: string) => ({
  ...lists,
  [name]: [...(lists[name] ?? []), word],
})

describe('a word that a shop adds', () => {
  it('is unknown before', () => {
    expect(readMessage('7k flatout').facts.peakRpm).toBeUndefined()
    expect(readMessage('383 lump, two bolt').facts.displacement).toBeUndefined()
    expect(readMessage('cobber undo that').intent).not.toBe('undo')
  })

  it('says how far it revs', () => {
    const figures = more(words.figures, 'most', 'flatout')
    const { facts } = readerWith({ 'words.json': { ...words, figures } })('7k flatout')
    expect(facts.peakRpm).toEqual({ value: 7000, unit: 'rpm' })
  })

  it('calls an engine by its size', () => {
    const engines = more(words.engines, 'names', 'lump')
    const { facts } = readerWith({ 'words.json': { ...words, engines } })('383 lump, two bolt')
    expect(facts.displacement).toEqual({ value: 383, unit: 'cu in' })
  })

  it('leads up to a request', () => {
    const asking = more(words.asking, 'openers', 'cobber')
    expect(readerWith({ 'words.json': { ...words, asking } })('cobber undo that').intent).toBe(
      'undo',
    )
  })

  it('is the size of a thread', () => {
    const threadSizes = { ...numbers.threadSizes, 'fat half': 8 }
    const { facts } = readerWith({ 'numbers.json': { ...numbers, threadSizes } })(
      'main studs, fat half thirteen',
    )
    expect(facts.fastenerThread).toBe(readMessage('main studs 1/2-13').facts.fastenerThread)
  })

  it('is known with two letters changed about', () => {
    const turned = [...spelling.turned, 'webs']
    const read = readerWith({ 'spelling.json': { ...spelling, turned } })
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
