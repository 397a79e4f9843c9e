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
): { results: Result[]; steps: Step[] } {
  const [fastener] = full.fasteners
  const { pull, grade } = input
  if (!fastener || !pull) return { results: [], steps: [] }
  const strength = grade && fastenerStrength(grade, fastener.nominalDiameter)
  const proof = input.proofStrength ?? strength?.proof
  if (proof === undefined) return { results: [], steps: [] }
  const { nominalDiameter, pitch, form, preload } = fastener
  const stressArea = tensileStressArea(nominalDiameter, pitch, form)
  const loadLeft = 1 - (input.girdleShare ?? 0)
  const added = (stiffness.groups[0]?.loadPerPull ?? 0) * pull * loadLeft
  const factor = stiffness.loadFactor
  const load = added / factor
  const factors = jointFactors({ preload, load, factor, stressArea, proofStrength: proof })
  const force = (one: number): string => print.figure(one, 'force')
  const c = print.number(factor)
  const step: Step = {
    title: 'Factors of one fastener',
    formula: 'np = Sp At / (C P + Fi); nL = (Sp At − Fi) / (C P); n0 = Fi / (P (1 − C))',
    withNumbers: `Sp At = ${force(proof * stressArea)}, Fi = ${force(preload)}, C = ${c}, P = ${force(load)} for each fastener`,
    result: `np = ${print.number(factors.yielding)}, nL = ${print.number(factors.load)}, n0 = ${print.number(factors.separation)}`,
    source: published(`${SHIGLEY}, eqs 8–28, 8–29 and 8–30`),
  }
  const results = [
    print.ratio('yieldingFactor', 'Proof load over load in the fastener, np', factors.yielding),
    print.ratio('loadFactorToProof', 'How often the load fits before proof, nL', factors.load),
    print.ratio('separationFactor', 'Preload over load that opens, n0', factors.separation),
  ]
  if (!strength) return { results, steps: [step] }
  const fatigue = fastenerMargins({ preload, added, stressArea }, { ...strength, proof })
  results.push(
    print.result(
      'alternatingStress',
      'Alternating stress in the thread',
      fatigue.alternating,
      'stress',
    ),
    print.result('meanStress', 'Mean stress in the thread', fatigue.mean, 'stress'),
    print.ratio('fatigueFactor', 'Goodman factor of the thread, nf', fatigue.goodman),
  )
  const fatigueStep: Step = {
    title: 'Fatigue of the thread, load from nought',
    formula: 'σa = C P / (2 At); nf = Se (Sut − σi) / (σa (Sut + Se))',
    withNumbers: `σa = ${force(added)} / (2 × ${print.figure(stressArea, 'area')}); Se = ${print.figure(strength.endurance, 'stress')}, Sut = ${print.figure(strength.ultimate, 'stress')}`,
    result: `σa = ${print.figure(fatigue.alternating, 'stress')}, nf = ${print.number(fatigue.goodman)}`,
    source: published(`${SHIGLEY}, eqs 8–35, 8–38 and Table 8–17`),
  }
  return { results, steps: [step, fatigueStep] }
}
