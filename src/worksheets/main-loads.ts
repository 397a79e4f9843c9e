import { STANDARD_PRESSURE } from '../mechanics/atmosphere.ts'
import { CRANK_LAYOUTS } from '../mechanics/crank-layouts.ts'
import { gasCycle } from '../mechanics/gas-cycle.ts'
import { type LoadSweep, loadSweep, meanLoad } from '../mechanics/load-sweep.ts'
import { CYCLE, type MainLoads, type MainLoadsInput, mainLoads } from '../mechanics/main-loads.ts'
import { bestTorqueStart } from '../mechanics/phasing.ts'
import { buildInputs, figureInput } from './from-build.ts'
import { cycleInput, GAS_NAMES, type GasInputs } from './gas-fields.ts'
import { chargeOf, hardest } from './gas-from-build.ts'
import { InputError } from './input.ts'
import { type MainLoadsInputs, mainLoadsFields } from './main-loads-fields.ts'
import { loadsPicture, loadsSeries } from './main-loads-picture.ts'
import { loadSteps } from './main-loads-steps.ts'
import { oneCylinder } from './one-cylinder.ts'
import type { Print } from './print.ts'
import { type BuildSource, present, type Result, type Worked, worksheet } from './worksheet.ts'

/** What the crank does to every main over two turns at one speed. */
export const mainLoadsSheet = worksheet({
  name: 'main-loads',
  title: 'Load on the mains',
  summary: 'Force of the crank on every main through two turns, and what of it falls on the cap.',
  fields: mainLoadsFields,
  groups: [
    {
      title: 'Crank train',
      fields: ['layout', 'bore', 'stroke', 'rodLength', 'reciprocatingMass', 'bigEndMass', 'speed'],
    },
    {
      title: 'Cylinder pressure',
      fields: [
        'compressionRatio',
        'startPressure',
        'startTemperature',
        'addedHeat',
        'burnStart',
        'burnDuration',
      ],
    },
    { title: 'Main bearing', fields: ['journalDiameter', 'bearingWidth'] },
    {
      title: 'Counterweights and sharing',
      fields: [
        'pinMass',
        'counterweightRotating',
        'counterweightReciprocating',
        'frontShare',
        'crankcasePressure',
      ],
      folded: true,
    },
    {
      title: 'One cylinder at one crank angle',
      fields: ['crankAngle', 'gaugePressure', 'gravity', 'motion'],
      folded: true,
    },
    {
      title: 'Gas, walls and valves as figures',
      fields: [
        'burnCompleteness',
        'burnForm',
        'gamma',
        'gammaFit',
        'wallHeat',
        'wallShare',
        'wallTemperature',
        'wallScale',
        'intakePressure',
        'exhaustPressure',
        'exhaustOpens',
      ],
      folded: true,
    },
  ],
  example: {
    layout: 'v8-cross-plane',
    bore: '4 in',
    stroke: '3.5 in',
    rodLength: '5.7 in',
    reciprocatingMass: '900 g',
    bigEndMass: '620 g',
    speed: '6000 rpm',
    compressionRatio: 10,
    startPressure: '13.5 psi',
    startTemperature: '150 °F',
    addedHeat: '1.7 Btu',
    burnStart: '-28 °',
    burnDuration: '58 °',
    journalDiameter: '2.5 in',
    bearingWidth: '0.75 in',
  },
  names: {
    ...GAS_NAMES,
    crankRadius: 'stroke',
    'mean of pressure': ['pressure', 'gaugePressure', 'startPressure'],
    angle: 'crankAngle',
    'counterweightShare.rotating': 'counterweightRotating',
    'counterweightShare.reciprocating': 'counterweightReciprocating',
    'bearing.diameter': 'journalDiameter',
    'bearing.width': 'bearingWidth',
  },
  work,
  fromBuild,
})

function work(input: MainLoadsInputs, print: Print): Worked {
  const { journalDiameter, bearingWidth } = input
  if ((journalDiameter === undefined) !== (bearingWidth === undefined)) {
    const missing = journalDiameter === undefined ? 'journalDiameter' : 'bearingWidth'
    throw new InputError(missing, 'give both diameter and width of the bearing')
  }
  const full = loadsInput(input)
  const loads = mainLoads(full)
  const bearing =
    journalDiameter === undefined || bearingWidth === undefined
      ? {}
      : { bearing: { diameter: journalDiameter, width: bearingWidth } }
  const sweep = loadSweep({ loads: [loads], ...bearing })
  const one = oneCylinder(input, print)
  return {
    results: [...worstResults(sweep, print), ...mainResults(sweep, loads, print), ...one.results],
    steps: [...loadSteps(full, loads, sweep, print), ...one.steps],
    notes: notes(input),
    series: loadsSeries(loads, print),
    picture: loadsPicture(loads, sweep, print),
  }
}

