import { type GasCycle, type GasCycleInput, gasCycle } from '../mechanics/gas-cycle.ts'
import { torqueOfMep } from '../mechanics/mean-effective-pressure.ts'
import { bestTorqueStart } from '../mechanics/phasing.ts'
import { optional, pure, quantity, type Values } from './fields.ts'
import { cycleInput, GAS_NAMES, gasFields } from './gas-fields.ts'
import { gasFromBuild } from './gas-from-build.ts'
import { pressurePicture, pressureSeries } from './gas-picture.ts'
import { cycleSteps } from './gas-steps.ts'
import { InputError } from './input.ts'
import type { Print } from './print.ts'
import { type Result, type Worked, worksheet } from './worksheet.ts'

const gasCycleFields = {
  bore: quantity('length', 'Bore'),
  stroke: quantity('length', 'Stroke'),
  rodLength: optional(quantity('length', 'Rod length'), 'Left out: a very long rod.'),
  speed: quantity('speed', 'Engine speed'),
  cylinders: optional(pure('Cylinders'), 'Left out: 1.'),
  ...gasFields,
}
type GasCycleInputs = Values<typeof gasCycleFields>

/** Cylinder pressure over one four-stroke cycle. */
export const gasCycleSheet = worksheet({
  name: 'gas-cycle',
  title: 'Cylinder pressure',
  summary: 'Pressure through one cycle: how high, when, and what work it does.',
  fields: gasCycleFields,
  groups: [
    { title: 'Cylinder', fields: ['bore', 'stroke', 'rodLength', 'compressionRatio', 'cylinders'] },
    { title: 'Charge', fields: ['speed', 'startPressure', 'startTemperature', 'addedHeat'] },
    { title: 'Burn', fields: ['burnStart', 'burnDuration'] },
    { title: 'Walls', fields: ['wallHeat', 'wallShare', 'wallTemperature', 'wallScale'] },
    {
      title: 'Gas, burn shape and valves as figures',
      fields: [
        'burnCompleteness',
        'burnForm',
        'gamma',
        'gammaFit',
        'intakePressure',
        'exhaustPressure',
        'exhaustOpens',
        'stepsPerDegree',
      ],
      folded: true,
    },
  ],
  example: {
    bore: '4 in',
    stroke: '3.5 in',
    rodLength: '5.7 in',
    compressionRatio: 10,
    cylinders: 8,
    speed: '4500 rpm',
    startPressure: '13.5 psi',
    startTemperature: '150 °F',
    addedHeat: '1.7 Btu',
    burnStart: '-25 °',
    burnDuration: '52 °',
    wallHeat: 'woschni',
    wallTemperature: '350 °F',
  },
  names: { ...GAS_NAMES, displacement: 'cylinders' },
  work,
  fromBuild: gasFromBuild,
})

const MOST_CYLINDERS = 24

function work(input: GasCycleInputs, print: Print): Worked {
  const cylinders = cylindersOf(input)
  const asked = cycleInput(input, input)
  const burnStart = input.burnStart ?? bestTorqueStart(asked).burnStart
  const full = { ...asked, burnStart }
  const cycle = gasCycle(full)
  const motored = gasCycle({ ...full, addedHeat: 0 })
  return {
    results: results(full, cycle, cylinders, print),
    steps: cycleSteps(full, cycle, print),
    notes: notes(input),
    series: pressureSeries(cycle, print),
    picture: pressurePicture(cycle, motored, print),
  }
}

/** @throws {InputError} in words of a count: the equation would speak of a volume */
function cylindersOf({ cylinders = 1 }: GasCycleInputs): number {
  if (Number.isInteger(cylinders) && cylinders >= 1 && cylinders <= MOST_CYLINDERS) return cylinders
  const fits = `give a whole number from 1 to ${MOST_CYLINDERS}`
  throw new InputError('cylinders', fits, String(cylinders))
}

function results(input: GasCycleInput, cycle: GasCycle, cylinders: number, print: Print): Result[] {
  const swept = (Math.PI / 4) * input.bore ** 2 * input.stroke
  const work = cycle.imepGross * swept
  const displacement = swept * cylinders
  const torque = torqueOfMep(cycle.imepNet, displacement)
  const list = [
    print.result('peakPressure', 'Highest pressure, absolute', cycle.peakPressure, 'pressure'),
    print.result('peakAngle', 'At, after firing dead centre', cycle.peakAngle, 'angle'),
    print.result('imepGross', 'Mean effective pressure, gross', cycle.imepGross, 'pressure'),
    print.result('imepNet', 'Mean effective pressure, net', cycle.imepNet, 'pressure'),
    print.result('pumping', 'Lost to pumping', cycle.pumping, 'pressure'),
    print.result('work', 'Work of compression and expansion', work, 'heat'),
    print.result('wallLoss', 'Heat to the walls', cycle.wallLoss, 'heat'),
    print.result('endPressure', 'Pressure at the end of expansion', endPressure(cycle), 'pressure'),
    print.result(
      'peakTemperature',
      'Highest mean temperature',
      cycle.peakTemperature,
      'temperature',
    ),
    print.result('mass', 'Gas in the cylinder', cycle.mass, 'mass'),
    print.result('burnStart', 'Burn starts', input.burnStart, 'angle'),
    print.result('torque', 'Indicated torque of the engine', torque, 'torque'),
    print.result('power', 'Indicated power of the engine', torque * input.speed, 'power'),
  ]
  if (input.addedHeat > 0) {
    list.push(print.ratio('efficiency', 'Indicated efficiency, gross', work / input.addedHeat))
  }
  if (typeof input.gamma === 'number') {
    const otto = 1 - input.compressionRatio ** (1 - input.gamma)
    list.push(print.ratio('ottoEfficiency', 'Efficiency of the air-standard cycle', otto))
  }
  return list
}

/** At bottom dead centre after expansion, where the valve may just have opened. */
function endPressure({ pressure }: GasCycle): number {
  return pressure[180] ?? Number.NaN
}

function notes({ rodLength, burnStart }: GasCycleInputs): string[] {
  return [
    'One zone of even pressure and temperature; the gas constant is that of air. Detonation is outside this sheet.',
    ...(rodLength === undefined
      ? ['No rod length was given: the piston moves as on a very long rod.']
      : []),
    ...(burnStart === undefined ? ['The burn is placed where it gives most work.'] : []),
  ]
}
