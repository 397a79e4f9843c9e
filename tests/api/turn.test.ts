import { describe, expect, it } from 'vitest'
import { turnResponse } from '../../src/api/turn-response.ts'
import { talkFromQuery } from '../../src/talk/state.ts'
import { postJson } from '../support/app.ts'

async function turn(body: Record<string, unknown>) {
  const { status, json } = await postJson('/api/turn', body)
  expect([status, json.detail]).toEqual([200, undefined])
  return turnResponse.parse(json)
}

type Said = Awaited<ReturnType<typeof turn>>

/** What the next turn sends back. */
const onward = ({ answers, parked, before }: Said) => ({ answers, parked, before })

const SO_FAR = {
  induction: 'turbocharged',
  boost: '12 psi',
  use: 'street',
  capFastening: 'two-bolt',
}

describe('a turn whose answers fit no engine', () => {
  it('keeps what was said and parked before it, and nothing of a what-if', async () => {
    const before = {
      layout: 'v8-cross-plane',
      bore: { value: 2, unit: 'in' },
      torquePeakRpm: { value: 1000, unit: 'rpm' },
      induction: 'naturally-aspirated',
    }
    const parked = { boost: { value: 12, unit: 'psi' } }
    const text = 'what if I spray a 1000 hp shot of nitrous?'
    const { status, json } = await postJson('/api/turn', { answers: before, parked, text })
    expect(status).toBe(422)
    expect(json.kept).toEqual({ answers: before, parked })
  })
})

describe('a what-if that only bounds from above', () => {
  it('supposes nothing where the build keeps to it, and says so', async () => {
    const below = await turn({ answers: SO_FAR, text: 'what if I stay under 9,000 rpm' })
    expect(below.supposed).not.toHaveProperty('peakRpm')
    expect(below.says.markdown).toMatch(
      /already stays under 9,000\srpm: [\d,]+\srpm is taken for now/,
    )
    const said = { ...SO_FAR, peakRpm: '6500 rpm' }
    const at = await turn({ answers: said, text: 'what if I never go over 6500 rpm' })
    expect(at.says.markdown).toMatch(/already stays under 6,500\srpm: 6,500\srpm is what it is/)
    const lower = await turn({ answers: said, text: 'what if I stay under 6,000' })
    expect(lower.supposed).toMatchObject({ peakRpm: { value: 6000, unit: 'rpm' } })
    const units = await turn({ answers: SO_FAR, text: 'what if I keep boost below 1 bar' })
    expect(units.says.markdown).toMatch(/already stays under 1\sbar/)
    const both = await turn({
      answers: said,
      text: 'what if I ran 18 psi and stayed under 7,000 rpm',
    })
    expect(both.supposed).toMatchObject({ boost: { value: 18 }, peakRpm: { value: 6500 } })
    expect(both.says.markdown).toMatch(/already stays under 7,000[\s\S]*With \*\*boost\*\* 18/)
  })
})

