import { toSi, unitSymbol } from '../../shared/units.ts'
import { visible } from '../../shared/visible.ts'
import { type GridTable, singleField, tableOf } from './fields.ts'
import type { Measured } from './link-code.ts'

/** A field's text as a number in SI (a length in m, degrees in rad), or why it is none. */
export type Reading = { readonly value: number } | { readonly wrong: string }

const FIGURE = /^([+\-−]?(?:\d+[.,]?\d*|[.,]\d+))\s*(.*)$/

/**
 * Read a length as typed: `2.6412`, `.0005`, `67,09`, `67.09 mm`, `2.6412"`. A comma stands for a
 * decimal point, because no bore has thousands of anything. A unit of its own goes before the
 * table's.
 */
export function readLength(text: string, unit: Measured['unit']): Reading {
  const match = FIGURE.exec(text.trim())
  if (!match) return { wrong: `“${visible(text)}” is not a number` }
  const value = Number((match[1] as string).replace(',', '.').replace('−', '-'))
  const named = match[2] === '' ? unit : unitSymbol(match[2] as string)
  if (named !== 'in' && named !== 'mm') {
    return { wrong: `“${visible(text)}” has a unit that is no length; use in or mm` }
  }
  return { value: toSi(value, named) }
}

/** The readings of one check-in: numbers by field, and the texts that are none. */
export interface Readings {
  readonly unit: Measured['unit']
  /** Length in m of a field; undefined when empty or wrong. */
  length(name: string): number | undefined
  /** Number of teeth, or degrees. */
  number(name: string): number | undefined
  text(name: string): string | undefined
  /** Fields that could not be read. */
  readonly wrong: readonly { field: string; text: string }[]
}

/**
 * @param doubted - fields whose readings are not used, because they are likely a slip
 */
export function readingsOf(measured: Measured, doubted: ReadonlySet<string> = new Set()): Readings {
  const lengths = new Map<string, number>()
  const numbers = new Map<string, number>()
  const wrong: { field: string; text: string }[] = []
  for (const [field, text] of Object.entries(measured.fields)) {
    const kind = kindOf(field)
    if (kind === 'text' || kind === 'choice' || text.trim() === '') continue
    const reading = kind === 'length' ? readLength(text, measured.unit) : readPlain(text)
    if ('wrong' in reading) wrong.push({ field, text: reading.wrong })
    else if (kind === 'length' && reading.value < 0 && !maybeNegative(field)) {
      wrong.push({ field, text: `“${visible(text)}” is below nought, and this cannot be` })
    } else (kind === 'length' ? lengths : numbers).set(field, reading.value)
  }
  return {
    unit: measured.unit,
    length: (name) => (doubted.has(name) ? undefined : lengths.get(name)),
    number: (name) => numbers.get(name),
    text: (name) => measured.fields[name],
    wrong,
  }
}

function readPlain(text: string): Reading {
  const value = Number(text.replace(',', '.').replace('−', '-').replace('°', ''))
  return Number.isFinite(value) ? { value } : { wrong: `“${visible(text)}” is not a number` }
}

function kindOf(field: string): string {
  return singleField(field)?.kind ?? 'length'
}

function maybeNegative(field: string): boolean {
  return /^line\.\d\.[xy]$|^axis\.\d\.told$/.test(field) || (singleField(field)?.signed ?? false)
}

/** All cells of one row, in the order of the columns; undefined where there is no reading. */
export function rowOf(
  readings: Readings,
  table: GridTable['id'],
  row: number,
): (number | undefined)[] {
  const columns = tableOf(table)?.columns ?? []
  return columns.map(({ id }) => readings.length(`${table}.${row}.${id}`))
}
