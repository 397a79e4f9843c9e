import { describe, expect, it } from 'vitest'
import { readAnswers, withAnswer } from '../../shared/answers.ts'
import { ROUTE_IDS, type RouteId } from '../../shared/route-ids.ts'
import { buildFromAnswers } from '../../src/build/from-answers.ts'
import { type Memory, newMemory } from '../../src/facts/memory.ts'
import { trialsOf } from '../../src/facts/trials.ts'
import { rulebook } from '../support/app.ts'

const ANSWERS = readAnswers({
  layout: 'v8-cross-plane',
  induction: 'turbocharged',
  boost: { value: 12, unit: 'psi' },
  peakRpm: { value: 6500, unit: 'rpm' },
}).answers

/** All margins of every case of every route, tried in an order. */
function marginsIn(order: readonly RouteId[], memory: Memory, answers = ANSWERS) {
  const trials = trialsOf(buildFromAnswers(rulebook, answers), rulebook, memory)
  const found = new Map(order.map((id) => [id, trials.trial(id).result]))
  return ROUTE_IDS.map((id) => ({
    holdsIn: found.get(id)?.holdsIn,
    cases: found.get(id)?.cases,
  }))
}

/** Answers that differ in one thing that the gas, the masses, the joint or only the price rests on. */
const OTHERS = [
  withAnswer(ANSWERS, 'boost', { value: 15, unit: 'psi' }),
  withAnswer(ANSWERS, 'reciprocatingMass', { value: 800, unit: 'g' }),
  withAnswer(ANSWERS, 'reciprocatingMass', { value: 800, low: 700, high: 900, unit: 'g' }),
  withAnswer(ANSWERS, 'bore', { value: 4, low: 3.9, high: 4.1, unit: 'in' }),
  withAnswer(ANSWERS, 'fastenerTorque', { value: 80, unit: 'lb ft' }),
  withAnswer(ANSWERS, 'tightening', 'stretch'),
  withAnswer(ANSWERS, 'mainJournalDiameter', { value: 2.6, unit: 'in' }),
  withAnswer(ANSWERS, 'targetPower', { value: 600, unit: 'hp' }),
  withAnswer(ANSWERS, 'invested', { value: 20_000, currency: 'USD' }),
]

describe('what is remembered', () => {
  it('changes no margin, whichever route is tried first', () => {
    const there = marginsIn(ROUTE_IDS, newMemory())
    const back = marginsIn([...ROUTE_IDS].reverse(), newMemory())
    expect(back).toEqual(there)
  })

  it('changes no margin, whatever was looked at before', () => {
    const memory = newMemory()
    for (const answers of [ANSWERS, ...OTHERS, ANSWERS]) {
      expect(marginsIn(ROUTE_IDS, memory, answers)).toEqual(
        marginsIn(ROUTE_IDS, newMemory(), answers),
      )
    }
  })

  it('keeps apart what differs and takes over what does not', () => {
    const memory = newMemory()
    for (const answers of [ANSWERS, ...OTHERS]) marginsIn(ROUTE_IDS, memory, answers)
    // Boost, bore and target change the gas; the torque, the way of tightening, the journal and
    // the stake do not, nor do the masses.
    expect(memory.gas.size).toBe(4)
    expect(memory.loads.size).toBe(6)
  })
})
