import type { Source } from '../../shared/assessment.ts'
import { type FactKey, fact, usualUnit } from '../../shared/fact-keys.ts'
import { readThread, type Thread } from '../../shared/thread.ts'
import { toSi } from '../../shared/units.ts'

/**
 * One fact of a build. Figures are in the fact's usual unit (the first in the
 * dictionary), money in the case's currency, choices and threads as text.
 *
 * `said`: from the person. `derived`: follows from what was said. `assumed`: a
 * usual value stands in. `not-needed`: nothing rests on it.
 */
export interface BuildFact {
  readonly key: FactKey
  readonly state: 'said' | 'derived' | 'assumed' | 'not-needed'
  readonly value: number | string | undefined
  /** Plausible ends: the person's own, or those of the assumption. */
  readonly low?: number
  readonly high?: number
  /** Values that a choice could also have while it is not known. */
  readonly couldBe?: readonly string[]
  readonly because?: string
  readonly source?: Source
}

export interface Build {
  readonly facts: Readonly<Record<FactKey, BuildFact>>
  /** Of every amount of money. */
  readonly currency: string
}

/** A figure of a build in its usual unit. @throws {RangeError} if there is none */
export function figureOf(build: Build, key: FactKey): number {
  const { value } = build.facts[key]
  if (typeof value !== 'number') throw new RangeError(`${key} has no figure`)
  return value
}

/** A figure of a build in SI. @throws {RangeError} if there is none */
export function siOf(build: Build, key: FactKey): number {
  const unit = usualUnit(fact(key))
  const value = figureOf(build, key)
  return unit === '' ? value : toSi(value, unit)
}

/** A choice of a build. @throws {RangeError} if there is none */
export function choiceOf(build: Build, key: FactKey): string {
  const { value } = build.facts[key]
  if (typeof value !== 'string') throw new RangeError(`${key} has no choice`)
  return value
}

/** The fastener thread of a build. @throws {RangeError} if the text is no thread */
export function threadOf(build: Build): Thread {
  const thread = readThread(choiceOf(build, 'fastenerThread'))
  if (!thread) throw new RangeError('fastenerThread is no thread')
  return thread
}

/** Whether a torque sets the preload; where an angle or a stretch does, it says nothing of it. */
export function isByTorque(build: Build): boolean {
  return choiceOf(build, 'tightening') === 'torque-wrench'
}

/** Whether a fact has a value at all. */
export function has(build: Build, key: FactKey): boolean {
  return build.facts[key].value !== undefined
}
