import { z } from 'zod'
import { phrases } from './phrase-list.ts'

/** How people ask, suppose and take back, where the words alone do not settle it. */
export const questionVocabulary = z.strictObject({
  /** They ask, whatever figures they name: "why 4 bolts at 9 psi". */
  openly: phrases,
  /** What opens a clause that tells something after a question: "why ask, its 9 psi". */
  asserts: phrases,
  /** What looks like that and tells nothing: "I thought two would do". */
  believes: phrases,
  /** What makes a sentence beside a "why" an argument: "480 for that seems daft". */
  opinions: phrases,
  /** They make a "why" one about what is asked or called. */
  reasons: phrases,
  /** They make a "why" one about how things work. */
  mechanisms: phrases,
  /** They ask what a question has to do with the matter. */
  relevance: phrases,
  /** They ask what a word takes in: "does moly mean the grease?" */
  terms: phrases,
  /** They ask beside a supposition what is said then, and suppose nothing more. */
  verdicts: phrases,
  /** What opens a supposition when a question goes with it: "were it on E85, would it live?" */
  supposes: phrases,
  /** Words before their subject in a question. */
  auxiliaries: phrases,
  /** What may follow those. */
  subjects: phrases,
  /** How people speak of what they said before. */
  earlier: phrases,
  /** After the name of a fact they take back what was said of it. */
  wrongly: phrases,
  /** After "I said" they make it what no longer holds. */
  previously: phrases,
  /** Verbs of putting one thing in another's place. */
  exchanges: phrases,
  /** What sets something against what was said before. */
  contrasts: phrases,
  /** What takes back what was said before. */
  revises: phrases,
  /** After a denial they deny what was said before: "it isn't iron after all". */
  retracts: phrases,
  /** What sets a new figure against the one before. */
  replaces: phrases,
  /** Verbs that ask for a change when they open a clause. */
  changes: phrases,
  /** What a bare choice may follow: "change it to mixed". */
  changesTo: phrases,
  /** They leave an answer to somebody else: "ask my builder". */
  defers: phrases,
  /** So do these where the message ends on "I don't": "the boss would know". */
  othersKnow: phrases,
  /** Ends of a message that says who does not know. */
  notMe: phrases,
  /** Verbs that do so when somebody is asked: "could you set". */
  sets: phrases,
})
export type QuestionVocabulary = z.infer<typeof questionVocabulary>

/** Verbs that open a question about the job, and the words that make it one. */
export const jobQuestionVocabulary = z.strictObject({
  supposing: phrases,
  asking: phrases,
  holds: phrases,
  wants: phrases,
})
