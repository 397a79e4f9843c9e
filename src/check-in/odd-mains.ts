import { combinedUncertainty } from '../mechanics/guard-band.ts'
import type { GaugeId } from '../shop-sheet/limit-rules.ts'
import { type GaugeCase, gaugeFor } from '../shop-sheet/limits.ts'
import { rowOf } from '../shop-sheet/readings.ts'
import { type Apart, apartFromFellows } from './fellows.ts'
import type { Judged } from './judge.ts'
import { type MeasureCase, meanOf, showLength } from './measure-case.ts'
import { STANDS, stands, withStanding } from './stands.ts'
import type { Suspect } from './suspects.ts'

/** A main whose measure stands plainly apart from that of the other mains. */
export interface OddMain {
  readonly main: number
  readonly measure: OddMeasure
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

/** What of a main can stand apart from that of the others. */
export type OddMeasure = 'housing' | 'journal' | 'shell' | 'clearance'

/** What is known of one main, m. */
export interface MainSizes {
  readonly housing: number | undefined
  readonly journal: number | undefined
  readonly clearance: number | undefined
}

interface Kind {
  readonly measure: OddMeasure
  readonly name: string
  readonly gauge: GaugeId
  readonly columns: readonly string[]
}

const HOUSING = ['fv', 'fl', 'fr', 'rv', 'rl', 'rr']
const JOURNAL = ['fv', 'fh', 'rv', 'rh']

const KINDS: readonly Kind[] = [
  { measure: 'housing', name: 'Housing bore', gauge: 'bore', columns: HOUSING },
  { measure: 'journal', name: 'Journal', gauge: 'micrometer', columns: JOURNAL },
  { measure: 'shell', name: 'Shell wall', gauge: 'shell', columns: ['uc', 'lc'] },
]
const CLEARANCE: Kind = {
  measure: 'clearance',
  name: 'Clearance',
  gauge: 'bore',
  columns: ['c'],
}

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
  const values: Readonly<Record<OddMeasure, readonly (number | undefined)[]>> = {
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
  const { measure, name } = kind
  const main = apart.place + 1
  const show = showLength(measuring)
  const off = apart.value - apart.middle
  const side = off < 0 ? 'under' : 'over'
  const told = measuring.readings.text(STANDS)
  const says = `The ${name.toLowerCase()} is ${show(Math.abs(off))} ${side} the middle of the mains, ${show(apart.middle)}.`
  const confirmed = stands(told, `${measure} ${main}`, apart.value)
  return {
    main,
    measure,
    says,
    confirmed,
    confirm: withStanding(told, `${measure} ${main}`, apart.value),
    cells: kind.columns.map((column) => `${tableFor(measure)}.${main}.${column}`),
    judged: judgedOf(measuring, kind, apart, { says, confirmed }),
  }
}

/** A clearance read straight stands in the table of the shells. */
function tableFor(measure: OddMeasure): string {
  return measure === 'clearance' ? 'shell' : measure
}

function judgedOf(
  measuring: MeasureCase,
  { measure, name, gauge }: Kind,
  { value, middle, allowed }: Apart,
  { says, confirmed }: { says: string; confirmed: boolean },
): Judged {
  const show = showLength(measuring)
  const { because, ask, source } = measuring.rules.fellows
  const off = value - middle
  return {
    id: `${measure}-beside-fellows`,
    title: `${name} beside the other mains`,
    value: off,
    text: `${show(Math.abs(off))} ${off < 0 ? 'under' : 'over'}${confirmed ? ', measured again' : ''}`,
    limit: `at most ${show(allowed)}`,
    uncertainty: `±${show(repeatOf(gaugeFor(gauge, measuring)))}`,
    verdict: confirmed ? null : 'look-again',
    reason: confirmed ? `${says} It was measured again and stands.` : `${says} ${ask}`,
    advice: confirmed ? '' : 'Set the gauge anew and measure this main and one neighbour again.',
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
export function heldBack(judged: readonly Judged[], odd: readonly OddMain[]): Judged[] {
  const isFirm = judged.some(({ id, verdict }) => verdict === 'send-back' && !FOLLOWS.has(id))
  if (isFirm || odd.every(({ confirmed }) => confirmed)) return [...judged]
  return judged.map((one) =>
    one.verdict === 'send-back' && FOLLOWS.has(one.id)
      ? {
          ...one,
          verdict: 'look-again',
          reason: `${one.reason} It follows from a measure that is asked about.`,
          advice: 'Measure again first; then this is judged.',
        }
      : one,
  )
}
