import { describe, expect, it } from 'vitest'
import { LONGEST_MESSAGE } from '../../src/answers/normalise-text.ts'
import { readMessage } from '../support/reader.ts'

/** The words of the message that a fact came from. */
function wordsOf(text: string, key: string): string {
  const span = readMessage(text).spans.find((each) => each.key === key)
  return span === undefined ? '' : text.slice(span.start, span.end)
}

describe('spans', () => {
  it('point into the original, whatever its quotes, widths and signs', () => {
    const text = '“Bore” is ４.030″ — stroke ３½ inches, 🔧 boost 12\u00a0psi'
    expect(wordsOf(text, 'bore')).toBe('Bore” is ４.030″')
    expect(wordsOf(text, 'stroke')).toBe('stroke ３½ inches')
    expect(wordsOf(text, 'boost')).toBe('boost 12\u00a0psi')
    expect(readMessage(text).facts.stroke).toEqual({ value: 3.5, unit: 'in' })
  })

  it('cover the figure and the words that name it', () => {
    expect(wordsOf('spin it to sixty-five hundred', 'peakRpm')).toBe(
      'spin it to sixty-five hundred',
    )
    expect(wordsOf('the factory iron caps', 'capMaterial')).toBe('iron caps')
    expect(wordsOf('the factory iron caps', 'capOrigin')).toBe('factory iron caps')
  })
})

describe('unclear', () => {
  it.each([
    ['boost is 1.2', 'boost is 1.2', /psi or bar/],
    ['450 whp', '450 whp', /at the wheels/],
    ['V6', 'V6', /60° or 90°/],
    ['3.73 gears', '3.73 gears', /gearing/],
    ['my buddy runs 20 psi', '20 psi', /another engine/],
    ['not 12 psi', '12 psi', /denied/],
    ['bore is 40', 'bore is 40', /2 to 5\.9/],
    ['thirty over', 'thirty over', /finished bore/],
    ['M12 studs', 'M12', /pitch/],
    ['M11 bolts in an alloy block', 'M11', /pitch/],
    ['7 mains', '7', /not clear/],
    ['a T4 flange', 'T4', /not used/],
    ['either 9.5 or 10.5 to one', '9.5', /say which/],
    ['450 whp with a 15% loss', '450 whp with a 15%', /529 hp at the crank/],
    ['boost €1.200 budget', '€1.200 budget', /thousands or decimals/],
    ['10:1, 11:1', '10:1', /more than one reading/],
    ['1998', '1998', /not clear/],
    ['500 hp at 6200 rpm', '6200 rpm', /peak/],
  ])('%s', (text, words, why) => {
    const { unclear } = readMessage(text)
    const found = unclear.find((each) => each.text === words)
    expect(found?.why).toMatch(why)
  })

  it('asks what is there instead of what is taken back', () => {
    const answers = { induction: 'turbocharged' } as const
    for (const text of ['not turbocharged', 'forget the turbo']) {
      const { facts, unclear } = readMessage(text, { answers })
      expect(facts).toEqual({})
      expect(unclear[0]?.why).toMatch(/instead/)
    }
    expect(readMessage('no boost', { answers }).facts.induction).toBe('naturally-aspirated')
  })

  it('commits nothing that is only asked', () => {
    for (const text of [
      'will it hold 20 psi?',
      '15 psi?',
      'should I go to 12:1?',
      'does e85 help',
    ]) {
      expect(readMessage(text).intent).toBe('what-if')
    }
    expect(readMessage('why not steel caps')).toMatchObject({
      facts: {},
      intent: 'result',
      topic: 'steel-caps',
    })
    expect(readMessage('15 psi?', { asking: 'boost' }).intent).toBe('tell')
  })

  it.each(['two of the caps are cracked', 'the block has a crack', 'spun a main bearing'])(
    'sends to be inspected: %s',
    (text) => {
      const { facts, unclear } = readMessage(text, { asking: 'capHeight' })
      expect(facts).toEqual({})
      expect(unclear.length).toBeGreaterThan(0)
    },
  )

  it('lists every number that was not used', () => {
    const { facts, unclear } = readMessage('4.030 bore, 26 inch tires, 3.55 gears, call 5551234')
    expect(Object.keys(facts)).toEqual(['bore'])
    for (const number of ['26', '3.55', '5551234']) {
      expect(unclear.some(({ text }) => text.includes(number))).toBe(true)
    }
  })

  it('says so when the message is too long to be read whole', () => {
    const { facts, unclear } = readMessage(`${'so '.repeat(LONGEST_MESSAGE / 3)} bore 4.03`)
    expect(facts).toEqual({})
    expect(unclear.at(-1)?.why).toMatch(/2,?000 characters/)
  })
})

