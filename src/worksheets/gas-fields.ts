import type { GasCycleInput } from '../mechanics/gas-cycle.ts'
import type { WallHeat } from '../mechanics/wall-heat.ts'
import { choice, optional, pure, quantity, type Values } from './fields.ts'
import { InputError } from './input.ts'
import { present } from './worksheet.ts'

/** Inputs of a gas cycle; the main loads take the same, all of them left out at will. */
export const gasFields = {
  compressionRatio: pure('Compression ratio', 'To one.'),
  startPressure: quantity('pressure', 'Cylinder pressure before compression', 'Absolute.'),
  startTemperature: quantity('temperature', 'Gas temperature before compression'),
  addedHeat: quantity('heat', 'Heat of the fuel, for each cylinder and cycle', '0 for no burn.'),
  burnDuration: quantity('angle', 'Burn lasts'),
  burnStart: optional(
    quantity('angle', 'Burn starts', 'After firing dead centre; before it, negative.'),
    'Left out: where it gives most work.',
  ),
  burnCompleteness: optional(pure('Wiebe a'), 'Left out: 5.'),
  burnForm: optional(pure('Wiebe n'), 'Left out: 3.'),
  gamma: optional(pure('Constant ratio of specific heats'), 'Left out: falls with temperature.'),
  gammaFit: optional(
    choice('Ratio of specific heats by temperature', {
      linear: 'Straight line',
      quadratic: 'Parabola',
      air: 'Air',
    }),
    'Left out: straight line.',
  ),
  wallHeat: optional(
    choice('Heat to the walls', {
      none: 'None',
      share: 'A stated share',
      woschni: 'Woschni',
    }),
    'Left out: none.',
  ),
  wallShare: optional(quantity('share', 'Share of the heat that goes to the walls')),
  wallTemperature: optional(quantity('temperature', 'Mean temperature of the walls')),
  wallScale: optional(pure('Factor on Woschni’s coefficient'), 'Left out: 1.'),
  intakePressure: optional(
    quantity('pressure', 'Pressure in the intake', 'Absolute.'),
    'Left out: as before compression.',
  ),
  exhaustPressure: optional(
    quantity('pressure', 'Pressure in the exhaust', 'Absolute.'),
    'Left out: as before compression.',
  ),
  exhaustOpens: optional(
    quantity('angle', 'Exhaust valve opens', 'After firing dead centre.'),
    'Left out: 180°.',
  ),
  stepsPerDegree: optional(pure('Steps of the integration in a degree'), 'Left out: 1.'),
}
export type GasInputs = Values<typeof gasFields>

/** Names that the gas cycle gives its inputs, where they differ. */
export const GAS_NAMES = {
  'wallHeat.share': 'wallShare',
  'wallHeat.wallTemperature': 'wallTemperature',
  'wallHeat.scale': 'wallScale',
} as const

interface Geometry {
  readonly bore: number
  readonly stroke: number
  readonly rodLength: number | undefined
  readonly speed: number
}

/** Everything but the start of the burn. */
export function cycleInput(geometry: Geometry, gas: GasInputs): GasCycleInput {
  const { gamma, gammaFit, burnCompleteness, burnForm, stepsPerDegree } = gas
  const { intakePressure, exhaustPressure, exhaustOpens } = gas
  if (gamma !== undefined && gammaFit !== undefined) {
    throw new InputError('gammaFit', 'give a constant or a fit, not both', gammaFit)
  }
  return {
    bore: geometry.bore,
    stroke: geometry.stroke,
    rodLength: geometry.rodLength ?? null,
    speed: geometry.speed,
    compressionRatio: gas.compressionRatio,
    startPressure: gas.startPressure,
    startTemperature: gas.startTemperature,
    addedHeat: gas.addedHeat,
    burnStart: gas.burnStart ?? 0,
    burnDuration: gas.burnDuration,
    wallHeat: wallHeatOf(gas),
    ...present({ burnCompleteness, burnForm, stepsPerDegree, gamma: gamma ?? gammaFit }),
    ...present({ intakePressure, exhaustPressure, exhaustOpens }),
  }
}

function wallHeatOf({ wallHeat, wallShare, wallTemperature, wallScale }: GasInputs): WallHeat {
  const kind = wallHeat ?? 'none'
  if (kind === 'none') {
    if (wallShare !== undefined) throw new InputError('wallHeat', 'choose share, to give a share')
    if (wallTemperature !== undefined) {
      throw new InputError('wallHeat', 'choose woschni, to give a wall temperature')
    }
    return { kind }
  }
  if (kind === 'share') {
    if (wallShare === undefined) throw new InputError('wallShare', 'give the share')
    return { kind, share: wallShare }
  }
  if (wallTemperature === undefined) throw new InputError('wallTemperature', 'give it for Woschni')
  return { kind, wallTemperature, scale: wallScale ?? 1 }
}
