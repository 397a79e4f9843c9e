import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Answers, readAnswers } from '../../shared/answers.ts'
import { FACT_KEYS } from '../../shared/fact-keys.ts'
import { EMPTY_TALK, type TalkState, talkFromQuery, talkToQuery } from '../../src/talk/state.ts'
import { answerTurn, messageTurn } from '../../src/talk/turn.ts'
import { anyAnswer, anyAnswers } from '../support/answers.ts'
import { rulebook } from '../support/app.ts'
import { reader } from '../support/reader.ts'

function talk(answers: Record<string, unknown>, parked: Record<string, unknown> = {}): TalkState {
  const read = (raw: Record<string, unknown>): Answers => {
    const { answers: good, problems } = readAnswers(raw)
    expect(problems).toEqual([])
    return good
  }
  return { answers: read(answers), parked: read(parked), before: new Map() }
}

const say = (state: TalkState, text: string, asking?: 'boost' | 'stroke' | 'use') =>
  messageTurn({ rulebook, reader }, state, text, asking)

describe('a plain answer', () => {
  it('is taken, and can be taken back', () => {
    const first = answerTurn(rulebook, EMPTY_TALK, 'use', 'drag')
    expect(first.state.answers).toEqual({ use: 'drag' })
    const second = answerTurn(rulebook, first.state, 'use', 'street')
    expect([...second.state.before]).toEqual([['use', 'drag']])
    expect(say(second.state, 'undo').state.answers).toEqual({ use: 'drag' })
  })

  it('that is the same again changes nothing, and leaves nothing to take back', () => {
    const state = talk({ use: 'drag' })
    const { state: after } = answerTurn(rulebook, state, 'use', 'drag')
    expect([after.answers, after.before.size]).toEqual([state.answers, 0])
  })

  it('changes no other answer, whatever fact it is for', () => {
    const key = fc.constantFrom(...FACT_KEYS)
    const case_ = fc.tuple(
      anyAnswers,
      key.chain((one) => fc.tuple(fc.constant(one), anyAnswer(one))),
    )
    fc.assert(
      fc.property(case_, ([answers, [asked, answer]]) => {
        const start = { ...EMPTY_TALK, answers }
        const { state } = answerTurn(rulebook, start, asked, answer)
        for (const other of FACT_KEYS) {
          if (other === asked) continue
          // Parked or not, it is still there word for word.
          expect(state.answers[other] ?? state.parked[other]).toEqual(answers[other])
        }
        expect(state.answers[asked] ?? state.parked[asked]).toEqual(answer)
        const both = FACT_KEYS.filter((one) => one in state.answers && one in state.parked)
        expect(both).toEqual([])
      }),
      { numRuns: 200 },
    )
  })
})

describe('answers that stop counting', () => {
  it('are parked when an edit makes them irrelevant, and come back when it is undone or edited back', () => {
    const state = talk({ induction: 'turbocharged', boost: '12 psi', chargeCooling: 'intercooler' })
    const edited = answerTurn(rulebook, state, 'induction', 'naturally-aspirated').state
    expect(edited.answers).toEqual({ induction: 'naturally-aspirated' })
    expect(edited.parked).toEqual({ boost: state.answers.boost, chargeCooling: 'intercooler' })
    expect(say(edited, 'undo').state).toMatchObject({ answers: state.answers, parked: {} })
    const back = answerTurn(rulebook, edited, 'induction', 'supercharged').state
    expect(back.answers).toEqual({ ...state.answers, induction: 'supercharged' })
    expect(back.parked).toEqual({})
  })

  it('stay and contradict when both are said in one breath, also after the next answer', () => {
    const told = say(talk({}), 'naturally aspirated with 10 psi boost').state
    expect(told.parked).toEqual({})
    const next = answerTurn(rulebook, told, 'use', 'street').state
    expect(next.answers).toMatchObject({
      induction: 'naturally-aspirated',
      boost: { value: 10, unit: 'psi' },
    })
  })

  it('are not parked by a question that is open', () => {
    const state = talk({ induction: 'unknown' })
    expect(answerTurn(rulebook, state, 'boost', { value: 9, unit: 'psi' }).state.parked).toEqual({})
  })
})

