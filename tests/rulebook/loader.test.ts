import { describe, expect, it } from 'vitest'
import { loadRulebook, RulebookError } from '../../src/rulebook/load.ts'
import { ruleTexts } from '../support/rulebook.ts'

const FILE = 'money.json'
type Json = Record<string, unknown>

/** The real rules with one of them changed. */
function spoilt(change: (rule: Json) => void, file = FILE): Map<string, string> {
  const texts = ruleTexts()
  const rules = JSON.parse(texts.get(file) as string) as Json[]
  change(rules[0] as Json)
  return texts.set(file, JSON.stringify(rules))
}

function faultsOf(texts: ReadonlyMap<string, string>): readonly string[] {
  try {
    loadRulebook(texts)
  } catch (error) {
    if (error instanceof RulebookError) return error.faults
    throw error
  }
  return []
}

/** The first condition of the first piece of work that has one, of the first route. */
function workWhen([route]: Json[]): Json {
  const work = (route as { work: (string | { when: Json & { all?: Json[]; any?: Json[] } })[] })
    .work
  const entry = work.find((one) => typeof one === 'object')
  if (typeof entry !== 'object') throw new Error('no work of this route depends on anything')
  return entry.when.all?.[0] ?? entry.when.any?.[0] ?? entry.when
}

const always = { fact: 'cylinders', operator: 'greaterThan', value: 0 }

