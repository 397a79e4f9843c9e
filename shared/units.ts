/**
 * Units that people give figures in, as exact factors to SI.
 *
 * Every factor follows from exact definitions: inch 0.0254 m, pound
 * 0.45359237 kg, standard gravity 9.80665 m/s², litre 0.001 m³.
 *
 * @see NIST Special Publication 811 (2008), Guide for the Use of the
 * International System of Units, Appendix B
 */
export type Dimension =
  | 'length'
  | 'volume'
  | 'mass'
  | 'torque'
  | 'pressure'
  | 'power'
  | 'speed'
  | 'force'
  | 'velocity'
  | 'percent'

/** One unit: what it measures, its exact factor to SI, and the decimals worth printing. */
export interface Unit {
  readonly dimension: Dimension
  /** One of this unit in the SI unit of its dimension (m, m³, kg, N m, Pa, W, rad/s, N, m/s, 1). */
  readonly inSi: number
  readonly system: 'us' | 'metric' | 'both'
  /** Decimals that a person usually wants to read. */
  readonly decimals: number
  /** Other ways that the unit is written, lower case, without spaces or dots. */
  readonly aliases: readonly string[]
}

const INCH = 0.0254
const POUND = 0.45359237
const GRAVITY = 9.80665
const POUND_FORCE = POUND * GRAVITY
const FOOT = 12 * INCH

/** Every unit of the guide by its symbol; factors are exact by definition. */
export const UNITS: Readonly<Record<string, Unit>> = {
  in: unit('length', INCH, 'us', 4, ['inch', 'inches', '"', '”', '″', "''"]),
  mm: unit('length', 0.001, 'metric', 3, [
    'millimetre',
    'millimeter',
    'millimetres',
    'millimeters',
  ]),
  'cu in': unit('volume', INCH ** 3, 'us', 0, [
    'cuin',
    'ci',
    'cid',
    'in3',
    'in³',
    'cubicinch',
    'cubicinches',
  ]),
  L: unit('volume', 0.001, 'metric', 2, ['litre', 'liter', 'litres', 'liters', 'l']),
  cc: unit('volume', 1e-6, 'metric', 0, ['cm3', 'cm³', 'ccm']),
  g: unit('mass', 0.001, 'metric', 0, ['gram', 'grams', 'gramme', 'grammes', 'gr']),
  kg: unit('mass', 1, 'metric', 3, ['kilogram', 'kilograms', 'kilo', 'kilos']),
  lb: unit('mass', POUND, 'us', 3, ['lbs', 'pound', 'pounds', 'lbm']),
  oz: unit('mass', POUND / 16, 'us', 1, ['ounce', 'ounces']),
  'lb ft': unit('torque', POUND_FORCE * FOOT, 'us', 0, [
    'lbft',
    'ftlb',
    'ftlbs',
    'lb-ft',
    'ft-lb',
    'ft-lbs',
    'lbf·ft',
    'lbfft',
    'footpounds',
    'foot-pounds',
    'poundfeet',
    'pound-feet',
  ]),
  'N m': unit('torque', 1, 'metric', 0, [
    'nm',
    'n·m',
    'n-m',
    'newtonmetre',
    'newtonmeters',
    'newtonmetres',
  ]),
  psi: unit('pressure', POUND_FORCE / INCH ** 2, 'us', 1, ['psig', 'lb/in2', 'lb/in²']),
  bar: unit('pressure', 1e5, 'metric', 2, ['bars']),
  kPa: unit('pressure', 1000, 'metric', 0, ['kpa', 'kilopascal', 'kilopascals']),
  MPa: unit('pressure', 1e6, 'metric', 2, ['mpa', 'megapascal']),
  hp: unit('power', 550 * POUND_FORCE * FOOT, 'us', 0, ['bhp', 'horsepower', 'horse']),
  kW: unit('power', 1000, 'metric', 0, ['kw', 'kilowatt', 'kilowatts']),
  rpm: unit('speed', (2 * Math.PI) / 60, 'both', 0, ['1/min', 'min-1', 'r/min', 'revs']),
  lbf: unit('force', POUND_FORCE, 'us', 0, ['poundforce', 'poundsforce']),
  kN: unit('force', 1000, 'metric', 1, ['kilonewton', 'kilonewtons']),
  'm/s': unit('velocity', 1, 'metric', 1, ['mps']),
  'ft/min': unit('velocity', FOOT / 60, 'us', 0, ['fpm']),
  '%': unit('percent', 0.01, 'both', 2, ['percent', 'pct']),
}

function unit(
  dimension: Dimension,
  inSi: number,
  system: Unit['system'],
  decimals: number,
  aliases: readonly string[],
): Unit {
  return { dimension, inSi, system, decimals, aliases }
}

const bySpelling = new Map<string, string>()
for (const [symbol, { aliases }] of Object.entries(UNITS)) {
  bySpelling.set(spelling(symbol), symbol)
  for (const alias of aliases) bySpelling.set(spelling(alias), symbol)
}

function spelling(text: string): string {
  return text.replace(/[\s.·]/g, '').toLowerCase()
}

/**
 * The symbol of a unit however it is written: "inches" → "in", "ft-lbs" → "lb ft".
 *
 * @returns the symbol, or undefined when no unit is written like that. "MPa" and
 * "mPa" are told apart by nothing but case, so any case of "mpa" is megapascal.
 */
export function unitSymbol(text: string): string | undefined {
  return bySpelling.get(spelling(text))
}

/**
 * A figure in SI.
 *
 * @throws {RangeError} if the unit is not in the table
 */
export function toSi(value: number, symbol: string): number {
  return value * factor(symbol)
}

/** A figure in SI back in a unit. Inverse of {@link toSi}. */
export function fromSi(value: number, symbol: string): number {
  return value / factor(symbol)
}

function factor(symbol: string): number {
  const found = Object.hasOwn(UNITS, symbol) ? UNITS[symbol] : undefined
  if (!found) throw new RangeError(`no unit is written "${symbol}"`)
  return found.inSi
}

const PREFERRED: Readonly<Record<'us' | 'metric', Partial<Record<Dimension, string>>>> = {
  us: {
    length: 'in',
    volume: 'cu in',
    torque: 'lb ft',
    pressure: 'psi',
    power: 'hp',
    force: 'lbf',
    velocity: 'ft/min',
  },
  metric: {
    length: 'mm',
    volume: 'L',
    torque: 'N m',
    pressure: 'bar',
    power: 'kW',
    force: 'kN',
    velocity: 'm/s',
  },
}

/** The unit in which a person of a system reads a figure of this unit; itself when none is preferred. */
export function preferredUnit(symbol: string, system: 'us' | 'metric'): string {
  const found = Object.hasOwn(UNITS, symbol) ? UNITS[symbol] : undefined
  return (found && PREFERRED[system][found.dimension]) ?? symbol
}
