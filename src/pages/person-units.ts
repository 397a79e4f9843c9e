import { printFigure } from '../../shared/print.ts'
import { fromSi, toSi, UNITS } from '../../shared/units.ts'

/** The system that a person reads figures in. */
export type Units = 'us' | 'metric'

/**
 * One pound-force in kilonewtons, exact: 0.45359237 kg × 9.80665 m/s².
 *
 * @see NIST Special Publication 811 (2008), Appendix B: 4.448 221 615 260 5 N
 */
const POUND_FORCE_KN = 4.4482216152605e-3

const PARTNER: Readonly<Record<string, Readonly<Record<Units, string>>>> = {
  length: { us: 'in', metric: 'mm' },
  volume: { us: 'cu in', metric: 'L' },
  torque: { us: 'lb ft', metric: 'N m' },
  pressure: { us: 'psi', metric: 'bar' },
  power: { us: 'hp', metric: 'kW' },
}

/** Decimals worth reading in a picture; finer ones are in the worksheets and the API. */
const DECIMALS: Readonly<Record<string, number>> = {
  kN: 1,
  lbf: 0,
  in: 3,
  mm: 1,
  psi: 0,
  bar: 1,
  MPa: 0,
}

/** A figure in the person's own system; one that has no partner there stays as it is. */
export function inUnits(
  value: number,
  unit: string,
  units: Units,
): { value: number; unit: string } {
  if (unit === 'kN') {
    return units === 'us' ? { value: value / POUND_FORCE_KN, unit: 'lbf' } : { value, unit }
  }
  const from = UNITS[unit]
  const to = PARTNER[from?.dimension ?? '']?.[units]
  const keep = !from || !to || from.system === units || (unit === 'MPa' && units === 'metric')
  return keep ? { value, unit } : { value: fromSi(toSi(value, unit), to), unit: to }
}

/** A figure printed in the person's own system. Pounds-force are rounded to tens. */
export function printIn(value: number, unit: string, units: Units, decimals?: number): string {
  const own = inUnits(value, unit, units)
  const rounded = own.unit === 'lbf' ? Math.round(own.value / 10) * 10 : own.value
  return printFigure(rounded, own.unit, decimals ?? DECIMALS[own.unit])
}

/** An engine speed: "4,500 rpm". */
export function printSpeed(rpm: number): string {
  return printFigure(Math.round(rpm), 'rpm')
}
