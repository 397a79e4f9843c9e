import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { withAnswer } from '../../shared/answers.ts'
import { assess } from '../../src/assess.ts'
import { costSection } from '../../src/pages/call-work.ts'
import { contrast, luminance } from '../../src/shops/contrast.ts'
import { loadShops, ShopError } from '../../src/shops/load.ts'
import { originFault } from '../../src/shops/origins.ts'
import { firstAnswers, pricedRulebook } from '../../src/shops/priced-rulebook.ts'
import type { Shop } from '../../src/shops/schema.ts'
import { rulebook, STREET_V8, said } from '../support/rulebook.ts'

const GOOD = {
  id: 'test-shop',
  name: 'Test Shop',
  contact: { email: 'shop@test.example' },
  currency: 'EUR',
  prices: { 'line-bore': { low: 800, likely: 900, high: 1000 } },
  tax: 19,
  does: { bore: true, hone: true, drill: false },
  accent: '#274b3b',
  units: 'metric',
  origins: ['https://test.example'],
  answers: { use: 'street' },
}

function load(changes: Readonly<Record<string, unknown>> = {}, name = 'test-shop.json'): Shop {
  const [shop] = loadShops(
    new Map([[name, JSON.stringify({ ...GOOD, ...changes })]]),
    rulebook.cost,
  )
  return shop as Shop
}

function faults(changes: Readonly<Record<string, unknown>>, name?: string): string {
  try {
    load(changes, name)
  } catch (error) {
    if (error instanceof ShopError) return error.faults.join('\n')
    throw error
  }
  return 'none'
}

describe('contrast', () => {
  // Source: WCAG 2.2, definition of contrast ratio (1 to 21), and the widely printed pair of
  // #767676, the lightest grey that reaches 4.5 on white, and #777777, which does not.
  it('is 21 for black on white and 1 for a colour on itself', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 10)
    expect(contrast('#1b3577', '#1b3577')).toBe(1)
  })

  it('tells the lightest grey that words on white may have from the next one', () => {
    expect(contrast('#767676', '#ffffff')).toBeGreaterThanOrEqual(4.5)
    expect(contrast('#777777', '#ffffff')).toBeLessThan(4.5)
  })

  it('knows the luminance of the primaries', () => {
    // Source: WCAG 2.2, relative luminance: the weights themselves at full strength.
    expect(luminance('#ff0000')).toBeCloseTo(0.2126, 10)
    expect(luminance('#00ff00')).toBeCloseTo(0.7152, 10)
    expect(luminance('#0000ff')).toBeCloseTo(0.0722, 10)
  })

  it('does not care which colour comes first, and refuses what is no colour', () => {
    const colour = fc
      .integer({ min: 0, max: 0xffffff })
      .map((value) => `#${value.toString(16).padStart(6, '0')}`)
    fc.assert(
      fc.property(colour, colour, (a, b) => {
        expect(contrast(a, b)).toBe(contrast(b, a))
        expect(contrast(a, b)).toBeGreaterThanOrEqual(1)
        expect(contrast(a, b)).toBeLessThanOrEqual(21.000001)
      }),
    )
    expect(() => luminance('red')).toThrow(/#rrggbb/)
  })
})

describe('origins', () => {
  it.each([
    'https://shop.example',
    'https://www.shop.example:8443',
    'http://localhost:*',
    'http://127.0.0.1:3000',
    'http://[::1]:*',
  ])('takes %s', (origin) => expect(originFault(origin)).toBeUndefined())

  it.each([
    ['http://shop.example', /https/],
    ['https://*.shop.example', /pattern/],
    ['https://shop.example/guide', /path/],
    ['https://shop.example:*', /port/],
    ['*', /origin/],
    ["'self'", /origin/],
    ['https://shop.example; script-src *', /origin/],
    ['javascript:alert(1)', /origin/],
  ])('refuses %s', (origin, words) => expect(originFault(origin)).toMatch(words))
})

