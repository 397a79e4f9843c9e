import { describe, expect, it } from 'vitest'
import { expandPattern } from '../../src/answers/phrase-patterns.ts'
import { readerWith } from '../support/reader.ts'

describe('a pattern of the vocabulary', () => {
  it('without braces stands for itself', () => {
    expect(expandPattern('two bolt mains')).toEqual(['two bolt mains'])
  })

  it('stands for every way through its braces and brackets', () => {
    expect(expandPattern('{2,two} bolts per [main] cap').sort()).toEqual([
      '2 bolts per cap',
      '2 bolts per main cap',
      'two bolts per cap',
      'two bolts per main cap',
    ])
  })

  it.each(['two {bolts per cap', 'two bolts] per cap', 'bolts } per cap'])(
    'that is not closed is refused and named: %s',
    (pattern) => {
      expect(() => expandPattern(pattern)).toThrow(pattern)
    },
  )

  it('that stands for too many phrases is refused', () => {
    const many = '{a,b,c,d,e,f,g,h,i,j}'
    expect(() => expandPattern(`${many} ${many} ${many} ${many}`)).toThrow(/too many/)
  })

  it('is refused with the place where it stands', () => {
    const broken = { 'names.json': { skirt: ['skirt | the {skirt'] } }
    expect(() => readerWith(broken)).toThrow(/names\.json: skirt: .*not closed/)
  })

  it('that may stand for no word at all is refused', () => {
    for (const phrase of ['skirt | ', '[skirt]', ' ']) {
      expect(() => readerWith({ 'names.json': { skirt: [phrase] } })).toThrow(/without a word/)
    }
  })

  it('serves a shop’s own words', () => {
    const capMaterial = { steel: ['{bar,rolled} stock [machined] caps'] }
    const read = readerWith({ 'choices-own.json': { capMaterial } })
    expect(read('rolled stock machined caps').facts.capMaterial).toBe('steel')
    expect(read('bar stock caps').facts.capMaterial).toBe('steel')
  })
})
