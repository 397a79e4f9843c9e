import { assemblyPreload, assemblyTorque } from '../mechanics/vdi-preload.ts'
import { InputError } from './input.ts'
import type { PreloadInput } from './preload-fields.ts'
import type { NutFactor } from './preload-friction.ts'
import type { Print } from './print.ts'
import { fromMemory, type Result, type Step } from './worksheet.ts'

/** Preload and torque at which tension and twist together use the stated share of yield. */
export function vdiPreload(
  input: PreloadInput,
  friction: NutFactor,
  yieldStrength: number | undefined,
  print: Print,
): { results: Result[]; steps: Step[]; atYield?: number } {
  if (yieldStrength === undefined) return { results: [], steps: [] }
  const { diameter, pitch } = input.thread
  const { utilisation = 0.9 } = input
  const { threadFriction } = friction
  const preload = assemblyPreload(diameter, pitch, yieldStrength, threadFriction, utilisation)
  const atYield = assemblyPreload(diameter, pitch, yieldStrength, threadFriction, 1)
  const percent = print.figure(utilisation, 'share')
  const step: Step = {
    title: `Preload at ${percent} of yield, twist included`,
    formula: 'F = A0 ν Rp / √(1 + 3 [1.5 (d2/d0) (P/(π d2) + 1.155 μ)]²)',
    withNumbers: `ν = ${percent}, Rp = ${print.figure(yieldStrength, 'stress')}, P = ${print.figure(pitch, 'length')}, μ = ${print.number(threadFriction)}`,
    result: `F = ${print.figure(preload, 'force')}; at full yield ${print.figure(atYield, 'force')}`,
    source: fromMemory('VDI 2230 (2003), R7; its table of values was read'),
  }
  const torque = headTorque(input, friction, preload, print)
  return {
    results: [
      print.result('vdiPreload', `Preload at ${percent} of yield`, preload, 'force'),
      ...torque.results,
    ],
    steps: [step, ...torque.steps],
    atYield,
  }
}

function headTorque(
  { thread, faceDiameter, holeDiameter }: PreloadInput,
  { threadFriction, headFriction }: NutFactor,
  preload: number,
  print: Print,
): { results: Result[]; steps: Step[] } {
  if (faceDiameter === undefined && holeDiameter === undefined) return { results: [], steps: [] }
  if (faceDiameter === undefined || holeDiameter === undefined) {
    const missing = faceDiameter === undefined ? 'faceDiameter' : 'holeDiameter'
    throw new InputError(missing, 'give both the head’s face and the hole')
  }
  const torque = assemblyTorque(
    preload,
    { nominalDiameter: thread.diameter, pitch: thread.pitch },
    { thread: threadFriction, head: headFriction },
    { faceDiameter, holeDiameter },
  )
  const step: Step = {
    title: 'Torque for that preload',
    formula: 'M = F (0.16 P + 0.58 d2 μG + (dw + dh)/4 · μK)',
    withNumbers: `M = ${print.figure(preload, 'force')} × (0.16 × ${print.figure(thread.pitch, 'length')} + 0.58 d2 × ${print.number(threadFriction)} + (${print.figure(faceDiameter, 'length')} + ${print.figure(holeDiameter, 'length')})/4 × ${print.number(headFriction)})`,
    result: `M = ${print.figure(torque, 'torque')}`,
    source: fromMemory('VDI 2230 (2003), R13; its table of values was read'),
  }
  return { results: [print.result('vdiTorque', 'Torque for it', torque, 'torque')], steps: [step] }
}