describe('a profile', () => {
  it('is read with what it leaves out', () => {
    const shop = load({ prices: undefined, accent: undefined, answers: undefined })
    expect(shop).toMatchObject({ prices: {}, demo: false, answers: {} })
  })

  it.each([
    ['a pale accent', { accent: '#9fc5e8' }, /test-shop\.json: accent: too pale: .*4\.5 and 3/],
    ['no colour', { accent: 'green' }, /accent: write #rrggbb/],
    ['a pattern of origins', { origins: ['https://*.example'] }, /origins\.0: write an origin/],
    ['no origin', { origins: [] }, /origins: /],
    [
      'prices the wrong way round',
      { prices: { 'line-bore': { low: 9, likely: 5, high: 7 } } },
      /prices\.line-bore: low ≤ likely ≤ high/,
    ],
    [
      'an item that has no price',
      { prices: { rocket: { low: 1, likely: 1, high: 1 } } },
      /prices\.rocket: no such item; use main-studs/,
    ],
    ['a currency without a rate', { currency: 'XAU' }, /currency: use one of USD/],
    ['an answer that does not fit', { answers: { bore: '4 kg' } }, /answers: bore: found/],
    ['a fact that does not exist', { answers: { colour: 'red' } }, /answers: colour/],
    ['a field of its own', { hideRoutes: ['steel-caps'] }, /hideRoutes/],
    ['two lines in a name', { name: 'Test\nShop' }, /name: one line/],
    ['no mail address', { contact: { email: 'shop' } }, /contact\.email/],
    ['tax of half the world', { tax: 400 }, /tax: /],
  ])('with %s is refused by name', (_what, changes, words) => {
    expect(faults(changes)).toMatch(words)
  })

  it('must stand in the file of its own name', () => {
    expect(faults({}, 'other.json')).toBe(
      "other.json: id: must be the file's own name, not test-shop",
    )
  })

  it('that is no JSON is named, and every file is looked at', () => {
    const files = new Map([
      ['a.json', '{'],
      ['b.json', JSON.stringify({ ...GOOD, id: 'b', accent: '#ffffff' })],
      ['notes.txt', 'not a profile'],
    ])
    expect(() => loadShops(files, rulebook.cost)).toThrow(
      /a\.json: is not JSON[\s\S]*b\.json: accent/,
    )
  })
})

describe('a shop’s prices', () => {
  it('change the price list and nothing else of the rulebook', () => {
    const priced = pricedRulebook(rulebook, load())
    const { cost: _own, ...rest } = priced
    const { cost: _base, ...same } = rulebook
    for (const [name, part] of Object.entries(rest)) {
      expect(part, name).toBe(same[name as keyof typeof same])
    }
  })

  it('stand as the shop wrote them, in its currency, with its name', async () => {
    const priced = pricedRulebook(rulebook, load())
    const { routes } = await assess(priced, withAnswer(said(STREET_V8), 'invested', undefined), {
      withoutWhatIf: true,
    })
    const steel = routes.find(({ id }) => id === 'steel-caps')
    expect(steel?.cost.currency).toBe('EUR')
    expect(steel?.cost.items.find(({ id }) => id === 'line-bore')).toMatchObject({
      low: 800,
      likely: 900,
      high: 1000,
      source: { cite: 'Price list of Test Shop' },
    })
  })

  it('are no assumption, and say at which rate they were put into another currency', async () => {
    const priced = pricedRulebook(rulebook, load())
    const cost = async (currency: string) => {
      const money = { value: 5000, currency }
      const answers = withAnswer(said(STREET_V8), 'invested', money)
      const { routes, cost } = await assess(priced, answers, { withoutWhatIf: true })
      const items = routes.find(({ id }) => id === 'steel-caps')?.cost.items ?? []
      return { report: { ...cost, items }, items }
    }
    const dollars = await cost('USD')
    const bore = dollars.items.find(({ id }) => id === 'line-bore')
    // The guide's own table: a dollar is 0.92 euros.
    expect(bore?.state).toBe('listed')
    expect(bore?.converted?.from).toBe('EUR')
    expect(bore?.converted?.rate).toBeCloseTo(1 / 0.92, 12)
    expect(bore?.likely).toBeCloseTo(900 / 0.92, 9)
    expect(dollars.items.find(({ id }) => id === 'steel-cap-set')).toMatchObject({
      state: 'assumed',
    })
    const bill = String(costSection(dollars.report))
    expect(bill).toContain('<span class="hint">Price list of Test Shop</span>')
    expect(bill).not.toContain('Assumed. Price list')
    expect(bill).toContain('1 EUR is taken as 1.09 USD (rate: from memory).')
    const euros = await cost('EUR')
    expect(euros.items.some((item) => item.converted)).toBe(false)
    expect(String(costSection(euros.report))).not.toContain('is taken as')
  })

  it('leave what the shop does not price at the guide’s own range, in the shop’s currency', () => {
    const priced = pricedRulebook(rulebook, load())
    const own = rulebook.cost.items.find(({ id }) => id === 'girdle-set')
    const there = priced.cost.items.find(({ id }) => id === 'girdle-set')
    const rate = rulebook.cost.rates.EUR ?? 0
    expect(there?.price.likely).toBeCloseTo((own?.price.likely ?? 0) * rate, 9)
    expect(priced.cost.rates.EUR).toBe(1)
    // A dollar is worth as many euros in the shop's table as the guide's own table says.
    expect(1 / (priced.cost.rates.USD ?? 0)).toBeCloseTo(rate, 12)
  })

  it('give the same call, byte for byte, when they are the guide’s own', async () => {
    const shop = load({ currency: 'USD', prices: {}, tax: undefined })
    const answers = said(STREET_V8)
    const there = await assess(pricedRulebook(rulebook, shop), answers)
    expect(there).toEqual(await assess(rulebook, answers))
  })

  it('come with the answers that the shop knows', () => {
    expect(firstAnswers(load())).toEqual({
      taxRate: { value: 19, unit: '%' },
      shopLineBores: 'yes',
      use: 'street',
    })
    expect(
      firstAnswers(
        load({ does: { bore: false, hone: true, drill: true }, tax: undefined, answers: {} }),
      ),
    ).toEqual({ shopLineBores: 'no' })
  })
})
