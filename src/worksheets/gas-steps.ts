import type { GasCycle, GasCycleInput } from '../mechanics/gas-cycle.ts'
import { constantGamma, GAMMA_FITS, type GammaFit, gammaAt } from '../mechanics/gas-properties.ts'
import { WIEBE_COMPLETENESS, WIEBE_FORM } from '../mechanics/wiebe.ts'
import type { Print } from './print.ts'
import { fromMemory, geometry, published, type Step } from './worksheet.ts'

const FERGUSON =
  'Ferguson & Kirkpatrick, Internal Combustion Engines: Applied Thermosciences, 3rd ed., finite heat release'

/** The working of a cycle: volumes, mass, γ, burn, walls, the integration and its work. */
export function cycleSteps(input: GasCycleInput, cycle: GasCycle, print: Print): Step[] {
  return [
    volumeStep(input, print),
    massStep(input, cycle, print),
    gammaStep(input, print),
    burnStep(input, print),
    wallStep(input, cycle, print),
    lawStep(input, cycle, print),
    workStep(input, cycle, print),
  ]
}

function swept({ bore, stroke }: GasCycleInput): number {
  return (Math.PI / 4) * bore ** 2 * stroke
}

function volumeStep(input: GasCycleInput, print: Print): Step {
  const { bore, stroke, rodLength, compressionRatio: r } = input
  const rod = rodLength === null ? 'very long' : print.figure(rodLength, 'length')
  return {
    title: 'Volumes',
    formula: 'Vd = π/4 B² S; Vc = Vd / (r − 1); V1 = Vd + Vc',
    withNumbers: `Vd = π/4 × (${print.figure(bore, 'length')})² × ${print.figure(stroke, 'length')}; Vc = Vd / (${print.number(r)} − 1); rod ${rod}`,
    result: `Vd = ${print.figure(swept(input), 'volume')}, Vc = ${print.figure(swept(input) / (r - 1), 'volume')}`,
    source: geometry('Slider-crank geometry, exact'),
  }
}

function massStep(input: GasCycleInput, cycle: GasCycle, print: Print): Step {
  const start = (swept(input) * input.compressionRatio) / (input.compressionRatio - 1)
  return {
    title: 'Gas in the cylinder',
    formula: 'm = p1 V1 / (R T1)',
    withNumbers: `m = ${print.figure(input.startPressure, 'pressure')} × ${print.figure(start, 'volume')} / (287.06 J/(kg K) × ${print.number(input.startTemperature)} K)`,
    result: `m = ${print.figure(cycle.mass, 'mass')}`,
    source: geometry('Ideal gas law with the constant of air'),
  }
}

function gammaStep(input: GasCycleInput, print: Print): Step {
  const { gamma = 'linear', startTemperature } = input
  const fit: GammaFit = typeof gamma === 'number' ? constantGamma(gamma) : GAMMA_FITS[gamma]
  const { constant, linear, quadratic, source } = fit
  const at = print.number(gammaAt(fit, startTemperature))
  const memory = source.includes('memory')
  return {
    title: 'Ratio of specific heats',
    formula: 'γ = c0 + c1 T + c2 T²',
    withNumbers: `γ = ${print.number(constant)} + (${print.number(linear)}) T + (${print.number(quadratic)}) T², T in K`,
    result: `γ = ${at} at the start`,
    source:
      typeof gamma === 'number'
        ? { kind: 'said', cite: '' }
        : memory
          ? fromMemory(source)
          : published(source),
  }
}

function burnStep(input: GasCycleInput, print: Print): Step {
  const a = input.burnCompleteness ?? WIEBE_COMPLETENESS
  const n = input.burnForm ?? WIEBE_FORM
  const burnt = 1 - Math.exp(-a)
  return {
    title: 'Burn',
    formula: 'x = 1 − exp(−a ((θ − θs) / θd)ⁿ)',
    withNumbers: `x = 1 − exp(−${print.number(a)} × ((θ − (${print.figure(input.burnStart, 'angle')})) / ${print.figure(input.burnDuration, 'angle')})^${print.number(n)})`,
    result: `${print.figure(burnt * input.addedHeat, 'heat')} of ${print.figure(input.addedHeat, 'heat')} is freed`,
    source: published(`${FERGUSON}, eq. 2.34 form`),
  }
}

function wallStep({ wallHeat, bore }: GasCycleInput, cycle: GasCycle, print: Print): Step {
  const loss = print.figure(cycle.wallLoss, 'heat')
  if (wallHeat?.kind === 'woschni') {
    return {
      title: 'Heat to the walls',
      formula: 'h = 0.013 B^−0.2 p^0.8 T^−0.53 w^0.8; dQ = h A (T − Tw) dt',
      withNumbers: `B = ${print.figure(bore, 'length')}, Tw = ${print.figure(wallHeat.wallTemperature, 'temperature')}, factor ${print.number(wallHeat.scale)}`,
      result: `${loss} a cycle`,
      source: published('Woschni, SAE 670931 (1967), constants read where quoted'),
    }
  }
  const share = wallHeat?.kind === 'share' ? wallHeat.share : 0
  return {
    title: 'Heat to the walls',
    formula: 'Q_wall = share × Q',
    withNumbers: `share = ${print.figure(share, 'share')}`,
    result: `${loss} a cycle`,
    source: { kind: 'said', cite: '' },
  }
}

function lawStep(input: GasCycleInput, cycle: GasCycle, print: Print): Step {
  return {
    title: 'First law, step by step over the crank angle',
    formula: 'dp/dθ = −γ (p/V) dV/dθ + (γ − 1)/V · (dQ_burn − dQ_wall)/dθ',
    withNumbers: `from p1 = ${print.figure(input.startPressure, 'pressure')} at −180°, ${print.number(input.stepsPerDegree ?? 1)} step in a degree, fourth-order Runge–Kutta`,
    result: `highest pressure ${print.figure(cycle.peakPressure, 'pressure')} at ${print.figure(cycle.peakAngle, 'angle')}`,
    source: published(
      `${FERGUSON}; Heywood, Internal Combustion Engine Fundamentals, 1988, section 9.2.2`,
    ),
  }
}

function workStep(input: GasCycleInput, cycle: GasCycle, print: Print): Step {
  const work = cycle.imepGross * swept(input)
  return {
    title: 'Work and mean effective pressure',
    formula: 'imep = (∫ p dV) / Vd',
    withNumbers: `imep = ${print.figure(work, 'heat')} / ${print.figure(swept(input), 'volume')}; pumping takes ${print.figure(cycle.pumping, 'pressure')}`,
    result: `${print.figure(cycle.imepGross, 'pressure')} gross, ${print.figure(cycle.imepNet, 'pressure')} net`,
    source: geometry('Definition'),
  }
}
