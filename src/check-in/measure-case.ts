import { DomainError } from '../mechanics/domain-error.ts'
import { say } from '../rulebook/places.ts'
import type { FigureId } from '../shop-sheet/check-in-rules.ts'
import type { EngineCase } from '../shop-sheet/engine-case.ts'
import type { LimitCase } from '../shop-sheet/limits.ts'
import { lengthText, plainText, type Units } from '../shop-sheet/workshop-figures.ts'
import type { Show } from './as-printed.ts'

/** All that a computation of the check-in needs. */
export interface MeasureCase extends LimitCase {
  readonly engine: EngineCase
  readonly units: Units
  /** What could not be worked out, a sentence each; filled while the check-in runs. */
  readonly notes: string[]
}

/** A figure that is worked out but has no limit of its own. */
export interface Worked {
  readonly label: string
  readonly text: string
}

/** A figure worked out, under the name that the rules give it. */
export function worked({ rules }: MeasureCase, id: FigureId, text: string): Worked {
  return { label: rules.checkIn.figures[id], text }
}

/** A printer of lengths, m, in the person's units. */
export function showLength({ units }: MeasureCase): Show {
  return (metres, finer) => lengthText(metres, units, finer)
}

/** An angle in rad as degrees with two decimals. */
export function showDegrees(radians: number): string {
  return `${plainText((radians * 180) / Math.PI, 2)}°`
}

/**
 * Run a computation of the mechanics; readings outside its range give a sentence in place of a
 * result, because a slip in one cell must not take the page away.
 *
 * @param part - what is worked out, as the sentence begins
 */
export function attempt<T>(
  { rules, notes }: MeasureCase,
  part: string,
  compute: () => T,
): T | undefined {
  try {
    return compute()
  } catch (error) {
    if (!(error instanceof DomainError)) throw error
    // The equation's own name and SI figure would tell nobody which cell it was.
    notes.push(say(rules.checkIn.beyond.says, { part }))
    return undefined
  }
}

/** Every reading, or undefined when one of them is missing. */
export function allOf(values: readonly (number | undefined)[]): number[] | undefined {
  return values.every((value) => value !== undefined) ? (values as number[]) : undefined
}

/** Mean of the values that are given; undefined when none is. */
export function meanOf(values: readonly (number | undefined)[]): number | undefined {
  const given = values.filter((value) => value !== undefined)
  return given.length === 0
    ? undefined
    : given.reduce((sum, value) => sum + value, 0) / given.length
}