describe('context', () => {
  it('counts money in the currency of the answers, else of the message, else the usual', () => {
    const answers = { budget: { value: 2000, currency: 'AUD' } }
    const spent = { value: 6000, currency: 'AUD' }
    expect(readMessage('six grand in it so far', { answers }).facts.invested).toEqual(spent)
    expect(readMessage('£650 line bore, six grand in it so far').facts.invested).toEqual({
      value: 6000,
      currency: 'GBP',
    })
    expect(readMessage('$6000 in it so far').facts.invested).toEqual({
      value: 6000,
      currency: 'USD',
    })
  })

  it('takes an oversize for a bore only beside a bore', () => {
    const answers = { bore: { value: 4, unit: 'in' } }
    const finished = { value: 4.03, unit: 'in' }
    expect(readMessage('thirty over', { answers }).facts.bore).toEqual(finished)
    expect(readMessage('4.030 bore, thirty over').facts.bore).toEqual(finished)
    expect(readMessage('4.000 bore, thirty over').facts.bore).toEqual(finished)
    expect(readMessage('thirty over').facts.bore).toBeUndefined()
  })

  it('reads a bare figure in the usual unit of the fact that was asked', () => {
    expect(readMessage('14', { asking: 'boost' }).facts.boost).toEqual({ value: 14, unit: 'psi' })
    expect(readMessage('14', { asking: 'bore' }).facts.bore).toBeUndefined()
    expect(readMessage('14').facts).toEqual({})
  })
})

describe('hostile text', () => {
  it('made of endless digits, dashes and fractions says nothing', () => {
    for (const text of ['1/2'.repeat(900), 'a'.repeat(5000), '-'.repeat(5000), '1,'.repeat(2500)]) {
      expect(readMessage(text).facts).toEqual({})
    }
  })

  it.each([
    ['bore 10.2 cm', /unit/],
    ['boost 30 inHg', /unit/],
    ['boost 900 torr', /unit/],
    ['minus 12 psi of boost', /not clear/],
    ['negative 12 psi boost', /not clear/],
    ['boost 9e-15 psi', /not clear/],
    ['1e-320 psi', /not clear/],
  ])('%j is no answer, and says why', (text, why) => {
    const { facts, unclear } = readMessage(text)
    expect(facts).toEqual({})
    expect(unclear[0]?.why).toMatch(why)
  })

  it('of powers of ten is one figure', () => {
    expect(readMessage('6.5e3 rpm, boost 1e1 psi').facts).toEqual({
      peakRpm: { value: 6500, unit: 'rpm' },
      boost: { value: 10, unit: 'psi' },
    })
    expect(readMessage('boost 12 psi atm').facts).toEqual({ boost: { value: 12, unit: 'psi' } })
  })

  it('is never evaluated or taken for a key of the answers', () => {
    const { facts } = readMessage('__proto__: 4, constructor 12 psi, `process.exit()` bore 4.03')
    expect(Object.keys(facts).sort()).toEqual(['boost', 'bore'])
    expect(Object.getPrototypeOf(facts)).toBe(Object.prototype)
  })
})
