import { z } from 'zod'
import type { Read } from '../../shared/answers.ts'
import { readInchFraction, withFractions } from '../../shared/inch-fraction.ts'
import { describeFound, type Problem } from '../../shared/problem.ts'
import { readDecimal } from '../../shared/quantity.ts'
import { KINDS, type Kind, type KindId, kindToSi, unitOf } from './kinds.ts'

/** What was given, in its one canonical shape: what the answer of the API shows again. */
export type Given =
  | string
  | number
  | { readonly value: number; readonly unit: string }
  | { readonly value: number; readonly currency: string }
  | { readonly diameter: Given; readonly pitch: Given }
  | readonly { readonly [key: string]: Given }[]

/** How a form asks for a field. */
export type Control =
  | { readonly type: 'quantity'; readonly kind: KindId }
  | { readonly type: 'number' }
  | { readonly type: 'money' }
  | { readonly type: 'text' }
  | { readonly type: 'thread' }
  | { readonly type: 'choice'; readonly choices: Readonly<Record<string, string>> }
  | {
      readonly type: 'list'
      readonly fields: Fields
      readonly rows: number
      readonly row: string
      /** Fields of a row that a form shows at once; the others are folded. */
      readonly open: readonly string[]
    }

/** One input of a worksheet. `T` is what the mechanics get: SI for quantities. */
export interface Field<T> {
  readonly label: string
  /** A line below the label; for an input that may be left out, what is taken then. */
  readonly help: string
  readonly required: boolean
  readonly control: Control
  /** What the API takes, for its description. */
  readonly schema: z.ZodType
  readonly read: (raw: unknown, at: string) => Read<{ value: T; given: Given }>
}

export type Fields = Readonly<Record<string, Field<unknown>>>

/** The values of a worksheet's inputs. */
export type Values<F extends Fields> = {
  readonly [K in keyof F]: F[K] extends Field<infer T> ? T : never
}

/** Longest text of an input. */
export const LONGEST = 80

/** A figure with a unit; a plain number is refused. */
export function quantity(kind: KindId, label: string, help = ''): Field<number> {
  const { units } = KINDS[kind] as Kind
  const fits = `give a figure with a unit: ${units.join(', ')}`
  const takesInches = units.includes('in')
  return {
    label,
    help,
    required: true,
    control: { type: 'quantity', kind },
    schema: z.union([
      z.string().max(LONGEST),
      z.strictObject({ value: z.number(), unit: z.enum(units) }),
    ]),
    read(raw, at) {
      const parts = typeof raw === 'string' ? splitFigure(raw, takesInches) : figureObject(raw)
      if (typeof raw === 'number') return refuse(at, 'unit-missing', raw, fits)
      const fitting = takesInches ? withFractions(fits, raw) : fits
      if (parts === undefined) return refuse(at, 'not-a-number', raw, fitting)
      if (parts.unit === '') return refuse(at, 'unit-missing', raw, fits)
      const unit = unitOf(kind, parts.unit)
      if (unit === undefined) return refuse(at, 'unit-unknown', raw, fitting)
      const { value } = parts
      return { ok: { value: kindToSi(kind, value, unit), given: { value, unit } } }
    },
  }
}

function splitFigure(
  text: string,
  takesInches: boolean,
): { value: number; unit: string } | undefined {
  const part = takesInches ? readInchFraction(text.slice(0, LONGEST + 1)) : undefined
  if (part && text.length <= LONGEST) return { value: part.value, unit: 'in' }
  const match = /^([-−+]?[\d.,]+(?:e[-+]?\d+)?)\s*(.*)$/i.exec(text.trim())
  if (!match || text.length > LONGEST) return undefined
  const value = readFigure(match[1] as string)
  return value === undefined ? undefined : { value, unit: (match[2] as string).trim() }
}

function readFigure(text: string): number | undefined {
  const plain = text.replace('−', '-').replace(/^\+/, '')
  return readDecimal(plain)
}

function figureObject(raw: unknown): { value: number; unit: string } | undefined {
  const shape = z.strictObject({ value: z.number(), unit: z.string() })
  const parsed = shape.safeParse(raw)
  return parsed.success ? parsed.data : undefined
}

/** A pure number. */
export function pure(label: string, help = ''): Field<number> {
  return {
    label,
    help,
    required: true,
    control: { type: 'number' },
    // A text of a number is what a form sends.
    schema: z.union([z.number(), z.string().max(LONGEST)]),
    read(raw, at) {
      const value = typeof raw === 'string' ? readFigure(raw.trim()) : raw
      if (typeof value === 'number' && Number.isFinite(value)) return ok(value, value)
      return refuse(at, 'not-a-number', raw, 'give a plain number')
    },
  }
}

/** One of a few words. */
export function choice<const C extends Readonly<Record<string, string>>>(
  label: string,
  choices: C,
  help = '',
): Field<keyof C & string> {
  const words = Object.keys(choices) as (keyof C & string)[]
  return {
    label,
    help,
    required: true,
    control: { type: 'choice', choices },
    schema: z.enum(words),
    read(raw, at) {
      const found = words.find((word) => word === raw)
      if (found !== undefined) return ok(found, found)
      return refuse(at, 'not-a-choice', raw, `choose one of ${words.join(', ')}`)
    },
  }
}

/** A short text of the person's own. */
export function text(label: string, help = ''): Field<string> {
  return {
    label,
    help,
    required: true,
    control: { type: 'text' },
    schema: z.string().min(1).max(LONGEST),
    read(raw, at) {
      if (typeof raw === 'string' && raw.trim() !== '' && raw.length <= LONGEST) {
        return ok(raw.trim(), raw.trim())
      }
      return refuse(at, 'wrong-shape', raw, `give a text of 1 to ${LONGEST} characters`)
    },
  }
}

/** The same field, but it may be left out; `blank` says what is taken then. */
export function optional<T>(field: Field<T>, blank = ''): Field<T | undefined> {
  const help = [field.help, blank].filter((part) => part !== '').join(' ')
  return { ...field, help, required: false }
}

/** An input as it was read. */
export function ok<T>(value: T, given: Given): { ok: { value: T; given: Given } } {
  return { ok: { value, given } }
}

/** The problem with an input. */
export function refuse(
  field: string,
  code: Problem['code'],
  found: unknown,
  fits: string,
): { problem: Problem } {
  return { problem: { field, code, found: describeFound(found ?? ''), fits } }
}
