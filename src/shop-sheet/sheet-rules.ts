import { z } from 'zod'
import { phrase, wording } from '../rulebook/places.ts'
import { ruleSource } from '../rulebook/schema.ts'

/** A sentence that states a fact of the trade, so that it says where that is from. */
const fact = <N extends string = never>(...places: readonly N[]) =>
  z.strictObject({ text: wording(...places), source: ruleSource })

/** Where a route's own work is done, and what is said with it. */
const place = z.strictObject({ at: z.enum(['home', 'shop']), ...fact().shape })

/** Steps of rules/follow-on.json before which it is done: the first of them that there is. */
const told = z.strictObject({ ...place.shape, before: z.array(z.string()).min(1) })

const why = z.strictObject({ title: phrase(), ...fact().shape })
const stage = z.strictObject({ name: phrase(), leaves: phrase() })

const order = z.strictObject({
  /** What travels to the shop, and what comes back from it. */
  goes: fact(),
  comesBack: fact(),
  /** Why a main bore is bored and honed, or honed alone, by the stages of its drawing. */
  mainBore: z.strictObject({
    bored: why,
    honed: why,
    stages: z.record(z.enum(['bored', 'fitted', 'honed', 'pulled']), stage),
  }),
  /** By id in rules/cost.json. */
  works: z.record(z.string(), told.partial({ before: true })),
  /** Said of every other work; its `before` holds for each that has none. */
  otherwise: told,
  /** Work → the step of rules/follow-on.json that tells of it in other words, and goes in its place. */
  toldBy: z.record(z.string(), z.string()),
})
/** How a route's own work goes into the order of work. */
export type OrderRule = z.infer<typeof order>

/** What rules/sheet.json has to look like: the sentences of the sheet, by its sections. */
export const sheetFile = z.strictObject({
  axis: z.strictObject({
    /** The rise that what follows is told for, as each system reads it. */
    step: z.strictObject({ in: z.number().positive(), mm: z.number().positive() }),
    /** Of timing gears, degrees. */
    pressureAngle: z.number().min(10).max(35),
    follows: fact('step', 'pistons', 'slack', 'backlash', 'pressureAngle'),
    note: wording('because'),
  }),
  bores: z.strictObject({
    clearance: wording('source'),
    finish: fact(),
    harderUse: fact(),
    reading: fact(),
  }),
  fasteners: z.strictObject({
    check: wording(),
    checkTurned: wording('share'),
    checkWould: wording('preload', 'share'),
    clamp: fact(),
    count: wording(),
    firstTorque: wording(),
    sequence: fact(),
    stretch: wording(),
    stretchTorque: wording(),
    studLubricant: fact(),
    torqueSaid: wording(),
    torqueUnknown: fact('from'),
    turn: wording(),
  }),
  /** Beside a call that is likely and not settled; what is open is "it" or "them". */
  hedge: z.strictObject({ cutting: wording('open'), relying: wording('open') }),
  identification: z.strictObject({ caps: fact(), splitCase: fact('mains') }),
  measure: z.strictObject({ note: wording() }),
  metal: z.strictObject({
    bored: fact(),
    honed: fact(),
    honedIfNeeded: fact(),
    newCaps: fact(),
  }),
  nothingToDo: wording(),
  order,
  parts: z.strictObject({ quoted: wording() }),
  /** A line to sign for each. */
  signOff: z.array(wording()).min(1),
})
/** The sentences of the sheet, as rules/sheet.json has them. */
export type SheetRules = z.infer<typeof sheetFile>
