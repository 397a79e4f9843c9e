import type { Build } from '../build/build.ts'
import type { Rulebook } from '../rulebook/load.ts'
import type { CapCases } from './cap-cases.ts'
import { doubt, drawn, scatterOf } from './draws.ts'
import type { EngineLoads } from './engine-loads.ts'
import { STRENGTH_FACTS } from './joint-model.ts'
import { type Memory, newMemory } from './memory.ts'

/**
 * One set of sampled cases: for each, how far everything uncertain lies from its
 * likely value, and what the crank then does to the caps. Case 0 is the likely one.
 */
export interface Samples extends CapCases {
  /** Factors and figures by scatter id and by assumed fact key, one for each case. */
  readonly of: ReadonlyMap<string, Float64Array>
}

/** Facts of the joint whose doubt is sampled beside the rulebook's scatter. */
const JOINT_FACTS = [...STRENGTH_FACTS, 'fastenerTorque', 'registerHeight'] as const

/**
 * Draw the cases. The same build gives the same cases; builds that differ in one
 * fact share the draws of all others, so that they compare like with like.
 */
export function drawSamples(
  build: Build,
  loads: EngineLoads,
  rulebook: Rulebook,
  memory: Memory = newMemory(),
): Samples {
  const of = new Map(loads.scales.of)
  for (const item of rulebook.scatter) {
    const spread = of.has(item.id) ? undefined : scatterOf(item, build)
    if (spread) of.set(item.id, drawn(item.id, spread, rulebook, memory))
  }
  for (const key of JOINT_FACTS) {
    const ends = doubt(build, key)
    if (ends) of.set(key, drawn(key, ends, rulebook, memory))
  }
  return { ...loads.cases, of }
}
