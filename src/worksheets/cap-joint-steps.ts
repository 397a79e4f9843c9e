import type { CapJoint, CapJointInput } from '../mechanics/cap-joint.ts'
import type { CapJointStiffness } from '../mechanics/cap-joint-stiffness.ts'
import { fitPressure } from '../mechanics/register.ts'
import type { CapJointInputs } from './cap-joint-fields.ts'
import type { Print } from './print.ts'
import { fromMemory, geometry, practice, published, type Step } from './worksheet.ts'

const SHIGLEY = 'Shigley’s Mechanical Engineering Design, 9th ed.'

/** From stiffness to the clamp that stands and the pull that opens it. */
export function clampSteps(
  input: CapJointInputs,
  full: CapJointInput,
  stiffness: CapJointStiffness,
  joint: CapJoint,
  print: Print,
): Step[] {
  const force = (one: number): string => print.figure(one, 'force')
  const { loadFactor: factor } = stiffness
  const sum = full.fasteners.map(
    ({ count, preload, lean }) =>
      `${count} × ${force(preload)}${lean === 0 ? '' : ` × cos ${print.figure(lean, 'angle')}`}`,
  )
  const girdle = input.girdleClamp ? ` + ${force(input.girdleClamp)}` : ''
  const lost = (full.embeddingLoss - (full.thermalStretch ?? 0)) * stiffness.lossPerEmbedding
  const left = 1 - (input.girdleShare ?? 0)
  return [
    shareStep(full, stiffness, print),
    {
      title: 'Clamp at the parting face',
      formula: 'F = Σ count · Fi cos(lean) − (f_Z − f_T) Σ 1/(1/kb + 1/km) + girdle',
      withNumbers: `F = ${sum.join(' + ')} − ${force(lost)}${girdle}`,
      result: `F = ${force(joint.clamp)}`,
      source: fromMemory('VDI 2230, preload loss through embedding and warmth'),
    },
    {
      title: 'Pull that opens the parting face',
      formula: 'P0 = F / (1 − C)',
      withNumbers: `P0 = ${force(joint.clamp)} / (1 − ${print.number(factor)})${left === 1 ? '' : ` / ${print.number(left)}`}`,
      result: `P0 = ${force(joint.openingLoad)}`,
      source: published(`${SHIGLEY}, eqs 8–25 and 8–30`),
    },
  ]
}

function shareStep(
  { loadIntroduction = 1 }: CapJointInput,
  { loadFactor, groups }: CapJointStiffness,
  print: Print,
): Step {
  const stiff = (one = 0): string => print.figure(one, 'stiffness')
  const [first] = groups
  const single = `C = ${print.number(loadIntroduction)} × ${stiff(first?.fastener)} / (${stiff(first?.fastener)} + ${stiff(first?.members)})`
  return {
    title: 'Share of the pull that the fasteners feel',
    formula: 'C = n kb / (kb + km)',
    withNumbers:
      groups.length === 1
        ? single
        : `all ${groups.length} kinds side by side, each by its number and its lean (× cos²)`,
    result: `C = ${print.number(loadFactor)}`,
    source: published(`${SHIGLEY}, section 8–7, eq (f)`),
  }
}

/** What is left under the pull, and what holds the cap sideways. */
export function capacitySteps(
  input: CapJointInputs,
  full: CapJointInput,
  joint: CapJoint,
  print: Print,
): Step[] {
  const force = (one: number): string => print.figure(one, 'force')
  const { pull = 0 } = input
  const residual = joint.residualClamp(pull)
  const grip = joint.gripCapacity(pull)
  const steps: Step[] = [
    {
      title: 'Clamp left under the pull',
      formula: 'F_K = F − (1 − C) P, never below nought',
      withNumbers: `F_K = ${force(joint.clamp)} − (1 − ${print.number(joint.loadFactor)}) × ${force(pull)}`,
      result: `F_K = ${force(residual)}`,
      source: published(`${SHIGLEY}, eq 8–25`),
    },
    {
      title: 'Side push that friction holds',
      formula: 'S = μ F_K',
      withNumbers: `S = ${print.number(full.friction)} × ${force(residual)}`,
      result: `S = ${force(grip)}`,
      source: fromMemory('VDI 2230, least clamp against slip, R2'),
    },
  ]
  if (full.register.height > 0) steps.push(registerStep(full, joint, print))
  if (joint.crossCapacity > 0) steps.push(crossStep(full, joint, print))
  steps.push({
    title: 'Side push that everything holds',
    formula: 'S = μ F_K + register + cross bolts',
    withNumbers: `S = ${force(grip)} + ${force(joint.registerCapacity)} + ${force(joint.crossCapacity)}`,
    result: `S = ${force(joint.holdCapacity(pull))}`,
    source: geometry('Sum of what stands side by side'),
  })
  return steps
}

function registerStep(full: CapJointInput, joint: CapJoint, print: Print): Step {
  const { height, length, interference, span, allowablePressure } = full.register
  const own =
    span === undefined ? 0 : fitPressure(interference, span, full.capModulus, full.blockModulus)
  return {
    title: 'Side push that the register holds',
    formula: 'S = p h l, with p the least of p_allow and 2 (p_allow − p0); less for a loose fit',
    withNumbers: `p_allow = ${print.figure(allowablePressure, 'stress')}, p0 = ${print.figure(own, 'stress')}, h = ${print.figure(height, 'length')}, l = ${print.figure(length, 'length')}, fit ${print.figure(interference, 'fine')}`,
    result: `S = ${print.figure(joint.registerCapacity, 'force')}`,
    source: published(
      `${SHIGLEY}, bearing pressure; the two-wall form and the share of a loose fit are derived here`,
    ),
  }
}

function crossStep({ crossBolts }: CapJointInput, joint: CapJoint, print: Print): Step {
  return {
    title: 'Side push that the cross bolts hold',
    formula: 'S = (count / 2) × preload: one side has to open first',
    withNumbers: `S = (${print.number(crossBolts?.count ?? 0)} / 2) × ${print.figure(crossBolts?.preload ?? 0, 'force')}`,
    result: `S = ${print.figure(joint.crossCapacity, 'force')}`,
    source: practice('Counting one side only: common practice, no published source'),
  }
}
