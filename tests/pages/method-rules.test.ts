import { describe, expect, it } from 'vitest'
import { outcomeInWords } from '../../src/pages/rule-outcomes.ts'
import { rulebookLabels, rulePage, rulesPage, sourceWords } from '../../src/pages/rule-pages.ts'
import { conditionsInWords } from '../../src/pages/rule-words.ts'
import { loadRulebook } from '../../src/rulebook/load.ts'
import type { Condition } from '../../src/rulebook/schema.ts'
import { ruleTexts } from '../support/rulebook.ts'

const rulebook = loadRulebook(ruleTexts())
const labels = rulebookLabels(rulebook)
const view = { rulebook, units: 'us' as const, link: '' }

const boostAbove: Condition = { fact: 'boost', operator: 'greaterThan', value: 15 }
const iron: Condition = {
  fact: 'capMaterial',
  operator: 'in',
  value: ['gray-iron', 'ductile-iron'],
}

describe('conditionsInWords', () => {
  it.each<[string, Condition]>([
    // 15 psi is 103 kPa (NIST SP 811).
    ['boost is above 15 psi (1.03 bar)', boostAbove],
    [
      'compression is at least 13:1',
      { fact: 'compressionRatio', operator: 'greaterThanInclusive', value: 13 },
    ],
    ['cap material is “gray cast iron” or “ductile (nodular) iron”', iron],
    [
      'layout is neither “flat four” nor “flat six”',
      { fact: 'layout', operator: 'notIn', value: ['flat-4', 'flat-6'] },
    ],
    ['grade is “SAE grade 5”', { fact: 'fastenerGrade', operator: 'equal', value: 'sae-5' }],
    ['boost is given', { fact: 'boostSaid', operator: 'equal', value: true }],
    ['boost is not given', { fact: 'boostSaid', operator: 'notEqual', value: true }],
    ['spark held back by knock: no', { fact: 'knockLimited', operator: 'equal', value: false }],
    [
      'invested is above 5,000 in the person’s currency',
      { fact: 'invested', operator: 'greaterThan', value: 5000 },
    ],
    [
      'torque peak is at least highest rpm',
      { fact: 'torquePeakRpm', operator: 'greaterThanInclusive', value: { fact: 'peakRpm' } },
    ],
    [
      'cap material after the route is “steel, machined from bar or forged”',
      { fact: 'capMaterialAfter', operator: 'equal', value: 'steel' },
    ],
    [
      'boost is above 15 psi (1.03 bar), and cap material is “gray cast iron” or “ductile (nodular) iron”',
      { all: [boostAbove, iron] },
    ],
    [
      'boost is above 15 psi (1.03 bar), or cap material is “gray cast iron” or “ductile (nodular) iron”; boost must be given, not assumed',
      { all: [{ any: [boostAbove, iron] }, { fact: 'boostSaid', operator: 'equal', value: true }] },
    ],
    ['it is not so that boost is above 15 psi (1.03 bar)', { not: boostAbove }],
  ])('%s', (words, condition) =>
    expect(conditionsInWords(condition, labels)).toBe(
      words.replaceAll(/(\d) (psi|bar)/g, '$1\u00a0$2'),
    ),
  )
})

describe('rule pages', () => {
  it('names every fact of every rule in words, never by its key', () => {
    const bare = rulebook.rules.filter((rule) =>
      /\b[a-z]{3,}[A-Z]\w*/.test(conditionsInWords(rule.conditions, labels)),
    )
    expect(bare.map(({ id }) => id)).toEqual([])
  })

  it('leaves no place of a sentence open and no id bare', () => {
    const wrong = rulebook.rules.filter(({ id }) =>
      /\{\{|‹[a-z]+[A-Z]/.test(String(rulePage({ ...view, id }))),
    )
    expect(wrong.map(({ id }) => id)).toEqual([])
    expect(rulebook.rules.length).toBeGreaterThan(10)
  })

  it('says what every rule can lead to, and where it comes from', () => {
    for (const rule of rulebook.rules) {
      expect(outcomeInWords(rule, rulebook, labels), rule.id).toMatch(/^[“A-Z].*\.$/)
      expect(sourceWords(rule.source), rule.id).toMatch(/\.$/)
    }
  })

  it('lists every rule once, and the share that each use needs', () => {
    const page = String(rulesPage(view))
    for (const { id } of rulebook.rules) expect(page.split(`href="/rules/${id}"`)).toHaveLength(2)
    for (const use of rulebook.holding.hardness) {
      expect(page).toContain(`<td>${rulebook.holding.needed[use]}</td>`)
    }
  })

  it('has no page for an id that is not there', () => {
    expect(rulePage({ ...view, id: 'constructor' })).toBeUndefined()
  })
})
