import { fromSi, toSi } from '../../shared/units.ts'
import { type ReadingSlip, readingSlips } from '../mechanics/reading-slip.ts'
import { fieldLabel } from '../shop-sheet/field-labels.ts'
import { TABLES } from '../shop-sheet/fields.ts'
import type { Measured } from '../shop-sheet/link-code.ts'
import { readLength } from '../shop-sheet/readings.ts'
import type { ShopRules } from '../shop-sheet/shop-rules.ts'
import { lengthText, type Units } from '../shop-sheet/workshop-figures.ts'
import { median } from './median.ts'
import { STANDS, stands, withStanding } from './stands.ts'
import { type TypingSlip, typingSlips } from './typing-slips.ts'

/** A reading that is likelier a slip than a part, and what was perhaps meant. */
export interface Suspect {
  /** Fields that are asked about; a whole table when its unit is in doubt. */
  readonly fields: readonly string[]
  readonly label: string
  readonly typed: string
  readonly question: string
  /** What would undo it: texts for fields, or another unit for all. */
  readonly instead?: { readonly fields?: Record<string, string>; readonly unit?: 'in' | 'mm' }
  /** Whether it was measured again and stands; until then the readings are left out. */
  readonly confirmed: boolean
  /** Text of the field that confirms it. */
  readonly confirm: string
}

/** Readings that should be alike: housing bores, journals, shell walls at the middle and the edge. */
const GROUPS: readonly { table: string; columns: readonly string[]; name: string }[] = [
  { table: 'housing', columns: ['fv', 'fl', 'fr', 'rv', 'rl', 'rr'], name: 'housing bores' },
  { table: 'journal', columns: ['fv', 'fh', 'rv', 'rh'], name: 'journals' },
  { table: 'shell', columns: ['uc', 'lc', 'up', 'lp'], name: 'shell walls' },
]

interface Like {
  readonly field: string
  readonly row: number
  readonly text: string
  readonly value: number
}

/**
 * Readings to ask about before they are judged, those that were confirmed among them.
 *
 * @param expected - roughly where each group should lie, m, from what is known of the engine
 */
export function suspects(
  measured: Measured,
  rules: ShopRules,
  expected: Readonly<Record<string, number | undefined>>,
  units: Units,
): Suspect[] {
  const { near, far, unit, wholeTable } = rules.slips
  const bounds = { near: toSi(near, unit), far: toSi(far, unit) }
  return GROUPS.flatMap(({ table, columns, name }): Suspect[] => {
    const likes = likesOf(measured, table, columns)
    if (likes.length === 0) return []
    const middle = median(likes.map(({ value }) => value))
    const about = expected[table]
    if (about !== undefined && Math.abs(middle - about) > wholeTable * about) {
      return [wholeTableSuspect(likes, middle, about, wholeTable, measured, name, units)]
    }
    return likes.flatMap((one) => {
      const beside = besides(one, likes, middle)
      return Math.abs(one.value - beside) > bounds.far
        ? [suspectOf(one, beside, bounds.near, measured, units)]
        : []
    })
  })
}

/** What a reading is held against: the others of its own row, or all when they are few. */
function besides(one: Like, likes: readonly Like[], middle: number): number {
  const row = likes.filter(({ row, field }) => row === one.row && field !== one.field)
  return row.length >= 3 ? median(row.map(({ value }) => value)) : middle
}

function likesOf(measured: Measured, table: string, columns: readonly string[]): Like[] {
  return Object.entries(measured.fields).flatMap(([field, text]) => {
    const [on, row, column] = field.split('.')
    if (on !== table || !columns.includes(column ?? '')) return []
    const read = readLength(text, measured.unit)
    return 'wrong' in read || !(read.value > 0)
      ? []
      : [{ field, row: Number(row), text, value: read.value }]
  })
}

