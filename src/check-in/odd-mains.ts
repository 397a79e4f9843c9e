import { combinedUncertainty } from '../mechanics/guard-band.ts'
import { say } from '../rulebook/places.ts'
import type { MainMeasure } from '../shop-sheet/check-in-rules.ts'
import type { GaugeId } from '../shop-sheet/limit-rules.ts'
import { type GaugeCase, gaugeFor } from '../shop-sheet/limits.ts'
import { rowOf } from '../shop-sheet/readings.ts'
import type { ShopRules } from '../shop-sheet/shop-rules.ts'
import { rangeText } from '../shop-sheet/workshop-figures.ts'
import { type Apart, apartFromFellows } from './fellows.ts'
import type { Judged } from './judge.ts'
import { type MeasureCase, meanOf, showLength } from './measure-case.ts'
import { STANDS, stands, withStanding } from './stands.ts'
import type { Suspect } from './suspects.ts'

/** A main whose measure stands plainly apart from that of the other mains. */
export interface OddMain {
  readonly main: number
  readonly measure: MainMeasure
  /** The measure in words. */
  readonly name: string
  /** "The journal is 0.0020 in under the middle of the mains, 2.4485 in." */
  readonly says: string
  /** Whether it was measured again and found so. */
  readonly confirmed: boolean
  /** Text of the field that confirms it. */
  readonly confirm: string
  /** Fields to measure again. */
  readonly cells: readonly string[]
  /** As a line of the table: look again until it is confirmed, no verdict after. */
  readonly judged: Judged
}

/** What is known of one main, m. */
export interface MainSizes {
  readonly housing: number | undefined
  readonly journal: number | undefined
  readonly clearance: number | undefined
}

interface Kind {
  readonly measure: MainMeasure
  readonly gauge: GaugeId
  readonly columns: readonly string[]
}

const HOUSING = ['fv', 'fl', 'fr', 'rv', 'rl', 'rr']
const JOURNAL = ['fv', 'fh', 'rv', 'rh']

const KINDS: readonly Kind[] = [
  { measure: 'housing', gauge: 'bore', columns: HOUSING },
  { measure: 'journal', gauge: 'micrometer', columns: JOURNAL },
  { measure: 'shell', gauge: 'shell', columns: ['uc', 'lc'] },
]
const CLEARANCE: Kind = { measure: 'clearance', gauge: 'bore', columns: ['c'] }

/**
 * Mains that stand apart from the others by one of their measures. A clearance is not asked about
 * where one of the sizes that it follows from is, and nothing is where a reading is in question.
 *
 * @param sizes - by main, from the front
 */
export function oddMains(
  measuring: MeasureCase,
  sizes: readonly MainSizes[],
  asked: readonly Suspect[],
): OddMain[] {
  const values: Readonly<Record<MainMeasure, readonly (number | undefined)[]>> = {
    housing: sizes.map(({ housing }) => housing),
    journal: sizes.map(({ journal }) => journal),
    clearance: sizes.map(({ clearance }) => clearance),
    shell: sizes.map((_, place) =>
      meanOf(rowOf(measuring.readings, 'shell', place + 1).slice(0, 2)),
    ),
  }
  const isAsked = (main: number, table = '') =>
    asked.some(({ fields }) =>
      fields.some((f) => f.startsWith(table) && f.split('.')[1] === `${main}`),
    )
  const found = (kind: Kind): OddMain[] =>
    apartFromFellows(values[kind.measure], measuring.rules.fellows)
      .filter(({ place }) => !isAsked(place + 1, kind.measure === 'clearance' ? '' : kind.measure))
      .map((apart) => oddMain(measuring, kind, apart))
  const roots = KINDS.flatMap(found)
  const rooted = new Set(roots.map(({ main }) => main))
  return [...roots, ...found(CLEARANCE).filter(({ main }) => !rooted.has(main))]
}

function oddMain(measuring: MeasureCase, kind: Kind, apart: Apart): OddMain {
  const { measure } = kind
  const { rules, readings } = measuring
  const main = apart.place + 1
  const show = showLength(measuring)
  const told = readings.text(STANDS)
  const name = rules.checkIn.measures[measure]
  const says = say(rules.checkIn.apart.says, {
    measure: name,
    ...offAndSide(measuring, apart),
    middle: show(apart.middle),
  })
  const confirmed = stands(told, `${measure} ${main}`, apart.value)
  return {
    main,
    measure,
    name,
    says,
    confirmed,
    confirm: withStanding(told, `${measure} ${main}`, apart.value),
    cells: kind.columns.map((column) => `${tableFor(measure)}.${main}.${column}`),
    judged: judgedOf(measuring, kind, apart, { found: says, confirmed }),
  }
}

/** How far a value lies from the middle, and on which side. */
function offAndSide(
  measuring: MeasureCase,
  { value, middle }: Apart,
): Record<'off' | 'side', string> {
  const { sides } = measuring.rules.checkIn.judged
  const off = showLength(measuring)(Math.abs(value - middle))
  return { off, side: value < middle ? sides.low : sides.high }
}

/** A clearance read straight stands in the table of the shells. */
function tableFor(measure: MainMeasure): string {
  return measure === 'clearance' ? 'shell' : measure
}

function judgedOf(
  measuring: MeasureCase,
  { measure, gauge }: Kind,
  apart: Apart,
  { found, confirmed }: { found: string; confirmed: boolean },
): Judged {
  const show = showLength(measuring)
  const { checkIn, fellows } = measuring.rules
  const { because, ask, source } = fellows
  const says = checkIn.apart
  const name = checkIn.measures[measure]
  return {
    id: `${measure}-beside-fellows`,
    title: say(says.title, { measure: `${name.charAt(0).toUpperCase()}${name.slice(1)}` }),
    value: apart.value - apart.middle,
    text: say(confirmed ? says.foundAgain : says.found, offAndSide(measuring, apart)),
    limit: rangeText({ low: Number.NEGATIVE_INFINITY, high: apart.allowed }, show),
    uncertainty: `±${show(repeatOf(gaugeFor(gauge, measuring)))}`,
    verdict: confirmed ? null : 'look-again',
    words: checkIn.verdicts[confirmed ? 'none' : 'look-again'].words,
    reason: `${found} ${confirmed ? says.stands : ask}`,
    advice: confirmed ? '' : says.again,
    because,
    source: { kind: source.kind, cite: source.cite ?? '' },
    goesBack: 'whose-fault',
  }
}

/** Two readings with one gauge: its setting drops out, its repeat counts twice. */
function repeatOf({ repeat }: GaugeCase): number {
  return combinedUncertainty([{ uncertainty: repeat }, { uncertainty: repeat }])
}

const FOLLOWS = new Set(['clearance', 'clearance-warm', 'overstand'])

/**
 * What follows from a measure that is asked about sends nothing back: it waits for the answer.
 * A main with a size or shape outside its own limit goes back all the same.
 */
export function heldBack(
  judged: readonly Judged[],
  odd: readonly OddMain[],
  { checkIn }: ShopRules,
): Judged[] {
  const isFirm = judged.some(({ id, verdict }) => verdict === 'send-back' && !FOLLOWS.has(id))
  if (isFirm || odd.every(({ confirmed }) => confirmed)) return [...judged]
  const { waits } = checkIn.apart
  return judged.map((one) =>
    one.verdict === 'send-back' && FOLLOWS.has(one.id)
      ? {
          ...one,
          verdict: 'look-again',
          words: checkIn.verdicts['look-again'].words,
          reason: `${one.reason} ${waits.reason}`,
          advice: waits.advice,
        }
      : one,
  )
}
