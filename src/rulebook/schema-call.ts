import { z } from 'zod'
import { phrase, wording } from './places.ts'
import { ruleSource, sentence } from './schema.ts'

/** What rules/call.json has to look like: what is said of a call beside its rules and its route. */
export const callSchema = z.strictObject({
  /** Why another route is not called, where no rule of its own says so. */
  insteadOf: z.strictObject({
    beyondBudget: wording('price', 'budget'),
    changesMore: wording(),
    dearer: wording('price'),
    /** The call costs something too. */
    dearerThanCall: wording('price', 'more'),
    /** It changes less than a called route, and no rule of practice says why that is not enough. */
    notTrusted: wording(),
    planHolds: wording(),
    practiceAsks: wording('asked', 'holdsIn', 'target'),
    targetFound: wording('target'),
    targetNotFound: wording('target'),
  }),
  /** What kept caps still need at the shop, within the sentence of the call. */
  kept: z.strictObject({ bored: phrase(), honed: phrase() }),
  lowered: z.strictObject({
    /** Lowest speed that is tried, as a share of the planned one. */
    leastSpeed: z.number().min(0.1).max(0.95),
    because: sentence,
    source: ruleSource,
    /** Which open answers move the target most. */
    moves: wording('facts'),
    nitrous: phrase('power'),
    none: phrase('target'),
    target: phrase('parts', 'power'),
    withoutBoost: phrase('speed'),
    withoutNitrous: phrase('speed'),
  }),
  withheld: z.strictObject({ sentence: wording('contradictions'), title: phrase() }),
})
/** What is said of a call beside its rules, as rules/call.json has it. */
export type CallWords = z.infer<typeof callSchema>