describe('the loader', () => {
  it('takes the rulebook as it is', () => {
    expect(faultsOf(ruleTexts())).toEqual([])
  })

  it.each<[string, unknown, RegExp]>([
    [
      'an unknown fact',
      { all: [{ ...always, fact: 'capColour' }] },
      /no fact is called "capColour"/,
    ],
    [
      'an unknown fact as the value',
      { all: [{ ...always, value: { fact: 'capColour' } }] },
      /no fact is called "capColour"/,
    ],
    [
      'an operator that the engine does not have',
      { all: [{ ...always, operator: 'greaterThen' }] },
      /no operator is called "greaterThen"; use equal, /,
    ],
    ['an empty all', { all: [] }, /conditions\.all: is empty/],
    ['an empty any inside', { all: [always, { any: [] }] }, /conditions\.all\.1\.any: is empty/],
    ['a path', { all: [{ ...always, path: '$.a' }] }, /conditions\.all\.0: `path` is refused/],
    ['params', { all: [{ ...always, params: { a: 1 } }] }, /`params` is refused/],
    ['a priority in a condition', { all: [{ ...always, priority: 2 }] }, /`priority` is refused/],
    ['a mixed root', { all: [always], any: [always] }, /has `all` and `any`; keep one of them/],
    [
      'a mixed part',
      { all: [{ any: [always], not: always }] },
      /conditions\.all\.0: has `any` and `not`/,
    ],
    ['a root that is a comparison', always, /the root must have `all` or `any`/],
    ['a root that is a not', { not: always }, /the root must have `all` or `any`/],
    ['no conditions', undefined, /the root must have `all` or `any`/],
    ['a missing value', { all: [{ fact: 'cylinders', operator: 'equal' }] }, /`value` is missing/],
    [
      'in with one value',
      { all: [{ fact: 'use', operator: 'in', value: 'street' }] },
      /compares with a list/,
    ],
    [
      'equal with a list',
      { all: [{ fact: 'use', operator: 'equal', value: ['street'] }] },
      /compares with one value/,
    ],
    [
      'order with a word',
      { all: [{ fact: 'boost', operator: 'lessThan', value: 'high' }] },
      /compares with a figure/,
    ],
    [
      'an unknown choice',
      { all: [{ fact: 'use', operator: 'equal', value: 'rally' }] },
      /"rally" is no choice of use/,
    ],
    [
      'choices that are ordered',
      { all: [{ fact: 'use', operator: 'lessThan', value: 3 }] },
      /cannot compare the choices of use/,
    ],
  ])('refuses %s, naming file, rule and field', (_, conditions, words) => {
    const faults = faultsOf(spoilt((rule) => Object.assign(rule, { conditions })))
    expect(faults.length).toBeGreaterThan(0)
    for (const fault of faults)
      expect(fault).toMatch(/^money\.json: budget-cannot-meet-it: conditions/)
    expect(faults.join('\n')).toMatch(words)
  })

  it.each<[string, Json, RegExp]>([
    ['no source', { source: undefined }, /^money\.json: budget-cannot-meet-it: source: /],
    [
      'a published source without a cite',
      { source: { kind: 'published' } },
      /a published source needs a cite/,
    ],
    ['no text', { because: undefined }, /^money\.json: budget-cannot-meet-it: because: /],
    ['a text of a word', { because: 'No.' }, /because: /],
    ['no title', { title: undefined }, /title: /],
    ['a priority', { priority: 3 }, /"priority"/],
    [
      'an unknown place',
      { because: 'It costs {{capColour}} in all.' },
      /because: no fact is called "capColour"/,
    ],
    [
      'an unknown place after',
      { instead: 'Spend {{capColour}} in all.' },
      /instead: no fact is called/,
    ],
    ['an outcome of another scope', { outcome: { effect: 'impossible' } }, /outcome/],
    ['a scope that does not exist', { scope: 'engine' }, /scope/],
    ['an id that is no id', { id: 'Budget Missed' }, /kebab-case/],
  ])('refuses a rule with %s', (_, change, words) => {
    const faults = faultsOf(spoilt((rule) => Object.assign(rule, change)))
    expect(faults.join('\n')).toMatch(words)
  })

  it('refuses a fact of a later stage: a route rule cannot see the choice', () => {
    const change = {
      conditions: { all: [{ fact: 'costOverBudget', operator: 'equal', value: 1 }] },
    }
    const faults = faultsOf(
      spoilt((rule) => Object.assign(rule, change), 'route-limits/impossible.json'),
    )
    expect(faults.join('\n')).toMatch(
      /route-limits\/impossible\.json: .*no fact is called "costOverBudget" in scope route/,
    )
  })

  it('refuses a must-do that has no text, and a contradiction between things that are no facts', () => {
    const outcome = { effect: 'must-do', id: 'paint-the-block' }
    const mustDo = faultsOf(
      spoilt((rule) => Object.assign(rule, { outcome }), 'follow-on-work/machining.json'),
    )
    expect(mustDo.join()).toMatch(/"paint-the-block" is not in follow-on\.json/)
    const between = {
      effect: 'contradiction',
      between: ['boost', 'colour'],
      likelierSlip: null,
      call: 'hedge',
    }
    const pair = faultsOf(
      spoilt(
        (rule) => Object.assign(rule, { outcome: between }),
        'contradictions/proportions.json',
      ),
    )
    expect(pair.join()).toMatch(/no fact key "colour"/)
  })

  it.each([
    ['joint.json', 'capMaterial', 'gray-iron', 'cheese', /^joint\.json: capMaterial\.gray-iron: /],
    [
      'joint.json',
      'blockMaterial',
      'gray-iron',
      undefined,
      /^joint\.json: blockMaterial\.gray-iron: /,
    ],
    ['fastenings.json', undefined, 'two-bolt', undefined, /^fastenings\.json: two-bolt: /],
  ])('refuses %s without what it must have for a choice', (file, table, choice, entry, words) => {
    const texts = ruleTexts()
    const json = JSON.parse(texts.get(file) as string) as Json
    const entries = (table === undefined ? json : json[table]) as Json
    entries[choice] = entry
    expect(faultsOf(texts.set(file, JSON.stringify(json))).join()).toMatch(words)
  })

  it('refuses words of a call with a place that nothing fills, or a speed beyond the plan', () => {
    const texts = ruleTexts()
    const words = JSON.parse(texts.get('call.json') as string) as Record<string, Json>
    Object.assign(words.insteadOf as Json, { dearer: 'It costs {{prize}} more.' })
    Object.assign(words.lowered as Json, { leastSpeed: 1.2 })
    expect(faultsOf(texts.set('call.json', JSON.stringify(words)))).toEqual([
      expect.stringMatching(/^call\.json: insteadOf\.dearer: no place is called \{\{prize\}\}/),
      expect.stringMatching(/^call\.json: lowered\.leastSpeed: .*<=0\.95/),
    ])
  })

  it('refuses two rules with one id, in whatever files', () => {
    const texts = ruleTexts()
    const [first] = JSON.parse(texts.get(FILE) as string) as Json[]
    const faults = faultsOf(texts.set('more.json', JSON.stringify([first])))
    expect(faults).toEqual(['more.json: budget-cannot-meet-it: id: used twice, also in money.json'])
  })

  it.each([
    ['a file that is no JSON', '{', /money\.json: is not JSON/],
    ['a file that is no array', '{}', /money\.json: must be an array of rules/],
  ])('refuses %s', (_, text, words) => {
    expect(faultsOf(ruleTexts().set(FILE, text)).join()).toMatch(words)
  })

  it('names every missing table', () => {
    const texts = ruleTexts()
    texts.delete('routes.json')
    texts.delete('cost.json')
    expect(faultsOf(texts)).toEqual([
      'cost.json: the file is missing',
      'routes.json: the file is missing',
    ])
  })

  it.each<[string, string, (entries: Json[]) => void, RegExp]>([
    [
      'an unknown figure that scatters',
      'scatter.json',
      (all) => Object.assign(all[3] as Json, { id: 'faceFrictionx' }),
      /scatter\.json: 3\.id: .*"gasForce"/,
    ],
    [
      'a spread by what is no choice',
      'scatter.json',
      (all) =>
        Object.assign((all.find(({ id }) => id === 'preload') as Json).take as Json, {
          by: 'bore',
        }),
      /scatter\.json: preload: take\.by/,
    ],
    [
      'work by an unknown fact',
      'routes.json',
      (all) => Object.assign(workWhen(all), { fact: 'capHistoryy' }),
      /routes\.json: keep-caps-and-bolts: .*no fact key "capHistoryy"/,
    ],
    [
      'work by an unknown choice',
      'routes.json',
      (all) => Object.assign(workWhen(all), { in: ['lost'] }),
      /"lost" is no choice of/,
    ],
  ])('refuses %s', (_, file, change, fault) => {
    const texts = ruleTexts()
    const entries = JSON.parse(texts.get(file) as string) as Json[]
    change(entries)
    expect(faultsOf(texts.set(file, JSON.stringify(entries))).join('\n')).toMatch(fault)
  })

  it('refuses a route that is missing or twice there', () => {
    const texts = ruleTexts()
    const routes = JSON.parse(texts.get('routes.json') as string) as Json[]
    expect(faultsOf(texts.set('routes.json', JSON.stringify(routes.slice(1)))).join()).toMatch(
      /routes\.json: .*each of keep-caps-and-bolts/,
    )
  })

  it('reports every fault at once, not only the first', () => {
    const texts = spoilt((rule) => Object.assign(rule, { source: undefined, because: 'No.' }))
    expect(faultsOf(texts)).toHaveLength(2)
  })
})

describe('sizes of outer and cross bolts', () => {
  // Threads from 5 to 20 mm are taken. Below 4 mm an outer bolt, below 3 a cross bolt is no bolt
  // that the joint is reckoned with, and above 30 no bolt of a main cap: common practice, no
  // published source.
  it.each([0, -0.75, 0.3, 3])('%d of the inner ones is refused by its place', (size) => {
    const texts = ruleTexts()
    const joint = JSON.parse(texts.get('joint.json') as string)
    const fastenings = JSON.parse(texts.get('fastenings.json') as string)
    joint.crossBolt.sizeOverInner = size
    fastenings['four-bolt'].outerSize = size
    texts.set('joint.json', JSON.stringify(joint))
    texts.set('fastenings.json', JSON.stringify(fastenings))
    const faults = faultsOf(texts).join('\n')
    expect(faults).toMatch(/joint\.json: crossBolt\.sizeOverInner: /)
    expect(faults).toMatch(/fastenings\.json: four-bolt\.outerSize: /)
  })
})