describe('a message', () => {
  it('tells facts, and undo takes all of them back at once', () => {
    const told = say(talk({ use: 'drag' }), '4.03 bore, 3.48 stroke, two bolt mains')
    expect(told.intent).toBe('tell')
    expect(Object.keys(told.state.answers).sort()).toEqual([
      'bore',
      'capFastening',
      'stroke',
      'use',
    ])
    expect(say(told.state, 'undo').state.answers).toEqual({ use: 'drag' })
  })

  it('corrects one fact', () => {
    const { intent, state } = say(talk({ compressionRatio: 10, use: 'drag' }), 'actually 9.5:1')
    expect(['change', 'tell']).toContain(intent)
    expect(state.answers).toEqual({ compressionRatio: 9.5, use: 'drag' })
  })

  it('says “I don’t know” to the fact that was asked, and to nothing when none was', () => {
    expect(say(EMPTY_TALK, 'no idea', 'stroke').state.answers).toEqual({ stroke: 'unknown' })
    expect(say(EMPTY_TALK, 'no idea').state.answers).toEqual({})
  })

  it('supposes: a what-if changes nothing of the case', () => {
    const state = talk({ induction: 'turbocharged', boost: '12 psi' })
    const turn = say(state, 'what if I ran 18 psi?')
    expect(turn.intent).toBe('what-if')
    expect(turn.state).toEqual(state)
    expect(turn.supposed).toEqual({ ...state.answers, boost: { value: 18, unit: 'psi' } })
  })

  it.each([
    ['why?', 'why'],
    ['what is a register?', 'explain'],
    ['just tell me', 'result'],
  ])('“%s” asks and changes nothing', (text, intent) => {
    const state = talk({ use: 'drag', boost: '9 psi', induction: 'supercharged' })
    const turn = say(state, text, 'boost')
    expect(turn.intent).toBe(intent)
    expect(turn.state.answers).toEqual(state.answers)
  })

  it('starts over: nothing is left, not even what was parked', () => {
    expect(say(talk({ use: 'drag' }, { boost: '9 psi' }), 'start over').state).toEqual(EMPTY_TALK)
  })

  it('undo with nothing to take back changes nothing', () => {
    const state = talk({ use: 'drag' })
    expect(say(state, 'undo').state.answers).toEqual(state.answers)
  })

  it('of any text at all never loses an answer unless it asks to', () => {
    const state = talk({ use: 'drag', bore: '4 in', fuel: 'e85' })
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 60 }), (text) => {
        const turn = say(state, text)
        if (turn.intent === 'restart') return
        expect(Object.keys(turn.state.answers)).toEqual(
          expect.arrayContaining(['bore', 'use', 'fuel']),
        )
      }),
      { numRuns: 300 },
    )
  })
})

describe('the conversation in its link', () => {
  it('comes back exactly: answers, parked ones, and what undo takes back', () => {
    const key = fc.constantFrom(...FACT_KEYS)
    const was = key.chain((one) =>
      fc.tuple(fc.constant(one), fc.option(anyAnswer(one), { nil: undefined })),
    )
    fc.assert(
      fc.property(
        anyAnswers,
        anyAnswers,
        fc.array(was, { maxLength: 4 }),
        (answers, parked, before) => {
          fc.pre(Object.keys(answers).length > 0)
          const state = { answers, parked, before: new Map(before) }
          const read = talkFromQuery(talkToQuery(state, '1.0.0'))
          expect(read.problems).toEqual([])
          expect(read.state).toEqual(state)
        },
      ),
      { numRuns: 100 },
    )
  })

  it('of nothing is nothing', () => {
    expect(talkToQuery(EMPTY_TALK, '1.0.0')).toBe('')
    expect(talkFromQuery('').state).toEqual(EMPTY_TALK)
  })

  it('a broken undo part is left out and harms nothing', () => {
    const { state } = talkFromQuery('use=drag&was.bore=40in&was.crank=1&was.=2&was.__proto__=3')
    expect([state.answers, state.before.size]).toEqual([{ use: 'drag' }, 0])
  })
})

describe('not knowing one thing', () => {
  it('leaves the asked question open when it is said of another', () => {
    const { state, intent } = say(talk({}), 'no idea what the bore is', 'use')
    expect([intent, state.answers]).toEqual(['dont-know', { bore: 'unknown' }])
    expect(say(talk({}), 'no idea what the torque will be', 'use').state.answers).toEqual({})
    expect(say(talk({}), 'no idea', 'use').state.answers).toEqual({ use: 'unknown' })
  })
})
