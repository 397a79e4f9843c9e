import type { Assessment, Source } from '../../shared/assessment.ts'
import type { EngineLoads } from '../facts/engine-loads.ts'
import type { Fields, Values } from './fields.ts'
import type { Picture } from './picture.ts'
import type { Print } from './print.ts'

/** One figure of the answer, in the person's units. */
export interface Result {
  readonly id: string
  readonly label: string
  /** null where there is no limit, such as a margin against no load. */
  readonly value: number | null
  readonly unit: string
  readonly text: string
}

/** One step of the working: the formula, the same with the numbers in it, and whose it is. */
export interface Step {
  readonly title: string
  readonly formula: string
  readonly withNumbers: string
  readonly result: string
  readonly source: Source
}

/** A curve: figures against figures. */
export interface Series {
  readonly id: string
  readonly label: string
  readonly x: { readonly label: string; readonly unit: string; readonly values: readonly number[] }
  readonly y: { readonly label: string; readonly unit: string; readonly values: readonly number[] }
}

/** What a worksheet works out. */
export interface Worked {
  readonly results: readonly Result[]
  readonly steps: readonly Step[]
  readonly notes: readonly string[]
  readonly series?: readonly Series[]
  /** What the page draws; not part of the API's answer. */
  readonly picture: Picture
}

/** A case of the guide: what its pages show, and the loads behind it in SI. */
export interface BuildSource {
  readonly assessment: Assessment
  readonly loads: EngineLoads
  readonly joint: JointTaken
}

/** What the rulebook takes for the joint where nobody is asked. */
export interface JointTaken {
  /** Of the cap's height. */
  readonly grip: number
  /** Of the thread's diameter. */
  readonly head: number
  /** Settling of the faces under one fastener, likely, mm. */
  readonly settling: number
  /** Choice → material of the mechanics. */
  readonly capMaterial: Readonly<Record<string, string>>
  readonly blockMaterial: Readonly<Record<string, string>>
}

/** A group of inputs on the page; the first of a worksheet is open, others may be folded. */
export interface InputGroup {
  readonly title: string
  readonly fields: readonly string[]
  readonly folded?: boolean
}

/** One piece of the mechanics, used alone. */
export interface Worksheet<F extends Fields = Fields> {
  readonly name: string
  readonly title: string
  readonly summary: string
  readonly fields: F
  readonly groups: readonly InputGroup[]
  /** An invented case that the empty page shows. */
  readonly example: Readonly<Record<string, unknown>>
  /**
   * Names that the mechanics give an input, where they differ from the field's; of several fields
   * the first that was given.
   */
  readonly names: Readonly<Record<string, string | readonly string[]>>
  work(values: Values<F>, print: Print): Worked
  /** Inputs taken over from a case of the guide. */
  fromBuild(source: BuildSource): Record<string, unknown>
}

/** Keeps the types of the fields for the worksheet's own `work`, and lets the registry list it. */
export function worksheet<F extends Fields>(sheet: Worksheet<F>): Worksheet {
  return sheet as unknown as Worksheet
}

export const published = (cite: string): Source => ({ kind: 'published', cite })
export const practice = (cite: string): Source => ({ kind: 'practice', cite })
export const fromMemory = (cite: string): Source => ({ kind: 'memory', cite })
export const geometry = (cite: string): Source => ({ kind: 'computed', cite })

/** The entries that have a value; for the others the mechanics take their own. */
export function present<T extends object>(
  record: T,
): { [K in keyof T]?: Exclude<T[K], undefined> } {
  const entries = Object.entries(record).filter(([, value]) => value !== undefined)
  return Object.fromEntries(entries) as { [K in keyof T]?: Exclude<T[K], undefined> }
}
