import { jointFactors } from '../mechanics/bolted-joint.ts'
import type { CapJointInput } from '../mechanics/cap-joint.ts'
import type { CapJointStiffness } from '../mechanics/cap-joint-stiffness.ts'
import { fastenerMargins } from '../mechanics/fastener-fatigue.ts'
import { fastenerStrength } from '../mechanics/fastener-grades.ts'
import { tensileStressArea } from '../mechanics/threads.ts'
import type { CapJointInputs } from './cap-joint-fields.ts'
import type { Print } from './print.ts'
import { published, type Result, type Step } from './worksheet.ts'

const SHIGLEY = 'Shigley’s Mechanical Engineering Design, 9th ed.'

/** Static and fatigue factors of the first kind of fastener under the pull, by Shigley. */
export function fastenerFactors(
  input: CapJointInputs,
  full: CapJointInput,
  stiffness: CapJointStiffness,
  print: Print,
): Part {
  const one = fastenerUnderPull(input, full, stiffness)
  if (!one) return { results: [], steps: [] }
  const still = staticPart(one, print)
  const moving = fatiguePart(one, print)
  return {
    results: [...still.results, ...moving.results],
    steps: [...still.steps, ...moving.steps],
  }
}

interface Part {
  readonly results: Result[]
  readonly steps: Step[]
}

type Loaded = NonNullable<ReturnType<typeof fastenerUnderPull>>

/** The first kind of fastener with its share of the pull; undefined until its strength is known. */
function fastenerUnderPull(
  { pull, grade, proofStrength, girdleShare = 0 }: CapJointInputs,
  { fasteners: [fastener] }: CapJointInput,
  { loadFactor, groups }: CapJointStiffness,
) {
  if (!fastener || !pull) return undefined
  const { nominalDiameter, pitch, form, preload } = fastener
  const strength = grade && fastenerStrength(grade, nominalDiameter)
  const proof = proofStrength ?? strength?.proof
  if (proof === undefined) return undefined
  const stressArea = tensileStressArea(nominalDiameter, pitch, form)
  const added = (groups[0]?.loadPerPull ?? 0) * pull * (1 - girdleShare)
  return { preload, stressArea, added, proof, strength, loadFactor }
}

function staticPart({ preload, stressArea, added, proof, loadFactor }: Loaded, print: Print): Part {
  const load = added / loadFactor
  const strengths = { stressArea, proofStrength: proof }
  const factors = jointFactors({ preload, load, factor: loadFactor, ...strengths })
  const force = (one: number): string => print.figure(one, 'force')
  const step: Step = {
    title: 'Factors of one fastener',
    formula: 'np = Sp At / (C P + Fi); nL = (Sp At − Fi) / (C P); n0 = Fi / (P (1 − C))',
    withNumbers: `Sp At = ${force(proof * stressArea)}, Fi = ${force(preload)}, C = ${print.number(loadFactor)}, P = ${force(load)} for each fastener`,
    result: `np = ${print.number(factors.yielding)}, nL = ${print.number(factors.load)}, n0 = ${print.number(factors.separation)}`,
    source: published(`${SHIGLEY}, eqs 8–28, 8–29 and 8–30`),
  }
  const results = [
    print.ratio('yieldingFactor', 'Proof load over load in the fastener, np', factors.yielding),
    print.ratio('loadFactorToProof', 'How often the load fits before proof, nL', factors.load),
    print.ratio('separationFactor', 'Preload over load that opens, n0', factors.separation),
  ]
  return { results, steps: [step] }
}

/** Only a grade says what a fastener endures; a proof strength alone does not. */
function fatiguePart({ preload, stressArea, added, proof, strength }: Loaded, print: Print): Part {
  if (!strength) return { results: [], steps: [] }
  const fatigue = fastenerMargins({ preload, added, stressArea }, { ...strength, proof })
  const stress = (one: number): string => print.figure(one, 'stress')
  const { alternating, mean, goodman } = fatigue
  const step: Step = {
    title: 'Fatigue of the thread, load from nought',
    formula: 'σa = C P / (2 At); nf = Se (Sut − σi) / (σa (Sut + Se))',
    withNumbers: `σa = ${print.figure(added, 'force')} / (2 × ${print.figure(stressArea, 'area')}); Se = ${stress(strength.endurance)}, Sut = ${stress(strength.ultimate)}`,
    result: `σa = ${stress(alternating)}, nf = ${print.number(goodman)}`,
    source: published(`${SHIGLEY}, eqs 8–35, 8–38 and Table 8–17`),
  }
  const results = [
    print.result('alternatingStress', 'Alternating stress in the thread', alternating, 'stress'),
    print.result('meanStress', 'Mean stress in the thread', mean, 'stress'),
    print.ratio('fatigueFactor', 'Goodman factor of the thread, nf', goodman),
  ]
  return { results, steps: [step] }
}
