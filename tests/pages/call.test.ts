import { describe, expect, it } from 'vitest'
import type { Assessment } from '../../shared/assessment.ts'
import { callPage } from '../../src/pages/call.ts'
import { shopRules } from '../check-in/case.ts'
import { SAMPLE_STEPS, sampleAssessment, sampleReach } from '../support/sample-assessment.ts'

function render(
  changes: Partial<Assessment> = {},
  view: { units?: 'us' | 'metric'; reach?: null } = {},
): string {
  const assessment = sampleAssessment(changes)
  const { units = 'us', reach = sampleReach() } = view
  const { link } = assessment
  const { order } = shopRules.sheet
  return String(callPage({ assessment, reach, units, link, steps: SAMPLE_STEPS, order }))
}

const sample = sampleAssessment()
const PAGES: [string, string][] = [
  ['likely', render()],
  ['metric', render({}, { units: 'metric' })],
  ['without reach', render({}, { reach: null })],
  ['settled', render({ call: { ...sample.call, confidence: 'settled', settledBy: null } })],
  ['lower', render({ call: { ...sample.call, route: 'lower-the-target' } })],
  ['withheld', render(withheld())],
]

function withheld(): Partial<Assessment> {
  return {
    call: { ...sample.call, route: null, confidence: 'withheld', sentence: 'No call yet.' },
    contradictions: [
      {
        ...sample.cautions[0]!,
        rule: 'displacement-mismatch',
        title: 'Bore, stroke and displacement disagree',
        between: ['bore', 'displacement'],
        likelierSlip: 'displacement',
        effect: 'withhold',
      },
    ],
  }
}

