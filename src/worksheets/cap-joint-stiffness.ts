import { fastenerStiffness } from '../mechanics/bolted-joint.ts'
import {
  type CapFastener,
  type CapJointStiffness,
  capJointStiffness,
} from '../mechanics/cap-joint-stiffness.ts'
import { type Layer, memberStiffness } from '../mechanics/member-stiffness.ts'
import { tensileStressArea } from '../mechanics/threads.ts'
import type { CapJointInputs, FastenerInput } from './cap-joint-fields.ts'
import type { Print } from './print.ts'
import { present, published, type Step } from './worksheet.ts'

const SHIGLEY = 'Shigley’s Mechanical Engineering Design, 9th ed.'
const STEEL = 207e9

export interface Moduli {
  readonly cap: number
  readonly block: number
}

/** A fastener of the form as the mechanics want it, with the defaults that the fields state. */
export function capFastener(input: FastenerInput): CapFastener {
  const { thread, kind, engagement, headDiameter, lean, modulus } = input
  const { shankLength, shankDiameter, spreadDiameter } = input
  return {
    count: input.count,
    lean: lean ?? 0,
    nominalDiameter: thread.diameter,
    pitch: thread.pitch,
    preload: input.preload,
    modulus: modulus ?? STEEL,
    grip: input.grip,
    engagement: engagement ?? 1.5 * thread.diameter,
    headDiameter: headDiameter ?? 1.5 * thread.diameter,
    kind: kind === 'stud' ? 'stud' : 'bolt',
    ...present({ form: thread.form, shankLength, shankDiameter, spreadDiameter }),
  }
}

/** The lengths that the joint's stiffness rests on. */
interface Lengths {
  readonly shank: number
  readonly threaded: number
  readonly layers: readonly Layer[]
}

/** Plain shank, thread that stretches, and the layers the cone passes. */
function lengthsOf(
  fastener: CapFastener,
  input: CapJointInputs,
  index: number,
  moduli: Moduli,
): Lengths {
  const { nominalDiameter: d, engagement } = fastener
  const through = input.fasteners[index]?.kind === 'through'
  const inBlock = through ? 0 : Math.min(engagement, d) / 2
  const own: Layer[] = [{ thickness: fastener.grip, modulus: moduli.cap }]
  if (!through) own.push({ thickness: inBlock, modulus: moduli.block })
  const layers = input.layers ?? own
  const length = layers.reduce((sum, { thickness }) => sum + thickness, 0)
  const thread = fastener.kind === 'stud' ? d : d / 2
  const shank = Math.min(length, fastener.shankLength ?? Math.max(0, fastener.grip - thread))
  return { shank, threaded: length - shank, layers }
}

/** Whether the plain form of the mechanics does not know the joint: its figures were given. */
function isOwn({ fasteners, layers }: CapJointInputs): boolean {
  return (
    layers !== undefined ||
    fasteners.some(
      ({ kind, stiffness, memberStiffness: members }) =>
        kind === 'through' || stiffness !== undefined || members !== undefined,
    )
  )
}

/**
 * Stiffness of the joint, with the working for each kind of fastener. Given stiffnesses, through
 * bolts and given layers are set side by side as the mechanics do their own.
 */
export function jointStiffness(
  input: CapJointInputs,
  fasteners: readonly CapFastener[],
  moduli: Moduli,
  print: Print,
): { stiffness: CapJointStiffness; steps: Step[] } {
  const loadIntroduction = input.loadIntroduction ?? 1
  const plain = { fasteners, capModulus: moduli.cap, blockModulus: moduli.block, loadIntroduction }
  const checked = isOwn(input) ? undefined : capJointStiffness(plain)
  const steps: Step[] = []
  const pairs = fasteners.map((fastener, index): [number, number] => {
    const lengths = lengthsOf(fastener, input, index, moduli)
    const given = input.fasteners[index]
    const kb = given?.stiffness ?? boltStiffness(fastener, lengths)
    const km = given?.memberStiffness ?? membersOf(fastener, lengths)
    if (given?.stiffness === undefined) steps.push(boltStep(fastener, lengths, kb, print))
    if (given?.memberStiffness === undefined) steps.push(memberStep(fastener, lengths, km, print))
    return [kb, km]
  })
  return { stiffness: checked ?? sideBySide(fasteners, pairs, loadIntroduction), steps }
}

