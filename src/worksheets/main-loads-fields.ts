import { z } from 'zod'
import type { LayoutId } from '../mechanics/crank-layouts.ts'
import { CYCLE } from '../mechanics/main-loads.ts'
import { choice, type Field, optional, pure, quantity, type Values } from './fields.ts'
import { gasFields } from './gas-fields.ts'
import { KINDS, kindToSi, unitOf } from './kinds.ts'

const LAYOUT_WORDS = {
  'inline-3': 'Inline three',
  'inline-4': 'Inline four',
  'inline-5': 'Inline five',
  'inline-6': 'Inline six',
  'v6-60': 'V6, 60°',
  'v6-90': 'V6, 90°',
  'v8-cross-plane': 'V8, cross-plane',
  'v8-flat-plane': 'V8, flat-plane',
  'v10-90': 'V10, 90°',
  'v12-60': 'V12, 60°',
  'flat-4': 'Flat four',
  'flat-6': 'Flat six',
} as const satisfies Readonly<Record<LayoutId, string>>

/** A measured pressure: one absolute figure for each degree from firing dead centre. */
function trace(label: string, help: string): Field<Float64Array> {
  const shape = z.strictObject({
    values: z.array(z.number()).length(CYCLE),
    unit: z.enum(KINDS.pressure.units as readonly string[]),
  })
  const fits = `give {"values": ${CYCLE} figures, "unit": one of ${KINDS.pressure.units.join(', ')}}`
  return {
    label,
    help,
    required: true,
    control: { type: 'text' },
    schema: shape,
    read(raw, at) {
      const parsed = shape.safeParse(raw)
      const unit = parsed.success ? unitOf('pressure', parsed.data.unit) : undefined
      if (!parsed.success || unit === undefined) {
        const found = Array.isArray(raw) ? `${raw.length} figures` : typeof raw
        return { problem: { field: at, code: 'wrong-shape', found, fits } }
      }
      const { values } = parsed.data
      const value = Float64Array.from(values, (one) => kindToSi('pressure', one, unit))
      return { ok: { value, given: `${CYCLE} figures in ${unit}` } }
    },
  }
}

const { stepsPerDegree: _, burnDuration, ...gas } = gasFields

export const mainLoadsFields = {
  layout: choice('Layout', LAYOUT_WORDS),
  bore: quantity('length', 'Bore'),
  stroke: quantity('length', 'Stroke'),
  rodLength: optional(quantity('length', 'Rod length'), 'Left out: a very long rod.'),
  reciprocatingMass: quantity('mass', 'Reciprocating mass of each cylinder'),
  bigEndMass: optional(quantity('mass', 'Big-end mass of each rod'), 'Left out: none.'),
  speed: quantity('speed', 'Engine speed'),
  pinMass: optional(
    quantity('mass', 'Off-centre mass of each throw, at the crank radius'),
    'Left out: none; it cancels with its own counterweight.',
  ),
  counterweightRotating: optional(
    pure('Share of the rotating mass balanced'),
    'Left out: the layout’s usual share.',
  ),
  counterweightReciprocating: optional(
    pure('Share of the reciprocating mass balanced'),
    'Left out: the layout’s usual share.',
  ),
  frontShare: optional(
    pure('Share of each throw’s load that its front main takes'),
    'Left out: one half.',
  ),
  crankcasePressure: optional(
    quantity('pressure', 'Crankcase pressure', 'Absolute.'),
    'Left out: one atmosphere.',
  ),
  journalDiameter: optional(quantity('length', 'Diameter of the main journal')),
  bearingWidth: optional(quantity('length', 'Working width of the main bearing')),
  gaugePressure: optional(
    quantity('pressure', 'Steady pressure on every piston, above the crankcase’s'),
    'In place of a cycle.',
  ),
  pressure: optional(trace('Measured pressure, absolute, each degree', 'Only through the API.')),
  crankAngle: optional(
    quantity('angle', 'Crank angle to show one cylinder at', 'After dead centre.'),
  ),
  gravity: optional(
    quantity('acceleration', 'Gravity along the bore', 'For that one cylinder.'),
    'Left out: none.',
  ),
  motion: optional(
    choice('Piston motion, for that one cylinder', { exact: 'Exact', 'two-term': 'Two terms' }),
    'Left out: exact.',
  ),
  compressionRatio: optional(gas.compressionRatio),
  startPressure: optional(gas.startPressure),
  startTemperature: optional(gas.startTemperature),
  addedHeat: optional(gas.addedHeat),
  burnDuration: optional(burnDuration),
  burnStart: gas.burnStart,
  burnCompleteness: gas.burnCompleteness,
  burnForm: gas.burnForm,
  gamma: gas.gamma,
  gammaFit: gas.gammaFit,
  wallHeat: gas.wallHeat,
  wallShare: gas.wallShare,
  wallTemperature: gas.wallTemperature,
  wallScale: gas.wallScale,
  intakePressure: gas.intakePressure,
  exhaustPressure: gas.exhaustPressure,
  exhaustOpens: gas.exhaustOpens,
}
export type MainLoadsInputs = Values<typeof mainLoadsFields>
