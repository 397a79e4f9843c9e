import { describeFound, type Problem } from '../../shared/problem.ts'
import { DomainError } from '../mechanics/domain-error.ts'
import type { Fields, Given, Values } from './fields.ts'
import { KINDS, type Kind, type KindId, kindFromSi } from './kinds.ts'
import type { Picture } from './picture.ts'
import { printIn, type System } from './print.ts'
import { readRecord } from './read-record.ts'
import type { Result, Series, Step, Worksheet } from './worksheet.ts'

/** The answer of the API. */
export interface WorksheetAnswer {
  readonly name: string
  readonly inputs: Readonly<Record<string, Given>>
  readonly results: readonly Result[]
  readonly steps: readonly Step[]
  readonly notes: readonly string[]
  readonly series?: readonly Series[]
}

export type WorksheetOutcome =
  | { readonly ok: WorksheetAnswer; readonly picture: Picture }
  | { readonly problems: readonly Problem[]; readonly inputs: Readonly<Record<string, Given>> }

/**
 * An input that does not fit the others. Worksheets throw it where the mechanics have no say;
 * it names the worksheet's own field.
 */
export class InputError extends Error {
  readonly problem: Problem

  constructor(field: string, fits: string, found = '') {
    super(`${field}: ${fits}`)
    this.problem = { field, code: 'wrong-shape', found, fits }
  }
}

/**
 * Run a worksheet on raw inputs from outside.
 *
 * @param sheet - which
 * @param raw - inputs by field name; quantities `"4.03 in"` or `{value, unit}`
 * @param system - units of the figures in the answer
 * @returns the answer, or every problem found, each naming a field of the worksheet
 */
export function runWorksheet(sheet: Worksheet, raw: unknown, system: System): WorksheetOutcome {
  const { values, given, problems } = readRecord(sheet.fields, raw)
  if (problems.length > 0) return { problems, inputs: given }
  try {
    const worked = sheet.work(values as Values<Fields>, printIn(system))
    const { picture, series, ...rest } = worked
    const answer = { name: sheet.name, inputs: given, ...rest, ...(series ? { series } : {}) }
    return { ok: answer, picture }
  } catch (error) {
    return { problems: [problemOf(sheet, error, { given, values })], inputs: given }
  }
}

/** What a worksheet read: as it was given, and for the mechanics. */
interface Inputs {
  readonly given: Readonly<Record<string, Given>>
  readonly values: Readonly<Record<string, unknown>>
}

/** Of a figure that is worked out from several inputs: the range of one would be another's. */
const WITH_OTHERS = 'with the other inputs it is outside what the equations cover'

/** A refusal of the mechanics in the worksheet's own words; any other error is a fault of ours. */
function problemOf(sheet: Worksheet, error: unknown, { given, values }: Inputs): Problem {
  if (error instanceof InputError) return error.problem
  if (!(error instanceof DomainError)) throw error
  const field = fieldOf(sheet, error, values)
  const kind = kindOf(sheet.fields, field)
  const own = at(values, field)
  const written = at(given, field)
  const found =
    written === undefined || Array.isArray(written)
      ? inOwnUnit(String(error.found), kind)
      : givenText(written as Given)
  const isOther = typeof own === 'number' && !(own === error.found && isSaidIn(error.fits, kind))
  const fits = isOther ? WITH_OTHERS : `give ${inOwnUnit(error.fits, kind)}`
  return { field, code: 'out-of-range', found: describeFound(found), fits }
}

/** What stands at a path such as `items.2.low`. */
function at(record: unknown, path: string): unknown {
  return path.split('.').reduce<unknown>((value, part) => {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, part)) return undefined
    return (value as Record<string, unknown>)[part]
  }, record)
}

/**
 * `items[2].low` → `items.2.low`, then the worksheet's own name for it. Of several that may be
 * meant, and of the rows of a list, it is the one with the very figure that was refused, or else
 * the first that was given.
 */
function fieldOf(
  { names }: Worksheet,
  { argument, found }: DomainError,
  values: Inputs['values'],
): string {
  const path = argument.replace(/\[(\d+)\]/g, '.$1')
  const meant = [names[path] ?? path].flat().flatMap((name) => inEachRow(name, values))
  const filled = meant.filter((name) => at(values, name) !== undefined)
  return filled.find((name) => at(values, name) === found) ?? filled[0] ?? meant[0] ?? path
}

/** `fasteners.0.grip` → the same of every row that was given. */
function inEachRow(name: string, values: Inputs['values']): string[] {
  const [key = '', row, ...rest] = name.split('.')
  const rows = values[key]
  if (row !== '0' || !Array.isArray(rows)) return [name]
  return rows.map((_, index) => [key, index, ...rest].join('.'))
}

function kindOf(fields: Fields, path: string): KindId | undefined {
  const [key = '', ...rest] = path.split('.')
  const control = fields[key]?.control
  if (control?.type === 'quantity') return control.kind
  if (control?.type !== 'list') return undefined
  return kindOf(control.fields, rest.filter((part) => !/^\d+$/.test(part)).join('.'))
}

/** Whether a range is one of this kind: a force that comes of a torque has none in its units. */
function isSaidIn(text: string, kind: KindId | undefined): boolean {
  if (kind === undefined) return true
  const { si } = KINDS[kind] as Kind
  return si === '' || text.endsWith(` ${si}`)
}

/** A range in SI, such as "from 0.001 to 0.15 m", in the units of the field: in mm and in inches. */
function inOwnUnit(text: string, kind: KindId | undefined): string {
  if (kind === undefined) return text
  const { us, metric, si } = KINDS[kind] as Kind
  const bare = si !== '' && text.endsWith(` ${si}`) ? text.slice(0, -si.length - 1) : text
  const inUnit = (unit: string): string =>
    `${bare.replace(/-?\d+(\.\d+)?(e[-+]?\d+)?/g, (figure) =>
      String(Number(kindFromSi(kind, Number(figure), unit).toPrecision(5))),
    )} ${unit}`
  return us === metric ? inUnit(us) : `${inUnit(metric)} (${inUnit(us)})`
}

/** What was given, as a person writes it: `4.03 in`. */
function givenText(given: Given): string {
  if (typeof given === 'string') return given
  if (typeof given === 'number') return String(given)
  if ('unit' in given) return `${given.value} ${given.unit}`
  if ('currency' in given) return `${given.value} ${given.currency}`
  if ('diameter' in given) return `${givenText(given.diameter)} × ${givenText(given.pitch)}`
  return `${given.length} lines`
}