function boltStiffness(fastener: CapFastener, { shank, threaded }: Lengths): number {
  const shankArea = (Math.PI / 4) * (fastener.shankDiameter ?? fastener.nominalDiameter) ** 2
  const area = tensileStressArea(fastener.nominalDiameter, fastener.pitch, fastener.form)
  return fastenerStiffness(fastener.modulus, shankArea, area, shank, threaded)
}

function membersOf(fastener: CapFastener, { layers }: Lengths): number {
  const { nominalDiameter, headDiameter, spreadDiameter } = fastener
  return memberStiffness(layers, nominalDiameter, headDiameter, spreadDiameter)
}

/** Springs of every fastener and its members, resolved upright, under a rigid cap. */
function sideBySide(
  fasteners: readonly CapFastener[],
  pairs: readonly (readonly [number, number])[],
  loadIntroduction: number,
): CapJointStiffness {
  let [bolts, upright, lossPerEmbedding] = [0, 0, 0]
  pairs.forEach(([kb, km], index) => {
    const { count = 0, lean = 0 } = fasteners[index] ?? {}
    const cosine = Math.cos(lean)
    bolts += count * kb * cosine ** 2
    upright += count * (kb + km) * cosine ** 2
    lossPerEmbedding += (count * cosine) / (1 / kb + 1 / km)
  })
  const groups = pairs.map(([kb, km], index) => {
    const { count = 0, lean = 0 } = fasteners[index] ?? {}
    const cosine = Math.cos(lean)
    const loadPerPull = (loadIntroduction * kb * cosine) / upright
    return { fastener: kb, members: km, uprightShare: count * cosine, loadPerPull }
  })
  return { groups, loadFactor: (loadIntroduction * bolts) / upright, lossPerEmbedding, upright }
}

function boltStep(
  fastener: CapFastener,
  { shank, threaded }: Lengths,
  kb: number,
  print: Print,
): Step {
  const diameter = fastener.shankDiameter ?? fastener.nominalDiameter
  const area = tensileStressArea(fastener.nominalDiameter, fastener.pitch, fastener.form)
  const [ad, at] = [(Math.PI / 4) * diameter ** 2, area].map((one) => print.figure(one, 'area'))
  const [ld, lt] = [shank, threaded].map((one) => print.figure(one, 'length'))
  return {
    title: 'Stiffness of one fastener: plain shank and thread in series',
    formula: 'kb = Ad At E / (Ad lt + At ld)',
    withNumbers: `kb = ${ad} × ${at} × ${print.figure(fastener.modulus, 'modulus')} / (${ad} × ${lt} + ${at} × ${ld})`,
    result: `kb = ${print.figure(kb, 'stiffness')}`,
    source: published(`${SHIGLEY}, eq 8–17 and Table 8–7`),
  }
}

function memberStep(fastener: CapFastener, { layers }: Lengths, km: number, print: Print): Step {
  const path = layers.map(
    ({ thickness, modulus }) =>
      `${print.figure(thickness, 'length')} of ${print.figure(modulus, 'modulus')}`,
  )
  return {
    title: 'Stiffness of its clamped parts: pressure cones of 30° that meet half way',
    formula:
      'k = 0.5774 π E d / ln[(1.155 t + D − d)(D + d) / ((1.155 t + D + d)(D − d))]; 1/km = Σ 1/k',
    withNumbers: `d = ${print.figure(fastener.nominalDiameter, 'length')}, D = ${print.figure(fastener.headDiameter, 'length')}, through ${path.join(' and ')}`,
    result: `km = ${print.figure(km, 'stiffness')}`,
    source: published(`${SHIGLEY}, section 8–5, eqs 8–18 and 8–20`),
  }
}
