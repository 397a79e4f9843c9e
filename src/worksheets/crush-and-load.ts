import type { Clearance } from '../mechanics/clearance.ts'
import { crush } from '../mechanics/crush.ts'
import { journalBearing } from '../mechanics/journal-bearing.ts'
import { unitLoad } from '../mechanics/unit-load.ts'
import type { ClearanceInputs } from './clearance-fields.ts'
import { InputError } from './input.ts'
import type { Print } from './print.ts'
import { present, published, type Result, type Step } from './worksheet.ts'

interface Part {
  readonly results: readonly Result[]
  readonly steps: readonly Step[]
}

const SHIGLEY = 'Shigley’s Mechanical Engineering Design, 9th ed.'
const NONE: Part = { results: [], steps: [] }

/** Crush, unit load and Sommerfeld number, as far as their figures are given. */
export function crushAndLoad(input: ClearanceInputs, cold: Clearance, print: Print): Part {
  const parts = [crushOf(input, print), loadOf(input, print), sommerfeldOf(input, cold, print)]
  return {
    results: parts.flatMap(({ results }) => results),
    steps: parts.flatMap(({ steps }) => steps),
  }
}

/** An input that another needs beside it. */
function need<K extends keyof ClearanceInputs & string>(
  input: ClearanceInputs,
  key: K,
  why: string,
): NonNullable<ClearanceInputs[K]> {
  const found = input[key]
  if (found === undefined || found === null) throw new InputError(key, `give it, ${why}`)
  return found
}

function crushOf(input: ClearanceInputs, print: Print): Part {
  const { overstand, checkingBore, shellModulus, expansionDifference, crushRise } = input
  if (overstand === undefined) return NONE
  const why = 'for the crush'
  const housing = {
    outside: need(input, 'housingOutside', why),
    modulus: need(input, 'housingModulus', why),
    poisson: input.housingPoisson ?? 0.211,
  }
  const found = crush({
    housingBore: input.housingVertical,
    overstand,
    wall: input.backWall ?? input.shellCrown,
    width: need(input, 'bearingWidth', why),
    housing,
    warmth: { difference: expansionDifference ?? 0, rise: crushRise ?? 0 },
    ...present({ checkingBore, shellModulus }),
  })
  const step: Step = {
    title: 'Crush of the shells',
    formula:
      'δ = a/π − Δα ΔT R; p = δ / (R²/(Es t) + (R/Eh)((Do² + D²)/(Do² − D²) + ν)); joint force = p R b',
    withNumbers: `a = ${print.figure(found.overstand, 'fine')}, D = ${print.figure(input.housingVertical, 'length')}, Do = ${print.figure(housing.outside, 'length')}, Eh = ${print.figure(housing.modulus, 'modulus')}`,
    result: `p = ${print.figure(found.pressure, 'stress')}, ${print.figure(found.jointForce, 'force')} on each parting face`,
    source: published(`${SHIGLEY}, section 3–16, eq. 3–56`),
  }
  return {
    results: [
      print.result('crushOverstand', 'Overstand left in this bore', found.overstand, 'fine'),
      print.result('crushInterference', 'Shell’s radius too large by', found.interference, 'fine'),
      print.result('crushPressure', 'Pressure of shell on housing', found.pressure, 'stress'),
      print.result('crushHoop', 'Squeeze along the shell', found.hoopStress, 'stress'),
      print.result('crushCapForce', 'Clamp of the cap spent on crush', found.capForce, 'force'),
      print.result('crushGrowth', 'Housing grows by', found.housingGrowth, 'fine'),
    ],
    steps: [step],
  }
}

function loadOf(input: ClearanceInputs, print: Print): Part {
  const { load, journal, lostWidth } = input
  if (load === undefined) return NONE
  const width = need(input, 'bearingWidth', 'for the unit load')
  const found = unitLoad(load, journal, width, lostWidth)
  const step: Step = {
    title: 'Unit load',
    formula: 'P = F / ((l − lost) d)',
    withNumbers: `P = ${print.figure(load, 'force')} / ((${print.figure(width, 'length')} − ${print.figure(lostWidth ?? 0, 'length')}) × ${print.figure(journal, 'length')})`,
    result: `P = ${print.figure(found, 'pressure')}`,
    source: published(`${SHIGLEY}, section 12–8`),
  }
  return { results: [print.result('unitLoad', 'Unit load', found, 'pressure')], steps: [step] }
}

function sommerfeldOf(input: ClearanceInputs, cold: Clearance, print: Print): Part {
  const { viscosity, speed, journal } = input
  if (viscosity === undefined && speed === undefined) return NONE
  const why = 'for the Sommerfeld number'
  const width = need(input, 'bearingWidth', why)
  const bearing = {
    radius: journal / 2,
    radialClearance: cold.vertical / 2,
    width,
    viscosity: need(input, 'viscosity', why),
    speed: need(input, 'speed', why),
    load: need(input, 'load', why),
  }
  const found = journalBearing(bearing)
  const step: Step = {
    title: 'Sommerfeld number, by which bearings under a steady load compare',
    formula: 'S = (r/c)² μ N / P',
    withNumbers: `S = (${print.figure(bearing.radius, 'length')} / ${print.figure(bearing.radialClearance, 'fine')})² × ${print.figure(bearing.viscosity, 'viscosity')} × ${print.number(bearing.speed / (2 * Math.PI))} 1/s / ${print.figure(found.unitLoad, 'pressure')}`,
    result: `S = ${print.number(found.sommerfeld)}; an engine’s load turns, so this is no film thickness`,
    source: published(`${SHIGLEY}, eq 12–7`),
  }
  return {
    results: [
      print.ratio('sommerfeld', 'Sommerfeld number', found.sommerfeld),
      print.ratio('petroffFriction', 'Friction by Petroff’s law', found.petroffFriction),
      print.result('petroffPower', 'Power lost by Petroff’s law', found.petroffPower, 'power'),
    ],
    steps: [step],
  }
}
