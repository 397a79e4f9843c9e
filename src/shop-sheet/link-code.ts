import { isField, MOST_ROWS, SINGLE_FIELDS, singleField, TABLES } from './fields.ts'

/** What was measured and what the service data say, as typed; nothing else is stored. */
export interface Measured {
  /** Unit of every length that carries none of its own. */
  readonly unit: 'in' | 'mm'
  /** Field name → text as typed, trimmed; empty ones are left out. */
  readonly fields: Readonly<Record<string, string>>
}

const PREFIX = 'm.'
const UNIT = 'unit'
const LONGEST_FIGURE = 16
const LONGEST_TEXT = 80

/** A text as it is kept: trimmed, without what the code uses, cut to length. */
export function keptText(name: string, text: string): string {
  const plain = text.replaceAll(/[\s_~\p{Cc}\p{Cs}]+/gu, ' ').trim()
  const field = singleField(name)
  const longest = field?.longest ?? (field?.kind === 'text' ? LONGEST_TEXT : LONGEST_FIGURE)
  // By code points: half a character, which the pattern takes out too, can stand in no address.
  return [...plain].slice(0, longest).join('').trim()
}

/**
 * Measurements as the part of a query string that holds them. A table is one parameter, its rows
 * parted by `~` and its cells by `_`, both as they are in an address; empty ends are left out.
 * Equal measurements give equal strings, and figures stay as they were typed.
 */
export function measuredQuery({ unit, fields }: Measured): string {
  const parts: string[] = []
  for (const { id, columns } of TABLES) {
    const rows: string[] = []
    for (let row = 1; row <= MOST_ROWS; row++) {
      const cells = columns.map((column) => fields[`${id}.${row}.${column.id}`] ?? '')
      rows.push(withoutEmptyEnd(cells).map(encode).join('_'))
    }
    const text = withoutEmptyEnd(rows).join('~')
    if (text !== '') parts.push(`${PREFIX}${id}=${text}`)
  }
  for (const { id } of SINGLE_FIELDS) {
    const text = fields[id] ?? ''
    if (text !== '') parts.push(`${PREFIX}${id}=${encode(text)}`)
  }
  return parts.length === 0 ? '' : [`${PREFIX}${UNIT}=${unit}`, ...parts].join('&')
}

/**
 * Measurements out of a link's other parameters. What is no field is left out.
 *
 * @param other - decoded parameters, such as `RequestView.other`
 * @param usual - unit when the link names none
 */
export function measuredFrom(
  other: ReadonlyMap<string, string>,
  usual: Measured['unit'],
): Measured {
  const fields: Record<string, string> = {}
  const keep = (name: string, text: string) => {
    const kept = isField(name) ? keptText(name, text) : ''
    if (kept !== '') fields[name] = kept
  }
  for (const { id, columns } of TABLES) {
    const rows = (other.get(PREFIX + id) ?? '').split('~').slice(0, MOST_ROWS)
    rows.forEach((row, place) => {
      row.split('_').forEach((cell, at) => {
        const column = columns[at]
        if (column) keep(`${id}.${place + 1}.${column.id}`, cell)
      })
    })
  }
  for (const { id } of SINGLE_FIELDS) keep(id, other.get(PREFIX + id) ?? '')
  const unit = other.get(PREFIX + UNIT)
  return { unit: unit === 'in' || unit === 'mm' ? unit : usual, fields }
}

/** The same measurements with only the fields that fit, such as the service data alone. */
export function onlyFields(measured: Measured, keep: (name: string) => boolean): Measured {
  const fields = Object.entries(measured.fields).filter(([name]) => keep(name))
  return { ...measured, fields: Object.fromEntries(fields) }
}

function withoutEmptyEnd(texts: readonly string[]): readonly string[] {
  return texts.slice(0, texts.findLastIndex((text) => text !== '') + 1)
}

function encode(text: string): string {
  return encodeURIComponent(text)
}
