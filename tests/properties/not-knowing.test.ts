import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Answer, type Answers, UNKNOWN, withAnswer } from '../../shared/answers.ts'
import { FACT_KEYS, type FactKey } from '../../shared/fact-keys.ts'
import type { Build } from '../../src/build/build.ts'
import { buildFromAnswers } from '../../src/build/from-answers.ts'
import { newMemory } from '../../src/facts/memory.ts'
import { generateAnswers } from '../../src/rulebook/generate-answers.ts'
import { nextQuestion, type OpenQuestions, openQuestions } from '../../src/what-if/next-question.ts'
import { asAnswer, type OpenFact, openFacts } from '../../src/what-if/open-facts.ts'
import { type AskWhatIf, type QuickCall, whatIf } from '../../src/what-if/quick-call.ts'
import { rulebook, STREET_V8, said } from '../support/rulebook.ts'
import { runs } from './support.ts'

interface Asked {
  readonly answers: Answers
  readonly now: QuickCall
  readonly open: OpenQuestions
  readonly ask: AskWhatIf
}

/** Builds that leave so many facts open: few enough that a call can be settled. */
const MOST_OPEN = 7

/**
 * Well described builds: the street V8 with part of a random build's answers, where
 * every other fact but a few is given as it would be assumed.
 */
const described: fc.Arbitrary<Answers> = fc
  .record({
    seed: fc.integer({ min: 1, max: 4_000_000 }),
    share: fc.double({ min: 0, max: 1, noNaN: true }),
    open: fc.array(fc.nat(60), { minLength: 1, maxLength: MOST_OPEN }),
  })
  .map(({ seed, share, open }) => {
    const drawn = Object.entries(generateAnswers(seed)).filter(([, answer]) => answer !== UNKNOWN)
    const kept = Object.fromEntries(drawn.slice(0, Math.round(share * drawn.length)))
    const answers = { ...said(STREET_V8), ...kept } as Answers
    const build = buildFromAnswers(rulebook, answers)
    const assumed = FACT_KEYS.filter((key) => build.facts[key].state === 'assumed')
    const left = new Set(open.map((place) => assumed[place % assumed.length]))
    return assumed
      .filter((key) => !left.has(key))
      .reduce((all, key) => withAnswer(all, key, assumedAnswer(build, key)), answers)
  })

function assumedAnswer(build: Build, key: FactKey): Answer {
  const { value } = build.facts[key]
  return typeof value === 'number' ? asAnswer(build, key, value) : (value ?? UNKNOWN)
}

async function asked(answers: Answers): Promise<Asked | undefined> {
  const ask = whatIf(rulebook, newMemory())
  const now = await ask(answers)
  if (!now || now.route === null) return undefined
  return { answers, now, ask, open: await openQuestions(answers, now.build, now, rulebook, ask) }
}

/** Any value within what is plausible for an open fact, its ends and its middle included. */
function plausible(build: Build, { key }: OpenFact, place: number): Answer {
  const { couldBe, low = 0, high = 0 } = build.facts[key]
  if (couldBe)
    return couldBe[Math.min(couldBe.length - 1, Math.floor(place * couldBe.length))] ?? ''
  return asAnswer(build, key, low + (high - low) * place)
}

const places = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), {
  minLength: 48,
  maxLength: 48,
})

describe('what is not known', () => {
  /**
   * "Never firmer": a call is settled when no open answer can change it. If it is settled
   * while a fact is not known, every plausible value of that fact, given as the answer,
   * leads to the same route; and once given it is no longer open, so it is not what
   * could unsettle the call.
   */
  it('unknown for a fact never gives a firmer call than any of its values would', async () => {
    const which = fc.nat(60)
    await fc.assert(
      fc.asyncProperty(described, which, places, async (answers, index, spots) => {
        const found = await asked(answers)
        fc.pre(found !== undefined && found.open.mattering.length === 0)
        const { now, open, ask } = found
        fc.pre(open.influences.length > 0)
        const one = open.influences[index % open.influences.length]?.open
        if (!one) throw new RangeError('one fact is open')
        for (const spot of [0, 1, ...spots.slice(0, 2)]) {
          const value = plausible(now.build, one, spot)
          const then = await ask(withAnswer(answers, one.key, value))
          // No engine at all: nobody has that answer.
          if (!then) continue
          expect(then.wouldBe, `${one.key} ${JSON.stringify(value)}`).toBe(now.wouldBe)
          // Once given it is no longer open, so it is not what could unsettle the call.
          expect(openFacts(then.build, answers, rulebook).map(({ key }) => key)).not.toContain(
            one.key,
          )
        }
      }),
      runs(30),
    )
  })

  it('"I don’t know" is no firmer than saying nothing', async () => {
    await fc.assert(
      fc.asyncProperty(described, fc.nat(60), async (answers, index) => {
        const found = await asked(answers)
        fc.pre(found !== undefined && found.open.influences.length > 0)
        const { open, ask, now } = found
        const key = open.influences[index % open.influences.length]?.open.key ?? 'bore'
        const unsure = withAnswer(answers, key, UNKNOWN)
        const then = await ask(unsure)
        if (!then) throw new RangeError('what was left open is an engine still')
        expect(then.wouldBe).toBe(now.wouldBe)
        const left = await openQuestions(unsure, then.build, then, rulebook, ask)
        const names = (of: OpenQuestions) => of.mattering.map((one) => one.open.key).sort()
        expect(names(left)).toEqual(names(open))
      }),
      runs(25),
    )
  })

  it('no combination of open answers changes a call that is settled, or one with no question left', async () => {
    let settled = 0
    await fc.assert(
      fc.asyncProperty(
        described,
        fc.array(places, { minLength: 6, maxLength: 6 }),
        async (answers, draws) => {
          const found = await asked(answers)
          fc.pre(found !== undefined)
          const { now, open, ask } = found
          const done = open.mattering.length === 0 || nextQuestion(open) === undefined
          fc.pre(done)
          settled++
          for (const spots of draws) {
            const combined = open.influences.reduce(
              (all, { open: fact }, index) =>
                withAnswer(all, fact.key, plausible(now.build, fact, spots[index] ?? 0.5)),
              answers,
            )
            const then = await ask(combined)
            if (then) expect(then.wouldBe, JSON.stringify(combined)).toBe(now.wouldBe)
          }
        },
      ),
      runs(60),
    )
    expect(settled).toBeGreaterThan(30)
  })
})
