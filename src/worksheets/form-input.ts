import type { Fields } from './fields.ts'
import { KINDS, type Kind, kindFromSi } from './kinds.ts'

/**
 * A worksheet's inputs in a link. They stand under `in.`, so that they never meet the facts of a
 * case that the same link may carry: `in.bore=4.03in`, `in.items.0.low=350`. A form sends the
 * unit beside the figure, as `in.bore.unit`.
 */
const PREFIX = 'in.'
const UNIT = '.unit'
/** Most own parameters that are read. */
const MOST = 200
/** Parts of the longest name that a form has: `items.0.low`. */
const DEEPEST = 3
const BARE_FIGURE = /^[-−+]?[\d.,]+(e[-+]?\d+)?$/i

type Raw = Record<string, unknown>

/**
 * Inputs out of a query, as texts; undefined when it has none. A figure without a unit takes the
 * one that the form sent beside it; what is blank is left out.
 */
export function inputsFromQuery(fields: Fields, params: URLSearchParams): Raw | undefined {
  const own = [...params].filter(([name]) => name.startsWith(PREFIX)).slice(0, MOST)
  if (own.length === 0) return undefined
  const units = new Map(own.filter(([name]) => name.endsWith(UNIT)))
  const raw: Raw = Object.create(null)
  for (const [name, text] of own) {
    if (name.endsWith(UNIT) || text.trim() === '') continue
    const path = name.slice(PREFIX.length).split('.')
    if (path.length > DEEPEST) continue
    const unit = units.get(`${name}${UNIT}`)
    const bare = BARE_FIGURE.test(text.trim())
    place(raw, path, unit && bare ? `${text} ${unit}` : text)
  }
  return withLists(fields, raw)
}

/** Put a text at a path; lists are records by number until {@link withLists}. */
function place(raw: Raw, [key = '', ...rest]: readonly string[], text: string): void {
  if (rest.length === 0) {
    raw[key] = text
    return
  }
  const below = raw[key]
  const into: Raw =
    typeof below === 'object' && below !== null ? (below as Raw) : Object.create(null)
  raw[key] = into
  place(into, rest, text)
}

/** Records by number to lists, blank rows left out. */
function withLists(fields: Fields, raw: Raw): Raw {
  const entries = Object.entries(raw).map(([key, value]): [string, unknown] => {
    const isList = Object.hasOwn(fields, key) && fields[key]?.control.type === 'list'
    if (!isList || typeof value !== 'object' || value === null) return [key, value]
    const rows = Object.entries(value).sort(([a], [b]) => Number(a) - Number(b))
    return [key, rows.map(([, row]) => row)]
  })
  return Object.fromEntries(entries)
}

/** Inputs as texts by path, `items.0.low` → `350 USD`: what a form shows and a link holds. */
export function textsOf(raw: unknown, at = ''): Map<string, string> {
  const texts = new Map<string, string>()
  if (typeof raw === 'string' || typeof raw === 'number') texts.set(at, String(raw))
  if (typeof raw !== 'object' || raw === null) return texts
  if ('value' in raw && 'unit' in raw) return texts.set(at, `${raw.value} ${raw.unit}`)
  if ('value' in raw && 'currency' in raw) return texts.set(at, `${raw.value} ${raw.currency}`)
  for (const [key, value] of Object.entries(raw)) {
    const path = at === '' ? key : `${at}.${key}`
    for (const [place, text] of textsOf(value, path)) texts.set(place, text)
  }
  return texts
}

/** Inputs as a query string. */
export function inputsToQuery(raw: unknown): string {
  const parts = [...textsOf(raw)].map(([path, text]): [string, string] => [
    `${PREFIX}${path}`,
    text,
  ])
  return new URLSearchParams(parts).toString()
}

/** Figures of an example or a build in the units that a person reads, to six figures. */
export function inSystem(fields: Fields, raw: Raw, system: 'us' | 'metric'): Raw {
  const entries = Object.entries(raw).map(([key, value]): [string, unknown] => {
    const field = Object.hasOwn(fields, key) ? fields[key] : undefined
    if (field?.control.type === 'list' && Array.isArray(value)) {
      const inner = field.control.fields
      return [key, value.map((row) => inSystem(inner, row as Raw, system))]
    }
    if (field?.control.type !== 'quantity') return [key, value]
    const { kind } = field.control
    const { us, metric } = KINDS[kind] as Kind
    const read = field.read(value, key)
    const [unit, other] = system === 'us' ? [us, metric] : [metric, us]
    // A unit of neither system, such as a gram on a US scale, is somebody's choice and stays.
    if (!('ok' in read) || us === metric) return [key, value]
    const given = read.ok.given as { unit: string }
    if (given.unit !== other) return [key, value]
    const own = kindFromSi(kind, read.ok.value as number, unit)
    return [key, { value: Number(own.toPrecision(6)), unit }]
  })
  return Object.fromEntries(entries)
}
