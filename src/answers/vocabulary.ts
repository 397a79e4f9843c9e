import { z } from 'zod'
import { choicesOf, readAnswer } from '../../shared/answers.ts'
import { type FactKey, fact, isFactKey } from '../../shared/fact-keys.ts'
import { routeId } from '../../shared/route-ids.ts'
import { UNITS } from '../../shared/units.ts'
import { phrases } from './phrase-list.ts'
import { jobQuestionVocabulary, questionVocabulary } from './question-vocabulary.ts'
import { smallWords } from './small-words.ts'

const table = z.record(z.string(), z.number())
const factKey = z.string().refine(isFactKey, 'is no fact key')

/** An answer that the vocabulary gives is one that its fact takes. */
function fitsItsFact(
  { fact: key, answer }: { readonly fact: string; readonly answer: string },
  context: z.core.$RefinementCtx,
): void {
  const read = isFactKey(key) ? readAnswer(key, answer) : undefined
  if (read && 'problem' in read) {
    context.addIssue({ code: 'custom', path: ['answer'], message: read.problem.fits })
  }
}

const numberVocabulary = z.strictObject({
  ones: table,
  teens: table,
  tens: table,
  scales: table,
  parts: table,
  /** Before a number they are a hundred: "a buck fifty". */
  hundreds: phrases,
  /** Right after a number they leave it as it is: "8-ish". */
  ish: phrases,
  /** After "a" and before a scale they are two: "a couple grand". */
  pair: phrases,
  moneyScales: phrases,
  point: phrases,
  rangeWords: phrases,
  toOne: phrases,
  /** Words before a figure that make it less than nothing. */
  belowZero: phrases,
  over: phrases,
  /** Before a bare number like thirty they make it an oversize: "it's been punched thirty". */
  punched: phrases,
  /** Between those and the number: "bored it thirty". */
  punchedOut: phrases,
  thou: phrases,
  notInchBefore: phrases,
  /** Before "hundred" they make it no one hundred: "a few hundred fifty". */
  many: phrases,
  /** Units that people halve in words: "half a bar". */
  halved: phrases,
  /** Sixteenths of an inch, by the words for the size of a thread: "half inch thirteen". */
  threadSizes: table,
  /** Between the size of a thread and its pitch: "half inch coarse thirteen". */
  threadKinds: phrases,
  /** After a pitch they say that it is one: "half inch, thirteen threads". */
  threads: phrases,
  /** After "12 by 1.75" they make it a thread. */
  threaded: phrases,
  /** Between such a thread and those: "12 by 1.75 metric bolts". */
  beforeThreaded: phrases,
  /** After what looks like a pitch they say that it is none: "half inch, 13 of them". */
  notThreads: phrases,
})
export type NumberVocabulary = z.infer<typeof numberVocabulary>

const unitVocabulary = z.strictObject({
  units: z.record(
    z
      .string()
      .refine(
        (symbol) => Object.hasOwn(UNITS, symbol),
        `use a unit: ${Object.keys(UNITS).join(', ')}`,
      ),
    phrases,
  ),
  /** Units that people close with a point: "4.030 in. bore". */
  pointed: phrases,
  shot: phrases,
  wheel: phrases,
  currencies: z.record(z.string().regex(/^[A-Z]{3}$/), phrases),
  signs: z.record(z.string(), z.string()),
  signPrefixes: z.record(z.string(), z.string()),
  dollars: phrases,
  /** Words after a price that make it the price of a part of the job. */
  inPart: phrases,
  /** Work and parts, by the fact that their price is. */
  pricedAs: z.record(factKey, phrases),
  /** Words that are a figure by themselves: "no sales tax". */
  fixedFigures: z.array(
    z.strictObject({ fact: factKey, answer: z.string(), phrases }).superRefine(fitsItsFact),
  ),
  /** Words that show a message to speak of money. */
  moneyWords: phrases,
  usualCurrency: z.string().regex(/^[A-Z]{3}$/),
})
export type UnitVocabulary = z.infer<typeof unitVocabulary>

/** Phrases that name a figure. A weak one only counts with a unit or close by. */
const cue = z.strictObject({
  fact: factKey,
  phrases,
  weak: z.boolean().optional(),
  /** The figure must stand right before: a "3.75 crank". */
  before: z.boolean().optional(),
  /** The figure must carry a unit of its own (or, with "lb", be a bare pound). */
  needsUnit: z.boolean().optional(),
  /** Words one of which must stand before in the sentence: "wide" is the caps' or the bearings'. */
  beside: phrases.optional(),
  /** Words none of which may: the bore of a gasket is not the engine's. */
  notBeside: phrases.optional(),
})
export type Cue = z.infer<typeof cue>

/** Figures of the trade that the guide does not use. */
const noise = z.strictObject({
  what: z.string(),
  phrases,
  /** Kinds of figure that it takes up; a figure of another kind stays free. */
  fits: z.array(z.string()),
  /** The largest bare figure that it takes up: no camshaft has 6600 of anything. */
  most: z.number().optional(),
  /** What is counted: it takes up only figures before it, "3 shops". */
  counted: z.boolean().optional(),
  /** Whether the phrases are units: one right after a figure is that figure's, whatever is named before. */
  unit: z.boolean().optional(),
})
export type Noise = z.infer<typeof noise>

