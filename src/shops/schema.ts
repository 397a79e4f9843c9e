import { z } from 'zod'
import { readAnswers } from '../../shared/answers.ts'
import { problemSentence } from '../../shared/problem.ts'
import { contrast } from './contrast.ts'
import { originFault } from './origins.ts'

/** Words on the accent colour, and the grounds on which it is drawn, as the stylesheet has them. */
const WORDS_ON_ACCENT = ['#f7f6ef', '#f2f0e6']
const PAPER = '#f3f0e6'
/** Enough for words, and enough for the edge of a control (WCAG 2.2, 1.4.3 and 1.4.11). */
const FOR_WORDS = 4.5
const FOR_EDGES = 3

const line = (most: number) =>
  z
    .string()
    .min(2)
    .max(most)
    .regex(/^\P{Cc}+$/u, 'one line of plain text')

const priceRange = z
  .strictObject({
    low: z.number().min(0).max(100_000),
    likely: z.number().min(0).max(100_000),
    high: z.number().min(0).max(100_000),
  })
  .refine(({ low, likely, high }) => low <= likely && likely <= high, 'low ≤ likely ≤ high')

const accent = z
  .string()
  .regex(/^#[0-9a-f]{6}$/i, 'write #rrggbb')
  .superRefine((colour, context) => {
    if (!/^#[0-9a-f]{6}$/i.test(colour)) return
    const words = Math.min(...WORDS_ON_ACCENT.map((words) => contrast(colour, words)))
    const edge = contrast(colour, PAPER)
    if (words >= FOR_WORDS && edge >= FOR_EDGES) return
    context.addIssue({
      code: 'custom',
      message: `too pale: its contrast to the words on it is ${words.toFixed(2)}, to paper ${edge.toFixed(2)}; at least ${FOR_WORDS} and ${FOR_EDGES} are needed`,
    })
  })

const origin = z.string().superRefine((text, context) => {
  const fault = originFault(text)
  if (fault) context.addIssue({ code: 'custom', message: fault })
})

const firstAnswers = z.record(z.string(), z.unknown()).transform((raw, context) => {
  const { answers, problems } = readAnswers(raw)
  for (const problem of problems) {
    context.addIssue({ code: 'custom', message: problemSentence(problem) })
  }
  return answers
})

/** A shop's own file: who it is, what it asks and can do, where it may show the guide. */
export const shopSchema = z.strictObject({
  id: z.string().regex(/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/, 'lower case words joined by dashes'),
  name: line(60),
  contact: z.strictObject({
    email: z.email().max(120),
    phone: line(40).optional(),
    place: line(80).optional(),
  }),
  /** An invented shop that shows how it works. */
  demo: z.boolean().default(false),
  currency: z.string().regex(/^[A-Z]{3}$/),
  /** Prices before tax by the ids of rules/cost.json; what is left out keeps the guide's own range. */
  prices: z.record(z.string(), priceRange).default({}),
  /** Sales tax, percent. */
  tax: z.number().min(0).max(40).optional(),
  /** What the shop does in its own house. */
  does: z.strictObject({ bore: z.boolean(), hone: z.boolean(), drill: z.boolean() }),
  accent: accent.optional(),
  units: z.enum(['us', 'metric']).default('us'),
  /** Sites that may show the frame. */
  origins: z.array(origin).min(1).max(20),
  /** Answers that the guide starts with in this shop's frame. */
  answers: firstAnswers.default({}),
})

export type Shop = z.output<typeof shopSchema>