function wholeTableSuspect(
  likes: readonly Like[],
  middle: number,
  about: number,
  share: number,
  { unit, fields }: Measured,
  name: string,
  units: Units,
): Suspect {
  const other = unit === 'in' ? 'mm' : 'in'
  const inOther = toSi(fromSi(middle, unit), other)
  const fits = Math.abs(inOther - about) <= share * about
  const table = TABLES.find(({ id }) => likes[0]?.field.startsWith(`${id}.`))
  const question = fits
    ? `The ${name} would fit if they were in ${UNIT_WORDS[other]}, not in ${UNIT_WORDS[unit]}. Were they typed in ${UNIT_WORDS[other]}?`
    : `The ${name} lie about ${lengthText(middle, units)}, but this engine’s should be near ${lengthText(about, units)}. Check them, and what the guide takes for the journal.`
  return {
    fields: likes.map(({ field }) => field),
    label: table?.title ?? name,
    typed: likes[0]?.text ?? '',
    question,
    ...(fits ? { instead: { unit: other } } : {}),
    // To the millimetre: one reading more must not ask about the table anew.
    ...confirmation(fields[STANDS], `${table?.id} 0`, Math.round(middle * 1000) / 1000),
  }
}

/** A unit written out: "in in" reads like a slip of the pen. */
export const UNIT_WORDS: Readonly<Record<Measured['unit'], string>> = {
  in: 'inches',
  mm: 'millimetres',
}

const SLIPS: Readonly<Record<ReadingSlip['kind'] | TypingSlip['kind'], string>> = {
  'inch-for-mm': 'an inch figure among millimetres',
  'mm-for-inch': 'a millimetre figure among inches',
  'decimal-point': 'a decimal point out of place',
  'thimble-turn': 'a micrometer read one turn off',
  'digits-swapped': 'two digits swapped',
  'digit-dropped': 'a digit dropped',
  'digit-doubled': 'a digit too many',
  'digit-wrong': 'one digit wrong',
}

function suspectOf(
  { field, text, value }: Like,
  beside: number,
  near: number,
  { unit, fields }: Measured,
  units: Units,
): Suspect {
  const common = {
    fields: [field],
    label: fieldLabel(field),
    typed: text,
    ...confirmation(fields[STANDS], field, value),
  }
  const away = lengthText(Math.abs(value - beside), units)
  const slip = likeliest(text, value, beside, near, unit)
  if (!slip) {
    const question = `It stands ${away} from its likes, and no common slip explains it. Measure it again.`
    return { ...common, question }
  }
  const question = `It stands ${away} from its likes. It looks like ${SLIPS[slip.kind]}: was ${slip.meant} meant?`
  return { ...common, question, instead: { fields: { [field]: slip.meant } } }
}

function confirmation(
  told: string | undefined,
  measure: string,
  value: number,
): Pick<Suspect, 'confirmed' | 'confirm'> {
  return {
    confirmed: stands(told, measure, value),
    confirm: withStanding(told, measure, value),
  }
}

function likeliest(
  text: string,
  value: number,
  beside: number,
  near: number,
  unit: Measured['unit'],
): { kind: ReadingSlip['kind'] | TypingSlip['kind']; meant: string } | undefined {
  const within = Math.min(near, beside / 3)
  const distance = (typed: string): number | undefined => {
    const read = readLength(typed, unit)
    return 'wrong' in read ? undefined : Math.abs(read.value - beside)
  }
  const found = readingSlips(value, beside, within)
  const point = found.find(({ kind }) => kind !== 'thimble-turn')
  if (point) return { kind: point.kind, meant: asTyped(point.meant, text, unit) }
  // A swapped or dropped digit leaves its mark in the text; only then is the thimble asked about.
  const typing = typingSlips(text, distance, within)
  const clear = typing.find(({ kind }) => kind !== 'digit-wrong')
  if (clear) return clear
  const turn = found[0]
  if (turn) return { kind: turn.kind, meant: asTyped(turn.meant, text, unit) }
  return typing[0]
}

/** A length in the unit of the table, with the decimals that a gauge of that unit reads. */
function asTyped(metres: number, text: string, unit: Measured['unit']): string {
  const typed = /[.,](\d+)/.exec(text)?.[1]?.length ?? 0
  const decimals = Math.min(6, Math.max(unit === 'in' ? 4 : 3, typed))
  return fromSi(metres, unit).toFixed(decimals).replace(/0+$/, '').replace(/\.$/, '')
}
