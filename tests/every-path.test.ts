import { describe, expect, it } from 'vitest'
import { type Answer, type Answers, choicesOf, UNKNOWN, withAnswer } from '../shared/answers.ts'
import { FACT_KEYS, type FactKey, fact } from '../shared/fact-keys.ts'
import { park } from '../src/build/relevance.ts'
import { newMemory } from '../src/facts/memory.ts'
import { type RandomStream, randomStream } from '../src/mechanics/seeded-random.ts'
import { neededQuestion, nextQuestion, openQuestions } from '../src/what-if/next-question.ts'
import { asAnswer } from '../src/what-if/open-facts.ts'
import { type QuickCall, whatIf } from '../src/what-if/quick-call.ts'
import { rulebook, STREET_V8, said } from './support/rulebook.ts'

type Reply = (key: FactKey, call: QuickCall, random: RandomStream) => Answer

/** The ways in which a person may answer every question. */
const PEOPLE: Readonly<Record<string, Reply>> = {
  'knows nothing': () => UNKNOWN,
  'takes the first choice': (key, { build }) => choices(key)[0] ?? figure(key, build, 0),
  'takes the last choice': (key, { build }) => choices(key).at(-1) ?? figure(key, build, 1),
  'answers anything': (key, { build }, random) => anything(key, build, random),
  'knows half of it': (key, { build }, random) =>
    random.fraction() < 0.5 ? UNKNOWN : anything(key, build, random),
}

function choices(key: FactKey): string[] {
  return Object.keys(choicesOf(fact(key))).filter((choice) => choice !== UNKNOWN)
}

function figure(key: FactKey, build: QuickCall['build'], place: number): Answer {
  const { low, high, value } = build.facts[key]
  if (low === undefined || high === undefined) return value ?? UNKNOWN
  return asAnswer(build, key, low + (high - low) * place)
}

function anything(key: FactKey, build: QuickCall['build'], random: RandomStream): Answer {
  const list = choices(key)
  return list.length > 0
    ? (list[random.below(list.length)] ?? UNKNOWN)
    : figure(key, build, random.fraction())
}

interface Walk {
  readonly asked: readonly FactKey[]
  readonly answers: Answers
  readonly call: QuickCall
  readonly settled: boolean
}

/** Ask and answer until no question is left. */
async function walk(reply: Reply, seed: number): Promise<Walk> {
  const random = randomStream(seed)
  const ask = whatIf(rulebook, newMemory())
  const asked: FactKey[] = []
  let answers: Answers = {}
  for (;;) {
    const call = await ask(answers)
    if (!call) throw new RangeError(`no engine: ${JSON.stringify(answers)}`)
    const needed = await neededQuestion(answers, call.build, call, rulebook, ask)
    const open = await openQuestions(answers, call.build, call, rulebook, ask)
    const next = needed ?? nextQuestion(open)
    if (!next) return { asked, answers, call, settled: open.mattering.length === 0 }
    if (asked.length > FACT_KEYS.length) throw new RangeError(`asks for ever: ${asked.join()}`)
    asked.push(next.key)
    answers = park(
      rulebook.relevance,
      withAnswer(answers, next.key, reply(next.key, call, random)),
      {},
    ).answers
  }
}

describe('every conversation reaches a call', () => {
  it.each(Object.entries(PEOPLE).map(([who, reply], index) => ({ who, reply, seed: index + 1 })))(
    'of somebody who $who',
    async ({ who, reply, seed }) => {
      const { asked, answers, call, settled } = await walk(reply, seed)
      if (who === 'knows nothing') expect(settled).toBe(false)
      expect(new Set(asked).size, 'no question comes twice').toBe(asked.length)
      const essential = rulebook.questions.filter((question) => question.essential)
      const never = essential.filter(
        ({ fact: key }) =>
          call.build.facts[key as FactKey].state !== 'not-needed' &&
          answers[key as FactKey] === undefined,
      )
      expect(never.map(({ fact: key }) => key)).toEqual([])
      // A call, or a contradiction by name.
      expect(call.route !== null || call.contradictions.length > 0).toBe(true)
    },
  )

  it.each(rulebook.questions.map((question) => question.fact as FactKey))(
    '%s can be answered in every way',
    async (key) => {
      const ask = whatIf(rulebook, newMemory())
      const base = said(STREET_V8)
      const open = await ask(withAnswer(base, key, UNKNOWN))
      if (!open) throw new RangeError(`no engine without ${key}`)
      const { build } = open
      const ways: Answer[] = [UNKNOWN, ...choices(key)]
      if (choices(key).length === 0) for (const end of [0, 1]) ways.push(figure(key, build, end))
      for (const way of ways) {
        // A figure that no engine has may be refused; it never brings the guide down.
        const call = await ask(withAnswer(base, key, way))
        expect(call === undefined || call.route !== null || call.contradictions.length > 0).toBe(
          true,
        )
      }
    },
  )
})
