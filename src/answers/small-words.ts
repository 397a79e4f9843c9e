import { z } from 'zod'
import { phrases } from './phrase-list.ts'

/** Whose engine is spoken of, and by whom. */
const persons = z.strictObject({
  /** Verbs of a builder: "building a V8 for my dad". */
  builds: phrases,
  /** What somebody before may have done to this engine: "somebody put steel caps on it". */
  fits: phrases,
  /** Verbs of saying. */
  says: phrases,
  /** Before "from" they tell where an engine is from: "bought it from my uncle". */
  bought: phrases,
  /** Who is told, not whose engine it is: "to recap for anyone joining late". */
  told: phrases,
  /** Who had this engine before: "line honed by the previous owner". */
  before: phrases,
  /** What somebody else may own with an engine in it: "the boss's race car". */
  vehicles: phrases,
  /** Subjects of a clause that make what it says of shops untrue: "nobody here line bores". */
  nobody: phrases,
  /** People whose engine it is when somebody works on it for them; later on they are "he". */
  customers: phrases,
  /** What those are called later on. */
  he: phrases,
  /** Words that "is" is drawn to, which own nothing: "she's a two bolt". */
  contracted: phrases,
  /** Before "my" they tell where somebody is: "a bloke down my street". */
  places: phrases,
  /** Where people meet: "a fella in our club". */
  haunts: phrases,
  /** Who works on the engine for the person. */
  shops: phrases,
  /** What a shop does to know: "the machinist cc'd it and says 10.2". */
  measures: phrases,
  /** Things that figures are read off: "the tag says 302". */
  readOff: phrases,
  /** Words by which an answer is passed on: "the seller said nodular". */
  reported: phrases,
  /** Words that make an answer another engine's after all, or an earlier one. */
  notReported: phrases,
  /** Parts that "they" may be: "caps, they got jumbled". */
  theyParts: phrases,
})

/** What engines are called, and whether it is this one. */
const engines = z.strictObject({
  /** An engine by its plain name; it counts in each list below. */
  names: phrases,
  /** After a bare number they make it the size: "383 stroker", "400 small block". */
  sized: phrases,
  /** After "400 in" they make it cubic inches: "400 in iron block". */
  ofBlock: phrases,
  /** Before "a 408" they make it the size by which an engine is called: "it's a 408". */
  called: phrases,
  /** Where a message opens they make a bare number after them its size: "mild 350", "small block 400". */
  calledAfter: phrases,
  /** The engine as it was made: "thirty over a stock 4.000". */
  standard: phrases,
  /** Beside a bore they make it the one before it was bored: "it started at 4.000". */
  began: phrases,
  /** What opens a sentence on one's own engine: "mine has a 3.5 in it"; so does who works on it. */
  own: phrases,
  /** In its sentence they make what was before another engine's: "the block I sold". */
  others: phrases,
})

/** When something is or was. */
const times = z.strictObject({
  /** As it is today: "10.5:1 now". */
  now: phrases,
  /** What was done to make it so; like "now", but only after how it was. */
  fitted: phrases,
  /** Before 1994 they make it a year: "built 1994". */
  years: phrases,
})

/** What makes an amount a price, and of what. */
const prices = z.strictObject({
  /** Right before a bare amount they make it a price: "he charges 350". */
  charges: phrases,
  /** Beside an amount they make it the price of what was last spoken of. */
  priced: phrases,
  /** Things, known from other phrases, that money is spent on besides the engine's bottom end. */
  otherThings: phrases,
  /** Right after a part they say that it is not bought: "steel caps cost too much". */
  dear: phrases,
  /** Words that make a price what somebody else paid. */
  paid: phrases,
  /** Words that make an amount no price of a part or job. */
  notPrice: phrases,
  /** Parts and jobs of a list of prices: "caps 285, studs 165, hone 250". */
  jobs: phrases,
  /** Between the amount and the job in such a list: "250 for the line hone". */
  beforeJobs: phrases,
  /** Before an amount "in it" they make it what somebody has in the engine: "got 5500 in it". */
  stakes: phrases,
  /** Between an amount and the other part that it was paid for: "1200 on new heads". */
  beforeParts: phrases,
})

/** What stands beside figures. */
const figures = z.strictObject({
  /** Before a figure they change nothing: "about 6500". */
  about: phrases,
  /** Between the two ends of a guess: "14, maybe 16". */
  guesses: phrases,
  /** They make a speed how far it revs: "7k tops", "max 6800 rpm". */
  most: phrases,
  /** After a denial they make a limit of it: "never over 6200". */
  limits: phrases,
  /** Before a figure they make it an upper end: "stay under 6,000". */
  under: phrases,
  /** Between a power or torque and the speed that it peaks at: "720 peak hp at 6800". */
  peaks: phrases,
  /** After the answer to a question they only say what it counts in: "590 g with rings". */
  including: phrases,
  /** Between a denied figure and what it is instead. */
  replaces: phrases,
  /** Between "now" or "but" and the figure that is set against the one before. */
  setAgainst: phrases,
  /** Verbs before pounds of boost: "ran 8 pounds". */
  runs: phrases,
  /** After pounds they make them a weight or a force. */
  weighed: phrases,
  /** In the clause of a pressure they make it their own. */
  fluids: phrases,
  /** In the clause of a pressure they make it boost after all: "runs on fuel at 12 psi". */
  boosters: phrases,
  /** Beside a share they make it what is lost on the way to the wheels. */
  lost: phrases,
  /** They make a speed a limit: it counts before one at which gears are changed. */
  revLimits: phrases,
  /** Units of a speed on the road, at which an engine turns no redline. */
  roadSpeeds: phrases,
})

