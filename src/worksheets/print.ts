import { printFigure, printFixed, printNumber } from '../../shared/print.ts'
import { KINDS, type Kind, type KindId, kindFromSi } from './kinds.ts'
import type { Result } from './worksheet.ts'

/** The system that a person reads figures in. */
export type System = 'us' | 'metric'

/** Prints figures in a person's own units, to the digits worth reading. */
export interface Print {
  readonly system: System
  /** An SI figure with its unit: "45.4 kN". */
  figure(si: number, kind: KindId): string
  /** A pure number. */
  number(value: number, digits?: number): string
  /** A figure of the answer. */
  result(id: string, label: string, si: number, kind: KindId): Result
  /** A pure number of the answer. */
  ratio(id: string, label: string, value: number): Result
  /** The unit of a kind, and SI figures in it. */
  unit(kind: KindId): string
  values(si: ArrayLike<number>, kind: KindId): number[]
}

/** A printer for one system of units. Never depends on the machine's locale. */
export function printIn(system: System): Print {
  const unit = (kind: KindId): string => (KINDS[kind] as Kind)[system]
  const figure = (si: number, kind: KindId): string => {
    const value = kindFromSi(kind, si, unit(kind))
    const { digits, places } = KINDS[kind] as Kind
    if (places && Number.isFinite(value)) return printFigure(value, unit(kind), places[system])
    return endless(value) ?? withUnit(value, unit(kind), decimals(value, digits))
  }
  const number = (value: number, digits = 4): string =>
    endless(value) ?? small(value, digits) ?? printNumber(value, decimals(value, digits))
  return {
    system,
    figure,
    number,
    unit,
    result: (id, label, si, kind) => ({
      id,
      label,
      value: finite(kindFromSi(kind, si, unit(kind))),
      unit: unit(kind),
      text: listed(kindFromSi(kind, si, unit(kind)), kind, system) ?? figure(si, kind),
    }),
    ratio: (id, label, value) => ({
      id,
      label,
      value: finite(value),
      unit: '',
      text: number(value),
    }),
    values: (si, kind) => Array.from(si, (one) => rounded(kindFromSi(kind, one, unit(kind)))),
  }
}

/**
 * A figure as it stands in a list of results: lengths keep their noughts, so that they line up;
 * other figures keep them up to the digits worth reading. Undefined for one that is whole, tiny or
 * endless, which is printed as it is.
 */
function listed(value: number, kind: KindId, system: System): string | undefined {
  const { places, digits, [system]: unit } = KINDS[kind] as Kind
  if (!Number.isFinite(value)) return undefined
  if (!places && (isWhole(value) || small(value, digits))) return undefined
  const text = printFixed(value, places?.[system] ?? decimals(value, digits))
  return unit === '°' || unit === '%' ? `${text}${unit}` : `${text}\u00a0${unit}`
}

function withUnit(value: number, unit: string, places: number): string {
  const tiny = small(value, 3)
  if (tiny) return `${tiny}\u00a0${unit}`
  if (unit === '°') return `${printNumber(value, places)}°`
  return printFigure(value, unit, places)
}

/** Decimals that give a figure its digits; none for figures with more before the point. */
function decimals(value: number, digits: number): number {
  if (value === 0 || !Number.isFinite(value)) return 0
  const whole = Math.floor(Math.log10(Math.abs(value))) + 1
  return Math.min(9, Math.max(0, digits - whole))
}

function isWhole(value: number): boolean {
  return Math.abs(value - Math.round(value)) < 1e-9
}

/** Below this a figure is what rounding left of nought. */
const NOTHING = 1e-12

/** Figures such as expansion coefficients, with a power of ten. */
function small(value: number, digits: number): string | undefined {
  if (Math.abs(value) < NOTHING) return '0'
  if (Math.abs(value) >= 1e-4) return undefined
  const power = Math.floor(Math.log10(Math.abs(value)))
  return `${printNumber(value / 10 ** power, digits - 1)} × 10${raised(power)}`
}

const RAISED = '⁰¹²³⁴⁵⁶⁷⁸⁹'

function raised(power: number): string {
  const digits = [...String(Math.abs(power))].map((digit) => RAISED[Number(digit)]).join('')
  return power < 0 ? `⁻${digits}` : digits
}

function endless(value: number): string | undefined {
  if (Number.isFinite(value)) return undefined
  return value > 0 ? 'no limit' : 'none'
}

function rounded(value: number): number {
  return Number(value.toPrecision(7))
}

function finite(value: number): number | null {
  return Number.isFinite(value) ? value : null
}