describe.each(PAGES)('call page: %s', (_, markup) => {
  it('obeys a strict content policy', () => {
    expect(markup).not.toMatch(/\sstyle=/)
    expect(markup).not.toMatch(/<style/)
    expect(markup).not.toMatch(/\son[a-z]+=/)
    expect(markup).not.toMatch(/<script(?![^>]*\ssrc=)/)
    expect(markup).not.toMatch(/(?:src|href)="https?:/)
  })

  it('has unique ids, and every picture is named and described', () => {
    const ids = [...markup.matchAll(/\sid="([^"]+)"/g)].map((match) => match[1])
    expect(ids.filter((id, index) => ids.indexOf(id) !== index)).toEqual([])
    for (const [, names] of markup.matchAll(/aria-labelledby="([^"]+)"/g)) {
      for (const id of (names as string).split(' ')) expect(ids).toContain(id)
    }
    const pictures = markup.match(/<svg[^>]*>/g) ?? []
    for (const svg of pictures) expect(svg).toMatch(/role="img" aria-labelledby|aria-hidden="true"/)
  })

  it('prints no broken figure', () => {
    expect(markup).not.toMatch(/NaN|undefined|Infinity|\[object/)
  })

  it('keeps headings in order, one first', () => {
    const levels = [...markup.matchAll(/<h([1-6])/g)].map((match) => Number(match[1]))
    expect(levels.filter((level) => level === 1)).toHaveLength(1)
    expect(levels[0]).toBe(1)
    levels.forEach((level, index) => {
      if (index > 0) expect(level - levels[index - 1]!).toBeLessThanOrEqual(1)
    })
  })
})

describe('call page of an engine that pulls on nothing', () => {
  it('still draws', () => {
    const { loads, routes, cost } = sample
    const none = { ...loads.worstPull, force: 0, pull: 0, side: 0 }
    const joint = { ...routes[0]!.joint, clamp: 0, friction: 0, registerCapacity: 0 }
    const free = { low: 0, likely: 0, high: 0, currency: 'USD', items: [] }
    const page = render({
      loads: {
        ...loads,
        worstPull: none,
        worstSide: none,
        mains: loads.mains.map((main) => ({
          ...main,
          worstPull: none,
          worstSide: none,
          polar: [],
        })),
        curve: [],
        pressureTrace: [],
      },
      routes: routes.map((route) => ({ ...route, joint, cost: free })),
      cost: { ...cost, low: 0, likely: 0, high: 0, stake: 0, budget: 0 },
    })
    expect(page).not.toMatch(/NaN|undefined|Infinity/)
    expect(page).toContain('id="cap-section"')
  })
})

describe('call page', () => {
  const markup = render()

  it('says the call first, in one sentence', () => {
    const h1 = /<h1>(.*?)<\/h1>/s.exec(markup)
    expect(h1?.[1]?.replaceAll(/<[^>]+>/g, '')).toBe(sample.call.sentence)
    const sentence = h1?.index ?? 0
    expect(sentence).toBeLessThan(markup.indexOf('<svg role="img"'))
  })

  it('has every picture before the reasons, each with a table', () => {
    const reasons = markup.indexOf('id="reasons"')
    for (const id of ['cap-section', 'load-diagrams', 'reach', 'costs', 'pressure']) {
      expect(markup.indexOf(`id="${id}"`)).toBeLessThan(reasons)
      expect(markup).toContain(`id="${id}"`)
    }
    const figures = markup.match(/<figure/g) ?? []
    expect(markup.match(/<summary>The figures as a table/g)).toHaveLength(figures.length)
  })

  it('links what would settle it, and each assumption, to its question', () => {
    const link = sample.link.replaceAll('&', '&amp;')
    for (const { fact } of sample.assumptions) {
      expect(markup).toContain(`href="/?${link}&amp;ask=${fact}"`)
    }
    expect(markup).toMatch(/could still change it: <a href="[^"]*ask=fastenerTorque"/)
  })

  it('keeps the units in its links', () => {
    expect(render({}, { units: 'metric' })).toMatch(/ask=capBoltSpan&amp;units=metric/)
  })

  it('gives each reason its rule and source', () => {
    for (const { rule } of sample.call.reasons) expect(markup).toContain(`/rules/${rule}?`)
    expect(markup).toContain('Shigley&#39;s Mechanical Engineering Design')
  })

  it('leaves the reach out when it was not computed', () => {
    expect(render({}, { reach: null })).not.toContain('id="reach"')
  })

  it('marks what was said and what was assumed in the bill', () => {
    const bill = markup.slice(markup.indexOf('<table class="bill'))
    expect(bill).toContain('<span class="hint">You said</span>')
    expect(bill).toContain('<span class="hint">Assumed. ')
  })

  it('withholds routes, costs and the shop’s sheet while a contradiction stands', () => {
    const page = render(withheld())
    expect(page).toContain('Bore, stroke and displacement disagree')
    expect(page).toMatch(/ask=displacement"[^>]*>Change: [^<]*\(the likelier slip\)/)
    for (const absent of ['id="margins"', 'id="costs"', 'href="/sheet', 'Holds in']) {
      expect(page).not.toContain(absent)
    }
  })

  it('shows what the called route brings with it, and not what others would', () => {
    const note = { ...sample.cautions[0]!, severity: 'note' as const }
    const against = (own: string) =>
      sample.routes.map((route) => ({
        ...route,
        against: [{ ...note, title: route.id === sample.call.route ? own : 'Of another route' }],
      }))
    const page = render({ routes: against('A line bore comes with it') })
    expect(page).toMatch(/What it brings with it[\s\S]*A line bore comes with it/)
    expect(page).not.toContain('Of another route')
  })

  it('shows markup in a sentence as plain words', () => {
    const hostile = '<img src=x onerror=alert(1)>'
    const page = render({
      call: { ...sample.call, sentence: hostile },
      cautions: [{ ...sample.cautions[0]!, text: `${hostile} [x](javascript:alert(1))` }],
    })
    expect(page).not.toContain('<img')
    expect(page).not.toContain('href="javascript:')
    expect(page).toContain('&lt;img')
  })
})

describe('call page of a call that costs nothing', () => {
  const free = { ...sample.cost, low: 0, likely: 0, high: 0, items: [], breakEvenChance: 0 }
  const page = render({ cost: free })

  it('does not weigh a price of nought against a chance of nought', () => {
    expect(page).toContain('At stake:')
    expect(page).not.toContain('The extra money pays for itself')
    expect(page).not.toContain('0% chance')
  })
})

describe('the verdict on a route', () => {
  it('is one element in its cell, which a phone lays out as a grid of its elements', () => {
    const insteadOf = sample.routes.map(({ id }) => ({ route: id, why: 'In **43** of 100 cases.' }))
    const page = render({ call: { ...sample.call, insteadOf } })
    const cells = [...page.matchAll(/data-head="Verdict">(.*?)<\/td>/gs)].map(([, cell]) => cell)
    expect(cells.some((cell) => cell?.includes('<strong>43</strong>'))).toBe(true)
    for (const cell of cells) expect(cell).toMatch(/^<span>.*<\/span>$/s)
  })
})
