import { STANDARD_PRESSURE } from '../mechanics/atmosphere.ts'
import { capShare } from '../mechanics/cap-share.ts'
import { counterweightMass } from '../mechanics/counterweights.ts'
import type { LoadSweep } from '../mechanics/load-sweep.ts'
import type { MainLoads, MainLoadsInput } from '../mechanics/main-loads.ts'
import { boreArea } from '../mechanics/slider-crank.ts'
import type { Print } from './print.ts'
import { fromMemory, geometry, published, type Step } from './worksheet.ts'

const TAYLOR = 'C. F. Taylor, The Internal-Combustion Engine in Theory and Practice, vol. 2, ch. 8'

/** Gas, inertia and counterweight of one throw, the sharing, and the cap's part at the worst. */
export function loadSteps(
  input: MainLoadsInput,
  loads: MainLoads,
  sweep: LoadSweep,
  print: Print,
): Step[] {
  return [
    gasStep(input, print),
    inertiaStep(input, print),
    counterweightStep(input, print),
    shareStep(input),
    capStep(loads, sweep, print),
  ]
}

function gasStep(
  { bore, pressure, crankcasePressure = STANDARD_PRESSURE }: MainLoadsInput,
  print: Print,
): Step {
  const peak = Math.max(...pressure) - crankcasePressure
  return {
    title: 'Greatest gas force on a piston',
    formula: 'F_gas = (p − p_crankcase) π/4 B²',
    withNumbers: `F_gas = ${print.figure(peak, 'pressure')} × π/4 × (${print.figure(bore, 'length')})²`,
    result: `F_gas = ${print.figure(peak * boreArea(bore), 'force')}`,
    source: geometry('Definition'),
  }
}

function inertiaStep(input: MainLoadsInput, print: Print): Step {
  const { reciprocatingMass: mass, stroke, rodLength, speed } = input
  const ratio = stroke / 2 / rodLength
  const force = mass * (stroke / 2) * speed ** 2 * (1 + ratio)
  return {
    title: 'Inertia of the reciprocating mass at dead centre',
    formula: 'F = m R ω² (1 + R/l)',
    withNumbers: `F = ${print.figure(mass, 'mass')} × ${print.figure(stroke / 2, 'length')} × (${print.number(speed)} rad/s)² × (1 + ${print.number(ratio)})`,
    result: `F = ${print.figure(force, 'force')}, relieving the gas force when firing`,
    source: fromMemory(`${TAYLOR}; two-mass rod`),
  }
}

function counterweightStep(input: MainLoadsInput, print: Print): Step {
  const { layout, reciprocatingMass, bigEndMass, pinMass = 0, counterweightShare } = input
  const share = counterweightShare ?? layout.counterweightShare
  const cylinders = layout.cylinders.length / layout.throws.length
  const mass = counterweightMass({ cylinders, reciprocatingMass, bigEndMass, pinMass }, share)
  return {
    title: 'Counterweight of one throw, as mass at the crank radius',
    formula: 'm_c = b_rot (z m_big + m_pin) + b_rec z m_rec',
    withNumbers: `m_c = ${print.number(share.rotating)} × (${cylinders} × ${print.figure(bigEndMass, 'mass')} + ${print.figure(pinMass, 'mass')}) + ${print.number(share.reciprocating)} × ${cylinders} × ${print.figure(reciprocatingMass, 'mass')}`,
    result: `m_c = ${print.figure(mass, 'mass')}; split pins face it a little less`,
    source: { kind: 'practice', cite: 'Share of each layout: no published source' },
  }
}

function shareStep({ frontShare = 0.5, layout }: MainLoadsInput): Step {
  const rear = 1 - frontShare
  return {
    title: 'From throws to mains',
    formula: 'main i = rear share × throw i−1 + front share × throw i',
    withNumbers: `main i = ${rear} × throw i−1 + ${frontShare} × throw i, for ${layout.throws.length} throws on ${layout.mains} mains`,
    result: 'vectors added at every degree of two turns',
    source: published(
      'R. S. Khurmi & J. K. Gupta, A Textbook of Machine Design, ch. 32: supported at the centres of the bearings',
    ),
  }
}

function capStep(loads: MainLoads, { worstPull }: LoadSweep, print: Print): Step {
  const index = Math.round((worstPull.angle * 180) / Math.PI)
  const x =
    (loads.gasX[worstPull.main]?.[index] ?? 0) + (loads.inertiaX[worstPull.main]?.[index] ?? 0)
  const y =
    (loads.gasY[worstPull.main]?.[index] ?? 0) + (loads.inertiaY[worstPull.main]?.[index] ?? 0)
  const delta = Math.atan2(Math.abs(x), -worstPull.half * y)
  const { side } = capShare(x, worstPull.half * y)
  const size = print.figure(Math.hypot(x, y), 'force')
  const angle = print.figure(delta, 'angle')
  return {
    title: `Cap’s share at the worst pull, main ${worstPull.main + 1}`,
    formula: 'pull = (F/π) [(π − δ) cos δ + sin δ]; side = (F/π) (π − δ) sin δ',
    withNumbers: `F = ${size}, δ = ${angle} from straight down, at ${print.figure(worstPull.angle, 'angle')} of crank`,
    result: `pull = ${print.figure(worstPull.force, 'force')}, side push then ${print.figure(side, 'force')}`,
    source: geometry(
      'Cosine spread of pressure over the half circle, only the part below the parting face counted; derived here',
    ),
  }
}
