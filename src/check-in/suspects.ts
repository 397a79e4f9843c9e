import { fromSi, toSi } from '../../shared/units.ts'
import { type ReadingSlip, readingSlips } from '../mechanics/reading-slip.ts'
import { say } from '../rulebook/places.ts'
import { fieldLabel } from '../shop-sheet/field-labels.ts'
import { tableOf } from '../shop-sheet/fields.ts'
import type { Measured } from '../shop-sheet/link-code.ts'
import { readLength } from '../shop-sheet/readings.ts'
import type { ShopRules } from '../shop-sheet/shop-rules.ts'
import { lengthText, type Units } from '../shop-sheet/workshop-figures.ts'
import { median } from './median.ts'
import { type InOtherColumn, inOtherColumn, type Like, type Sized } from './other-column.ts'
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
const GROUPS = [
  { table: 'housing', columns: ['fv', 'fl', 'fr', 'rv', 'rl', 'rr'] },
  { table: 'journal', columns: ['fv', 'fh', 'rv', 'rh'] },
  { table: 'shell', columns: ['uc', 'lc', 'up', 'lp'] },
] as const

/** What is asked about, by which rules, for whom. */
interface Asking {
  readonly measured: Measured
  readonly rules: ShopRules
  readonly units: Units
}

/**
 * Readings to ask about before they are judged, those that were confirmed among them.
 *
 * @param expected - roughly where each group should lie, m, from what is known of the engine
 */
export function suspects(
  measured: Measured,
  rules: ShopRules,
  expected: Readonly<Record<Sized, number | undefined>>,
  units: Units,
): Suspect[] {
  const asking: Asking = { measured, rules, units }
  const { wholeTable, ownMain, unit } = rules.slips
  const far = toSi(rules.slips.far, unit)
  const near = toSi(rules.slips.near, unit)
  const groups = GROUPS.map(({ table, columns }) => ({
    table,
    likes: likesOf(measured, table, columns),
  }))
  const of = (id: Sized) => groups.find(({ table }) => table === id)?.likes ?? []
  const sized = { housing: of('housing'), journal: of('journal') }
  const strays = inOtherColumn(sized, { far, near })
  return groups.flatMap(({ table, likes }): Suspect[] => {
    if (likes.length === 0) return []
    const middle = median(likes.map(({ value }) => value))
    // Wall thickness differs far more from engine to engine than a unit's slip could hide.
    const about = table === 'shell' ? undefined : expected[table]
    if (table !== 'shell' && about !== undefined && Math.abs(middle - about) > wholeTable * about) {
      return [wholeTableSuspect(asking, table, likes, { middle, about })]
    }
    const own = likes.filter(({ field }) => !strays.has(field))
    return likes.flatMap((one) => {
      const stray = strays.get(one.field)
      if (stray) return [strayOf(asking, one, stray, middle)]
      const beside = besides(one, own, middle, { ownMain, far })
      return Math.abs(one.value - beside) > far ? [suspectOf(asking, one, beside)] : []
    })
  })
}

/**
 * What a reading is held against: the others of its own row, or all where these are few or the
 * row is of two minds, since then it cannot say which of them are right.
 */
function besides(
  one: Like,
  likes: readonly Like[],
  middle: number,
  { ownMain, far }: { readonly ownMain: number; readonly far: number },
): number {
  const row = likes.filter((other) => other.row === one.row)
  const others = row.filter(({ field }) => field !== one.field)
  if (others.length < ownMain) return middle
  const own = median(others.map(({ value }) => value))
  const agree = row.filter(({ value }) => Math.abs(value - own) <= far)
  return 2 * agree.length > row.length ? own : middle
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
  { measured: { unit, fields }, rules, units }: Asking,
  id: Sized,
  likes: readonly Like[],
  { middle, about }: { middle: number; about: number },
): Suspect {
  const says = rules.checkIn.slips
  const readings = says.readings[id]
  const other = unit === 'in' ? 'mm' : 'in'
  const inOther = toSi(fromSi(middle, unit), other)
  const fits = Math.abs(inOther - about) <= rules.slips.wholeTable * about
  const question = fits
    ? say(says.otherUnit, { readings, other: says.units[other], unit: says.units[unit] })
    : say(says.farOff, {
        readings,
        middle: lengthText(middle, units),
        expected: lengthText(about, units),
      })
  return {
    fields: likes.map(({ field }) => field),
    label: tableOf(id)?.title ?? readings,
    typed: likes[0]?.text ?? '',
    question,
    ...(fits ? { instead: { unit: other } } : {}),
    // To the millimetre: one reading more must not ask about the table anew.
    ...confirmation(fields[STANDS], `${id} 0`, Math.round(middle * 1000) / 1000),
  }
}

function strayOf(
  { measured, rules, units }: Asking,
  { field, text, value }: Like,
  { fits, partner }: InOtherColumn,
  middle: number,
): Suspect {
  const says = rules.checkIn.slips
  const away = lengthText(Math.abs(value - middle), units)
  const readings = says.readings[fits]
  return {
    fields: [field],
    label: fieldLabel(field),
    typed: text,
    ...confirmation(measured.fields[STANDS], field, value),
    ...(partner
      ? {
          question: say(says.swapped, { away, readings, meant: partner.text }),
          instead: { fields: { [field]: partner.text, [partner.field]: text } },
        }
      : { question: say(says.otherColumn, { away, readings }) }),
  }
}

function suspectOf(
  { measured: { unit, fields }, rules, units }: Asking,
  { field, text, value }: Like,
  beside: number,
): Suspect {
  const common = {
    fields: [field],
    label: fieldLabel(field),
    typed: text,
    ...confirmation(fields[STANDS], field, value),
  }
  const away = lengthText(Math.abs(value - beside), units)
  const says = rules.checkIn.slips
  const near = toSi(rules.slips.near, rules.slips.unit)
  const slip = likeliest(text, value, beside, near, unit)
  if (!slip) return { ...common, question: say(says.unexplained, { away }) }
  const { kind, meant } = slip
  const question = say(says.looksLike, { away, slip: says.kinds[kind], meant })
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
