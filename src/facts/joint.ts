import type { Build } from '../build/build.ts'
import type { Rulebook } from '../rulebook/load.ts'
import type { CapCases } from './cap-cases.ts'
import { type Draws, type Held, heldBy } from './held.ts'
import { type JointModel, jointModel } from './joint-model.ts'
import { type JointMargins, jointMargins } from './margins.ts'
import { type Memory, remembered } from './memory.ts'
import { DOUBTED_OF_JOINT, jointDraws } from './samples.ts'

/** A cap's joint over the sampled cases; the loads do not enter. */
export interface Joint {
  readonly model: JointModel
  readonly of: Draws
  readonly held: Held
  /** Margins by the loads that they were worked out for. */
  readonly margins: Map<CapCases, JointMargins>
}

/** Facts that a joint rests on, besides those that it doubts. */
const CHOICES = [
  'capFastening',
  'capMaterial',
  'blockMaterial',
  'fastenerThread',
  'fastenerLubricant',
  'fastenerGrade',
  'fastenerKind',
  'registerFit',
  'tightening',
] as const

/** All that a joint rests on, as text. */
function jointKey({ facts }: Build): string {
  let key = ''
  for (const name of CHOICES) key += `${facts[name].value}|`
  for (const name of DOUBTED_OF_JOINT) {
    const { state, value, low, high } = facts[name]
    key += `${state}/${value}/${low}/${high}|`
  }
  return key
}

/**
 * The joint of one main cap of a build, over the sampled cases.
 *
 * @throws {DomainError} if a size is outside the range of the mechanics
 */
export function jointOf(build: Build, rulebook: Rulebook, memory: Memory): Joint {
  return remembered(memory.joints, jointKey(build), () => {
    const model = jointModel(build, rulebook)
    const of = jointDraws(build, rulebook)
    const held = heldBy(model, of, rulebook.loadCases.samples + 1)
    return { model, of, held, margins: new Map() }
  })
}

/** Margins of a joint against what the crank does to its cap. */
export function marginsOf(joint: Joint, cases: CapCases, rulebook: Rulebook): JointMargins {
  let found = joint.margins.get(cases)
  if (!found) {
    found = jointMargins(joint.model, joint.held, cases, rulebook)
    joint.margins.set(cases, found)
  }
  return found
}