const partsVocabulary = z.strictObject({
  nouns: z.record(z.string(), phrases),
  attributes: z.array(
    z.strictObject({
      phrases,
      of: z.record(z.string(), z.record(factKey, z.string())),
    }),
  ),
  /** Words that may stand between a part and what is said of it. */
  between: phrases,
  /** Phrases that look like a choice or a part and are none: "head studs". */
  shadows: phrases,
})
export type PartsVocabulary = z.infer<typeof partsVocabulary>

const markerVocabulary = z.strictObject({
  negation: phrases,
  otherPerson: phrases,
  ownPerson: phrases,
  hypothetical: phrases,
  /** A denial after what it denies: "the intercooler, there isn't one". */
  deniedAfter: phrases,
  /** Thoughts said after what they are about: "a girdle would be nice". */
  thoughtAfter: phrases,
  /** Thoughts that hold to the end of their sentence, not only of their clause. */
  thoughtLong: phrases,
  planned: phrases,
  past: phrases,
  /** What is over, said after what it is about: "a turbo was the plan, fell through". */
  pastAfter: phrases,
  present: phrases,
  correction: phrases,
  /** What says the last figure anew, and better: "to be exact". */
  restated: phrases,
  neutral: phrases,
  dontKnow: phrases,
  changing: phrases,
  fillers: phrases,
  yes: phrases,
  no: phrases,
})
export type MarkerVocabulary = z.infer<typeof markerVocabulary>

const choiceWords = z
  .record(factKey, z.record(z.string(), phrases))
  .superRefine((words, context) => {
    for (const [key, values] of Object.entries(words)) {
      if (!isFactKey(key)) continue
      for (const value of Object.keys(values)) {
        if (Object.hasOwn(choicesOf(fact(key as FactKey)), value)) continue
        context.addIssue({
          code: 'custom',
          path: [key, value],
          message: 'is no choice of this fact',
        })
      }
    }
  })

/** How people describe a choice without naming it, and beside which words that counts. */
const clue = z
  .strictObject({
    fact: factKey,
    value: z.string(),
    near: phrases,
    /** Needed even when the fact is the one asked. */
    always: z.boolean().optional(),
    phrases,
  })
  .superRefine(({ fact: key, value }, context) => {
    if (!isFactKey(key) || Object.hasOwn(choicesOf(fact(key)), value)) return
    context.addIssue({ code: 'custom', path: ['value'], message: 'is no choice of this fact' })
  })

const spellingVocabulary = z.strictObject({
  fixes: z.record(z.string(), z.string()),
  keep: phrases,
  /** Measures that people contract with "is": "bore's 4.03". */
  measures: phrases,
  /** Words of four letters that are known with two neighbours changed about: "blot". */
  turned: phrases,
})

/** Everything that a vocabulary holds; its files are in {@link vocabularyFromFiles}. */
export const vocabularySchema = z.strictObject({
  numbers: numberVocabulary,
  units: unitVocabulary,
  cues: z.array(cue),
  noise: z.array(noise),
  /** Words that settle a choice wherever they stand. */
  choices: choiceWords,
  /** Descriptions that settle a choice beside the part that they describe. */
  clues: z.array(clue),
  /** What a choice word means when it is denied: "not intercooled". */
  denied: choiceWords,
  /** Words that settle a choice only as an answer to its question. */
  asked: choiceWords,
  /** Words that could mean several choices, with what to ask. */
  ambiguous: z.array(z.strictObject({ phrases, why: z.string(), unless: factKey.optional() })),
  /** What people call the facts that are no figures. */
  names: z.record(factKey, phrases),
  parts: partsVocabulary,
  markers: markerVocabulary,
  intents: z.record(
    z.enum(['undo', 'restart', 'result', 'what-if', 'why', 'explain', 'change', 'none']),
    phrases,
  ),
  jobQuestions: jobQuestionVocabulary,
  questions: questionVocabulary,
  /** How people say that what was supposed is to stay. */
  keeping: phrases,
  /** How people say that nothing of what was supposed is to stay. */
  leaving: phrases,
  /** What people call the routes when they ask about one: "do I need a girdle?" */
  routesAsked: z.record(routeId, phrases),
  explainMiddle: z.strictObject({
    articles: phrases,
    endings: phrases,
    /** Names of things that are asked about themselves, not a measure of them: "what is a register?" */
    things: phrases,
  }),
  octane: z.strictObject({
    words: phrases,
    pumpTo: z.number(),
    raceFrom: z.number(),
    /** Grades of the pump that are written bare: "street driven, 93". */
    pump: z.array(z.number()),
  }),
  words: smallWords,
  spelling: spellingVocabulary,
})
export type Vocabulary = z.infer<typeof vocabularySchema>
