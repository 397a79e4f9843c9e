import { describe, expect, it } from 'vitest'
import { SHIPPED_VOCABULARY } from '../../src/answers/default-vocabulary.ts'
import { expandPattern } from '../../src/answers/phrase-patterns.ts'
import { createReader } from '../../src/answers/read-message.ts'
import { readVocabulary } from '../../src/answers/vocabulary.ts'

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
    const broken = { ...SHIPPED_VOCABULARY, names: { skirt: ['skirt | the {skirt'] } }
    expect(() => readVocabulary(broken)).toThrow(/names\.skirt.*not closed/)
  })

  it('serves a shop’s own words', () => {
    const { choices } = SHIPPED_VOCABULARY
    const capMaterial = { steel: ['{bar,rolled} stock [machined] caps'] }
    const read = createReader(
      readVocabulary({ ...SHIPPED_VOCABULARY, choices: { ...choices, capMaterial } }),
    )
    expect(read('rolled stock machined caps').facts.capMaterial).toBe('steel')
    expect(read('bar stock caps').facts.capMaterial).toBe('steel')
  })
})