function loadsInput(input: MainLoadsInputs): MainLoadsInput {
  const layout = CRANK_LAYOUTS[input.layout]
  const usual = layout.counterweightShare
  const { pinMass, crankcasePressure, frontShare } = input
  return {
    layout,
    bore: input.bore,
    stroke: input.stroke,
    rodLength: input.rodLength ?? Number.POSITIVE_INFINITY,
    reciprocatingMass: input.reciprocatingMass,
    bigEndMass: input.bigEndMass ?? 0,
    speed: input.speed,
    pressure: pressureOf(input),
    counterweightShare: {
      ...usual,
      rotating: input.counterweightRotating ?? usual.rotating,
      reciprocating: input.counterweightReciprocating ?? usual.reciprocating,
    },
    ...present({ pinMass, crankcasePressure, frontShare }),
  }
}

/** As measured, steady, by a cycle, or none. */
function pressureOf(input: MainLoadsInputs): Float64Array {
  const { pressure, gaugePressure, compressionRatio, crankcasePressure = STANDARD_PRESSURE } = input
  if (pressure !== undefined) return pressure
  if (gaugePressure !== undefined) {
    return new Float64Array(CYCLE).fill(gaugePressure + crankcasePressure)
  }
  if (compressionRatio === undefined) return new Float64Array(CYCLE).fill(crankcasePressure)
  const asked = cycleInput(input, gasOf(input))
  const burnStart = input.burnStart ?? bestTorqueStart(asked).burnStart
  return gasCycle({ ...asked, burnStart }).pressure
}

const NEEDED = [
  'compressionRatio',
  'startPressure',
  'startTemperature',
  'addedHeat',
  'burnDuration',
] as const

/** The gas inputs, all of those that a cycle cannot do without. */
function gasOf(input: MainLoadsInputs): GasInputs {
  const missing = NEEDED.find((key) => input[key] === undefined)
  if (missing) throw new InputError(missing, 'give it with the compression ratio, for the cycle')
  return { ...input, stepsPerDegree: undefined } as GasInputs
}

function worstResults(sweep: LoadSweep, print: Print): Result[] {
  const { worstPull, worstSide } = sweep
  return [
    print.result('worstPull', 'Worst pull on a cap', worstPull.force, 'force'),
    print.ratio('worstPullMain', 'Worst pull: on main', worstPull.main + 1),
    print.result(
      'worstPullAngle',
      'Worst pull: crank angle after cylinder 1’s firing dead centre',
      worstPull.angle,
      'angle',
    ),
    print.result('worstSide', 'Worst side push on a cap', worstSide.force, 'force'),
    print.ratio('worstSideMain', 'Worst side push: on main', worstSide.main + 1),
    print.result(
      'worstSideAngle',
      'Worst side push: crank angle after cylinder 1’s firing dead centre',
      worstSide.angle,
      'angle',
    ),
  ]
}

function mainResults({ mains }: LoadSweep, loads: MainLoads, print: Print): Result[] {
  return mains.flatMap((main) => {
    const n = main.main + 1
    const results = [
      print.result(`main${n}Pull`, `Main ${n}: worst pull`, main.worstPull.force, 'force'),
      print.result(`main${n}Side`, `Main ${n}: worst side push`, main.worstSide.force, 'force'),
      print.result(`main${n}Peak`, `Main ${n}: greatest load`, main.peakLoad.force, 'force'),
      print.result(`main${n}Mean`, `Main ${n}: mean load`, meanLoad([loads], main.main), 'force'),
    ]
    if (!main.unitLoad) return results
    const { peak } = main.unitLoad
    return [
      ...results,
      print.result(`main${n}UnitLoad`, `Main ${n}: greatest unit load`, peak, 'pressure'),
    ]
  })
}

function notes({
  rodLength,
  compressionRatio,
  gaugePressure,
  pressure,
}: MainLoadsInputs): string[] {
  const none = compressionRatio === undefined && gaugePressure === undefined && !pressure
  return [
    'Each throw is a beam on the two mains beside it. A stiff crank in a block that gives, the oil film, the flywheel and the timing drive are outside this sheet.',
    ...(none ? ['No cylinder pressure was given: these are the loads of the masses alone.'] : []),
    ...(rodLength === undefined
      ? ['No rod length was given: the piston moves as on a very long rod.']
      : []),
  ]
}

function fromBuild(source: BuildSource): Record<string, unknown> {
  const { assessment, loads } = source
  const index = hardest(loads)
  return {
    ...buildInputs(assessment, {
      layout: 'layout',
      bore: 'bore',
      stroke: 'stroke',
      rodLength: 'rodLength',
      reciprocatingMass: 'reciprocatingMass',
      bigEndMass: 'bigEndMass',
      journalDiameter: 'mainJournalDiameter',
      bearingWidth: 'mainBearingWidth',
    }),
    speed: figureInput(((loads.speeds[index] ?? 0) * 30) / Math.PI, 'rpm'),
    ...chargeOf(source, index),
    wallHeat: 'woschni',
    wallTemperature: figureInput(450, 'K'),
    exhaustOpens: figureInput(130, '°'),
  }
}