describe('POST /api/turn', () => {
  it('talks: message, answer, undo, restart, each from what the last gave', async () => {
    const first = await turn({ text: 'turbo street motor, two bolt caps, 12 psi' })
    expect(first.intent).toBe('tell')
    expect(first.answers).toMatchObject({
      induction: 'turbocharged',
      boost: { value: 12, unit: 'psi' },
    })
    expect(first.accepted.map(({ key }) => key).sort()).toEqual(Object.keys(first.answers).sort())
    expect(first.accepted.every(({ words }) => words !== '')).toBe(true)
    expect(first.says.markdown).toContain('**boost** 12 psi')
    expect(first.call).toBeNull()
    expect(first.next?.ask).toMatch(/\?$/)
    expect(first.says.markdown).toContain(first.next?.ask)

    const second = await turn({ ...onward(first), asking: 'boost', answer: '14 psi' })
    expect(second.answers.boost).toEqual({ value: 14, unit: 'psi' })
    expect(second.before).toEqual({ boost: { value: 12, unit: 'psi' } })
    expect(second.accepted).toMatchObject([{ key: 'boost', words: '', text: '14\u00a0psi' }])

    const back = await turn({ ...onward(second), text: 'undo' })
    expect(back.intent).toBe('undo')
    expect(back.answers).toEqual(first.answers)
    expect(back.says.markdown).toContain('Taken back: **boost** 12 psi')

    const fresh = await turn({ ...onward(back), text: 'start over' })
    expect([fresh.answers, fresh.parked, fresh.before, fresh.link]).toEqual([{}, {}, {}, ''])
  })

  it('gives a link that reopens the guide where it stands', async () => {
    const said = await turn({ answers: SO_FAR, asking: 'induction', answer: 'naturally-aspirated' })
    const { state } = talkFromQuery(said.link)
    expect(state.answers).toEqual(said.answers)
    expect(state.parked).toEqual(said.parked)
    expect(Object.fromEntries([...state.before].map(([key, was]) => [key, was ?? null]))).toEqual(
      said.before,
    )
  })

  it('parks answers that no longer count, says so, and brings them back', async () => {
    const parked = await turn({
      answers: SO_FAR,
      asking: 'induction',
      answer: 'naturally-aspirated',
    })
    expect(parked.parked).toEqual({ boost: { value: 12, unit: 'psi' } })
    expect(parked.answers.boost).toBeUndefined()
    expect(parked.says.markdown).toContain('Kept aside until it counts again: boost')
    const again = await turn({ ...onward(parked), asking: 'induction', answer: 'supercharged' })
    expect(again.answers.boost).toEqual({ value: 12, unit: 'psi' })
    expect(again.parked).toEqual({})
  })

  it('supposes without taking: a what-if stands beside the call', async () => {
    const said = await turn({ answers: SO_FAR, text: 'what if I ran 20 psi?' })
    expect(said.intent).toBe('what-if')
    expect(said.answers.boost).toEqual({ value: 12, unit: 'psi' })
    expect(said.accepted).toEqual([])
    expect(said.supposed?.boost).toEqual({ value: 20, unit: 'psi' })
    const { present, supposed } = said.compare ?? {}
    // More boost through the same engine pushes harder: only the direction is asserted.
    expect(supposed?.peakPressure).toBeGreaterThan(
      present?.peakPressure ?? Number.POSITIVE_INFINITY,
    )
    expect(supposed?.worstPull).toBeGreaterThan(present?.worstPull ?? Number.POSITIVE_INFINITY)
    expect(said.says.markdown).toContain('Nothing of it is taken until you keep it')
  })

  it('answers a why and a what-is from the guide’s own words, changing nothing', async () => {
    const why = await turn({ answers: SO_FAR, asking: 'boost', text: 'why?' })
    expect([why.intent, why.answers.boost]).toEqual(['why', { value: 12, unit: 'psi' }])
    expect(why.says.markdown).toContain('Cylinder pressure rises nearly in step')
    // The question that was asked stands: it is asked again after the explanation.
    expect(why.says.markdown).toMatch(/\*\*How much boost will it see at most\?\*\*[^*]*$/)
    const what = await turn({ answers: SO_FAR, text: 'what is a register?', units: 'metric' })
    expect([what.intent, what.answers]).toEqual(['explain', why.answers])
    expect(what.says.html).toMatch(/<strong>Register/i)
  })

  it('shows the call when it is asked for, and before that only after the answers it rests on', async () => {
    const result = await turn({ answers: SO_FAR, text: 'just tell me' })
    expect(result.intent).toBe('result')
    expect(result.call?.sentence).toMatch(/\.$/)
    expect(result.says.markdown).toContain('The call so far')
  })

  it('shows hostile words as plain text', async () => {
    const text =
      'bore 4.03 in <img src=x onerror=alert(1)> [x](javascript:alert(1)) **2.5 widgets** `3 things`'
    const { says, unclear } = await turn({ text })
    expect(unclear.length).toBeGreaterThan(0)
    expect(says.html).not.toMatch(/<img|<a |<code|javascript:[^<]*"/i)
    expect(says.html.replace(/<\/?(p|strong)>/g, '')).not.toMatch(/<\w/)
  })
})
