import { LUBRICANTS } from '../mechanics/lubricant-friction.ts'
import { nutFactorParts } from '../mechanics/preload.ts'
import { pitchDiameter } from '../mechanics/threads.ts'
import { InputError } from './input.ts'
import type { PreloadInput } from './preload-fields.ts'
import type { Print } from './print.ts'
import { fromMemory, present, published, type Step } from './worksheet.ts'

/** The nut factor, how it came about, and the thread friction where one is known. */
export interface NutFactor {
  readonly factor: number
  readonly threadFriction: number
  readonly headFriction: number
  readonly parts?: { readonly lead: number; readonly thread: number; readonly collar: number }
  readonly step?: Step
}

/** K as given, by the full torque equation, or of the lubricant; in this order. */
export function nutFactorOf(input: PreloadInput, print: Print): NutFactor {
  const { threadFriction, collarFriction } = input
  const lubricant = LUBRICANTS[input.lubricant ?? 'oil']
  const likely = lubricant.friction.likely
  const friction = {
    threadFriction: threadFriction ?? likely,
    headFriction: collarFriction ?? likely,
  }
  if (input.nutFactor !== undefined) return { factor: input.nutFactor, ...friction }
  if (threadFriction !== undefined || collarFriction !== undefined) {
    if (threadFriction === undefined || collarFriction === undefined) {
      const missing = threadFriction === undefined ? 'threadFriction' : 'collarFriction'
      throw new InputError(missing, 'give friction both in the thread and under the head')
    }
    return { ...fullEquation(input, threadFriction, collarFriction, print), ...friction }
  }
  const factor = lubricant.nutFactor.likely
  return { factor, ...friction, step: tableStep(input, factor, print) }
}

function fullEquation(
  input: PreloadInput,
  threadFriction: number,
  collarFriction: number,
  print: Print,
): Pick<NutFactor, 'factor' | 'parts' | 'step'> {
  const { diameter, pitch } = input.thread
  const { meanThreadDiameter, meanCollarDiameter } = input
  const parts = nutFactorParts({
    nominalDiameter: diameter,
    pitch,
    threadFriction,
    collarFriction,
    ...present({ meanThreadDiameter, meanCollarDiameter }),
  })
  const factor = parts.lead + parts.thread + parts.collar
  const dm = meanThreadDiameter ?? pitchDiameter(diameter, pitch)
  const [d, m, c] = [diameter, dm, meanCollarDiameter ?? 1.25 * diameter].map((length) =>
    print.figure(length, 'length'),
  )
  const tan = print.number(pitch / (Math.PI * dm))
  const f = print.number(threadFriction)
  return {
    factor,
    parts,
    step: {
      title: 'Nut factor by the full torque equation',
      formula: 'K = (dm / 2d) · (tan λ + f sec 30°) / (1 − f tan λ sec 30°) + (dc / 2d) · fc',
      withNumbers: `K = (${m} / (2 × ${d})) · (${tan} + 1.155 × ${f}) / (1 − 1.155 × ${f} × ${tan}) + (${c} / (2 × ${d})) × ${print.number(collarFriction)}`,
      result: `K = ${print.number(factor)}; stretching takes ${print.number(parts.lead)} of it, the thread ${print.number(parts.thread)}, the head ${print.number(parts.collar)}`,
      source: published('Shigley’s Mechanical Engineering Design, 9th ed., eqs 8–26 and 8–27'),
    },
  }
}

function tableStep(input: PreloadInput, factor: number, print: Print): Step {
  const name = input.lubricant ?? 'oil'
  const { nutFactor, source } = LUBRICANTS[name]
  return {
    title: 'Nut factor of the lubricant',
    formula: 'K from the table',
    withNumbers: `${name}: ${print.number(nutFactor.low)} to ${print.number(nutFactor.high)}`,
    result: `K = ${print.number(factor)}`,
    source: source.includes('memory') ? fromMemory(source) : published(source),
  }
}
