import { UNITS, unitSymbol } from '../../shared/units.ts'

/**
 * Kinds of figure that worksheets take and give, beyond the dimensions of the guide's facts.
 * `us` and `metric` are the units that a person of that system reads; any unit of the kind may
 * be given.
 */
export interface Kind {
  readonly us: string
  readonly metric: string
  /** Units that may be given, the usual ones first. */
  readonly units: readonly string[]
  /** SI unit that the mechanics name in their errors. */
  readonly si: string
  /** Figures worth reading. */
  readonly digits: number
  /** Most decimals worth reading; no limit when left out. */
  readonly places?: { readonly us: number; readonly metric: number }
}

function kind(us: string, metric: string, more: readonly string[], si: string, digits = 4): Kind {
  return { us, metric, units: [...new Set([us, metric, ...more])], si, digits }
}

/** A tenth of a shop's thousandth, and a micrometre; ten times finer where gaps are told. */
const SHOP = { us: 4, metric: 3 }
const FINE = { us: 5, metric: 4 }

/** Every kind of figure with its units. */
export const KINDS = {
  length: { ...kind('in', 'mm', ['cm', 'm'], 'm', 6), places: SHOP },
  fine: { ...kind('in', 'mm', ['thou', 'µm', 'm'], 'm', 6), places: FINE },
  area: kind('sq in', 'mm²', ['cm²', 'm²'], 'm²'),
  volume: kind('cu in', 'cc', ['L'], 'm³'),
  mass: kind('lb', 'g', ['oz', 'kg'], 'kg'),
  force: kind('lbf', 'kN', ['N', 'kip'], 'N'),
  torque: kind('lb ft', 'N m', ['lb in'], 'N m'),
  pressure: kind('psi', 'bar', ['kPa', 'MPa', 'Pa'], 'Pa'),
  stress: kind('ksi', 'MPa', ['psi', 'GPa', 'Pa'], 'Pa'),
  modulus: kind('Mpsi', 'GPa', ['ksi', 'MPa'], 'Pa'),
  stiffness: kind('Mlbf/in', 'kN/mm', ['lbf/in', 'N/m'], 'N/m'),
  angle: kind('°', '°', ['rad'], 'rad'),
  speed: kind('rpm', 'rpm', ['rad/s'], 'rad/s', 5),
  heat: kind('Btu', 'J', ['kJ'], 'J'),
  temperature: kind('°F', '°C', ['K'], 'K'),
  rise: kind('°F', '°C', ['K'], 'K'),
  expansion: kind('1/°F', '1/K', [], '1/K'),
  share: kind('%', '%', [], ''),
  power: kind('hp', 'kW', [], 'W'),
  velocity: kind('ft/min', 'm/s', [], 'm/s'),
  acceleration: kind('g', 'm/s²', [], 'm/s²'),
  viscosity: kind('µreyn', 'mPa s', ['cP', 'Pa s'], 'Pa s'),
} as const satisfies Readonly<Record<string, Kind>>
/** Name of a kind of figure. */
export type KindId = keyof typeof KINDS

/** Factors to SI of units that the guide itself does not need, from exact definitions. */
const MORE: Readonly<Record<string, number>> = {
  cm: 0.01,
  m: 1,
  thou: 25.4e-6,
  µm: 1e-6,
  'sq in': 0.0254 ** 2,
  'mm²': 1e-6,
  'cm²': 1e-4,
  'm²': 1,
  N: 1,
  kip: 4448.2216152605,
  'lb in': 0.1129848290276167,
  Pa: 1,
  GPa: 1e9,
  ksi: 6894757.293168361,
  Mpsi: 6894757293.168361,
  'Mlbf/in': 175126835.2464764,
  'lbf/in': 175.1268352464764,
  'kN/mm': 1e6,
  'N/m': 1,
  '°': Math.PI / 180,
  rad: 1,
  'rad/s': 1,
  J: 1,
  kJ: 1000,
  // International table British thermal unit.
  Btu: 1055.05585262,
  g: 9.80665,
  'm/s²': 1,
  µreyn: 6.894757293168361e-3,
  'mPa s': 1e-3,
  cP: 1e-3,
  'Pa s': 1,
  K: 1,
  '°C': 1,
  '°F': 5 / 9,
  '1/K': 1,
  '1/°F': 1.8,
}

/** Where the scale of a temperature begins, K. */
const ZERO: Readonly<Record<string, number>> = { K: 0, '°C': 273.15, '°F': 459.67 * (5 / 9) }

/** Other spellings, lower case without spaces. */
const SPELLINGS: Readonly<Record<string, string>> = {
  deg: '°',
  degree: '°',
  degrees: '°',
  c: '°C',
  degc: '°C',
  f: '°F',
  degf: '°F',
  um: 'µm',
  μm: 'µm',
  micron: 'µm',
  in2: 'sq in',
  'in²': 'sq in',
  sqin: 'sq in',
  mm2: 'mm²',
  cm2: 'cm²',
  m2: 'm²',
  lbin: 'lb in',
  inlb: 'lb in',
  'lb-in': 'lb in',
  lbf·in: 'lb in',
  lbfin: 'lb in',
  'm/s2': 'm/s²',
  mpas: 'mPa s',
  mpa·s: 'mPa s',
  pas: 'Pa s',
  '1/f': '1/°F',
  '1/c': '1/K',
  '1/°c': '1/K',
  pct: '%',
}

/**
 * The unit of a kind that a text means.
 *
 * @returns its symbol, or undefined when no unit of the kind is written like that
 */
export function unitOf(id: KindId, text: string): string | undefined {
  const { units } = KINDS[id] as Kind
  const plain = text.replace(/[\s.]/g, '')
  const exact = units.find((unit) => unit.replaceAll(' ', '') === plain)
  if (exact) return exact
  const symbol = SPELLINGS[plain.toLowerCase()] ?? unitSymbol(plain)
  if (symbol !== undefined && units.includes(symbol)) return symbol
  return units.find((unit) => unit.replaceAll(' ', '').toLowerCase() === plain.toLowerCase())
}

/** A figure of a kind in SI: m, m², N, Pa, N/m, rad, K … */
export function kindToSi(id: KindId, value: number, unit: string): number {
  const zero = id === 'temperature' ? (ZERO[unit] ?? 0) : 0
  return value * factor(id, unit) + zero
}

/** Inverse of {@link kindToSi}. */
export function kindFromSi(id: KindId, value: number, unit: string): number {
  const zero = id === 'temperature' ? (ZERO[unit] ?? 0) : 0
  return (value - zero) / factor(id, unit)
}

function factor(id: KindId, unit: string): number {
  // The letter g is a gram, but for accelerations.
  const own = Object.hasOwn(MORE, unit) && !(unit === 'g' && id === 'mass')
  const found = own ? MORE[unit] : UNITS[unit]?.inSi
  if (found === undefined) throw new RangeError(`no unit is written "${unit}"`)
  return found
}
