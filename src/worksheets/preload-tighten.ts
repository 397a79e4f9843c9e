import {
  preloadForAngle,
  preloadForStretch,
  preloadForTorque,
  torqueForPreload,
} from '../mechanics/preload.ts'
import { TIGHTENING_SCATTER, tighteningFactor } from '../mechanics/tightening-scatter.ts'
import { InputError } from './input.ts'
import type { PreloadInput } from './preload-fields.ts'
import type { Print } from './print.ts'
import { fromMemory, published, type Step } from './worksheet.ts'

const SHIGLEY = 'Shigley’s Mechanical Engineering Design, 9th ed.'
const WAYS = ['torque', 'preload', 'shareOfProof', 'stretch', 'turnAngle'] as const

export interface Tightened {
  readonly preload: number
  readonly torque: number
  readonly steps: readonly Step[]
}

/** Whether an angle or a stretch sets the preload: no torque comes to it then. */
export function isTurned({ tightening, torque }: PreloadInput): boolean {
  return (
    torque === undefined && (tightening === 'torque-angle' || tightening === 'stretch-measured')
  )
}

/** Preload and torque, whichever of the two, or of what leads to them, was given. */
export function tighten(
  input: PreloadInput,
  factor: number,
  proofLoad: number | undefined,
  print: Print,
): Tightened {
  const given = WAYS.filter((way) => input[way] !== undefined)
  if (given.length !== 1) {
    throw new InputError(given[1] ?? 'torque', `give exactly one of ${WAYS.join(', ')}`)
  }
  const d = input.thread.diameter
  const kd = `${print.number(factor)} × ${print.figure(d, 'length')}`
  if (input.torque !== undefined) {
    const preload = preloadForTorque(input.torque, d, factor)
    const step = {
      title: 'Preload of the torque',
      formula: 'F = T / (K d)',
      withNumbers: `F = ${print.figure(input.torque, 'torque')} / (${kd})`,
      result: `F = ${print.figure(preload, 'force')}`,
      source: published(`${SHIGLEY}, eq 8–27`),
    }
    return { preload, torque: input.torque, steps: [step] }
  }
  const { preload, steps } = preloadGiven(input, proofLoad, print)
  const torque = torqueForPreload(preload, d, factor)
  const step = {
    title: 'Torque for the preload',
    formula: 'T = K F d',
    withNumbers: `T = ${print.number(factor)} × ${print.figure(preload, 'force')} × ${print.figure(d, 'length')}`,
    result: `T = ${print.figure(torque, 'torque')}`,
    source: published(`${SHIGLEY}, eq 8–27`),
  }
  return { preload, torque, steps: isTurned(input) ? steps : [...steps, step] }
}

function preloadGiven(
  input: PreloadInput,
  proofLoad: number | undefined,
  print: Print,
): { preload: number; steps: Step[] } {
  const { preload, shareOfProof, stretch, turnAngle } = input
  if (preload !== undefined) return { preload, steps: [] }
  if (shareOfProof !== undefined) return ofProof(shareOfProof, proofLoad, print)
  if (stretch !== undefined) return byStretch(stretch, input.fastenerStiffness, print)
  return byTurn(input, turnAngle as number, print)
}

function ofProof(share: number, proofLoad: number | undefined, print: Print) {
  if (proofLoad === undefined) {
    throw new InputError('grade', 'give a grade or a proof strength with the share of proof load')
  }
  const preload = share * proofLoad
  const step: Step = {
    title: 'Preload as a share of proof load',
    formula: 'F = share × Fp',
    withNumbers: `F = ${print.figure(share, 'share')} × ${print.figure(proofLoad, 'force')}`,
    result: `F = ${print.figure(preload, 'force')}`,
    source: published(`${SHIGLEY}, eq 8–31`),
  }
  return { preload, steps: [step] }
}

function byStretch(stretch: number, stiffness: number | undefined, print: Print) {
  if (stiffness === undefined) {
    throw new InputError('fastenerStiffness', 'give the stiffness of the fastener with its stretch')
  }
  const preload = preloadForStretch(stretch, stiffness)
  const step: Step = {
    title: 'Preload of the stretch',
    formula: 'F = kb δ',
    withNumbers: `F = ${print.figure(stiffness, 'stiffness')} × ${print.figure(stretch, 'fine')}`,
    result: `F = ${print.figure(preload, 'force')}`,
    source: published(`${SHIGLEY}, section 8–4`),
  }
  return { preload, steps: [step] }
}

function byTurn(
  { thread, fastenerStiffness, memberStiffness }: PreloadInput,
  angle: number,
  print: Print,
) {
  if (fastenerStiffness === undefined || memberStiffness === undefined) {
    const missing = fastenerStiffness === undefined ? 'fastenerStiffness' : 'memberStiffness'
    throw new InputError(missing, 'give the stiffness of fastener and members with a turn')
  }
  const preload = preloadForAngle(angle, thread.pitch, fastenerStiffness, memberStiffness)
  const step: Step = {
    title: 'Preload of the turn',
    formula: 'F = (φ / 360°) P / (1/kb + 1/km)',
    withNumbers: `F = (${print.figure(angle, 'angle')} / 360°) × ${print.figure(thread.pitch, 'length')} / (1 / ${print.figure(fastenerStiffness, 'stiffness')} + 1 / ${print.figure(memberStiffness, 'stiffness')})`,
    result: `F = ${print.figure(preload, 'force')}`,
    source: published(`${SHIGLEY}, section 8–8, turn-of-the-nut method`),
  }
  return { preload, steps: [step] }
}

export interface PreloadSpread {
  readonly low: number
  readonly high: number
  readonly factor: number
  readonly step: Step
}

/** Least and greatest preload of the way of tightening; undefined when none is given. */
export function preloadSpread(
  input: PreloadInput,
  preload: number,
  print: Print,
): PreloadSpread | undefined {
  const row = input.tightening && TIGHTENING_SCATTER[input.tightening]
  const scatter = input.scatter ?? row?.high
  if (scatter === undefined) return undefined
  const factor = tighteningFactor(scatter)
  const [low, high] = [preload * (1 - scatter), preload * (1 + scatter)]
  const cite = input.scatter === undefined && row ? row.source : 'VDI 2230, tightening factor'
  const step: Step = {
    title: 'Scatter of the preload',
    formula: 'F (1 − e) to F (1 + e); αA = (1 + e) / (1 − e)',
    withNumbers: `${print.figure(preload, 'force')} × (1 ∓ ${print.number(scatter)})`,
    result: `${print.figure(low, 'force')} to ${print.figure(high, 'force')}; αA = ${print.number(factor)}`,
    source: row?.fromMemory && input.scatter === undefined ? fromMemory(cite) : published(cite),
  }
  return { low, high, factor, step }
}
