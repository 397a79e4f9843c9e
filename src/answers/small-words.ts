import { z } from 'zod'
import { phrases } from './phrase-list.ts'

/** Small words that the reader looks at beside figures and persons. */
export const smallWords = z.strictObject({
  /** Verbs of a builder: "building a V8 for my dad". */
  builds: phrases,
  /** Right before a bare amount they make it a price: "he charges 350". */
  charges: phrases,
  /** Parts with bolts or studs of their own, which are not the mains. */
  fastenedParts: phrases,
  /** What somebody before may have done to this engine: "somebody put steel caps on it". */
  fits: phrases,
  /** Between the two ends of a guess: "14, maybe 16". */
  guesses: phrases,
  /** In the clause of a pressure they make it boost after all: "runs on fuel at 12 psi". */
  boosters: phrases,
  /** In the clause of a pressure they make it their own. */
  fluids: phrases,
  /** Where people meet: "a fella in our club". */
  haunts: phrases,
  /** Beside a share they make it what is lost on the way to the wheels. */
  lost: phrases,
  /** Words that make an amount no price of a part or job. */
  notPrice: phrases,
  /** Words that make an answer another engine's after all, or an earlier one. */
  notReported: phrases,
  /** Words that make a price what somebody else paid. */
  paid: phrases,
  /** Before "my" they tell where somebody is: "a bloke down my street". */
  places: phrases,
  /** Beside an amount they make it the price of what was last spoken of. */
  priced: phrases,
  /** Things that figures are read off: "the tag says 302". */
  readOff: phrases,
  /** Between a denied figure and what it is instead. */
  replaces: phrases,
  /** Words by which an answer is passed on: "the seller said nodular". */
  reported: phrases,
  /** Verbs before pounds of boost: "ran 8 pounds". */
  runs: phrases,
  /** Who works on the engine for the person. */
  shops: phrases,
  /** Verbs of saying. */
  says: phrases,
  /** Between "now" or "but" and the figure that is set against the one before. */
  setAgainst: phrases,
  /** Parts that "they" may be: "caps, they got jumbled". */
  theyParts: phrases,
  /** After pounds they make them a weight or a force. */
  weighed: phrases,
})
export type SmallWords = z.infer<typeof smallWords>