/** Of the bolts and studs, and of what they hold. */
const fasteners = z.strictObject({
  bolts: phrases,
  studs: phrases,
  /** Other words for fasteners of any part: "head nuts". */
  kinds: phrases,
  /** In a sentence with "torque 95" they make it the torque of the mains. */
  ofMains: phrases,
  /** After another part's fasteners they bring the mains back. */
  mains: phrases,
  /** Parts with bolts or studs of their own, which are not the mains. */
  otherParts: phrases,
  /** What studs are made of, and no part: "chromoly". */
  metals: phrases,
  /** Before 10.9 they make it a strength class. */
  grades: phrases,
  /** They make a sentence one of torques, so that the next may leave its unit out. */
  torques: phrases,
  /** Between another part and its torque: "the heads get 65". */
  takes: phrases,
  /** Beside the last of several torques: "95 for the final pass". */
  last: phrases,
  /** Between a torque and the turn after it: "15 ft-lb plus 80 degrees". */
  turns: phrases,
  /** Units of that turn. */
  degrees: phrases,
})

/** The parts that go up and down with a piston. */
const moving = z.strictObject({
  pistons: phrases,
  /** What is weighed with a piston: pins, rings, locks. */
  withPistons: phrases,
  /** Between them. */
  joins: phrases,
})

/** Small words of asking, answering and taking back. */
const asking = z.strictObject({
  /** Before a question they change nothing: "so, should I go to 12:1?" */
  openers: phrases,
  /** Before a request they change nothing, nor do the openers: "sorry mate, could you undo". */
  leads: phrases,
  /** Said to be polite, after a request or before it. */
  please: phrases,
  /** Right before a verb they ask for it, as "please" does: "could you set". */
  asked: phrases,
  /** Who is asked so, and who is spoken to: "could you set". */
  you: phrases,
  no: phrases,
  yes: phrases,
  /** First words of a question how things work: "why do studs clamp better". */
  why: phrases,
  /** After "why" they make it answered: "why? because I can". */
  because: phrases,
  /** They open a clause of their own: "it was 10:1 but now it's 9.4". */
  clauses: phrases,
  /** After a word of the trade they ask what it means: "splayed meaning". */
  lookedUp: phrases,
  /** First words of "no idea what", which asks nothing where it names a fact. */
  shrugs: phrases,
  /** How an answer was given: "I quoted the bore wrongly". */
  stated: phrases,
  /** Words that a question opens on. */
  questioning: phrases,
  /** After those they change nothing: "what precisely is". */
  adverbs: phrases,
  /** First words of what was not done to find out: "haven't pulled the pan". */
  notYet: phrases,
  /** First words of shrugs that only wonder what may come: "who knows". */
  musing: phrases,
  /** To a question of a figure they answer it: "let's say 9". */
  supposing: phrases,
  /** Last words of a "what if" that is one only with something to suppose. */
  looseWhatIf: phrases,
  /** Last words of what leaves a question open: "I'd have to look". */
  defers: phrases,
  /** They ask for the end even beside facts: "just the verdict". */
  insists: phrases,
  /** First words of the end that ask for it only with no figure told after them. */
  ofTheEnd: phrases,
  /** First words of what ends the telling and, with figures, asks nothing: "that's all I have". */
  ends: phrases,
  /** First words of starting over that, beside facts, name a part: "new build, factory caps". */
  anew: phrases,
  /** Words that alone, with no fact told, change nothing: "oops". */
  singleChange: phrases,
})

/** Plain names of parts, where a reader looks for one beside something else. */
const parts = z.strictObject({
  block: phrases,
  caps: phrases,
  /** With a torque in their sentence they make it the main fasteners'. */
  mains: phrases,
  heads: phrases,
  crank: phrases,
  rods: phrases,
  /** After "crank" they make it what a skirt is measured by. */
  centerline: phrases,
  bore: phrases,
  stroke: phrases,
  /** Between bore and stroke: "4.030 x 3.480". */
  by: phrases,
  /** After a volume they make it the charger's own: "2.3 litre supercharger". */
  chargers: phrases,
  /** With boost told they say by what: "blown motor, 28 lbs". */
  blown: phrases,
  /** After a size they make it the engine's: "383 stroker". */
  stroker: phrases,
})

/** Small words that the reader looks at beside figures, persons and requests, by what they do. */
export const smallWords = z.strictObject({
  persons,
  engines,
  times,
  prices,
  figures,
  fasteners,
  parts,
  moving,
  asking,
})
export type SmallWords = z.infer<typeof smallWords>

/** The small words as sets, by group and list. */
export type WordSets = {
  readonly [group in keyof SmallWords]: {
    readonly [list in keyof SmallWords[group]]: ReadonlySet<string>
  }
}
