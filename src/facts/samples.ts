import { type Build, isByTorque } from '../build/build.ts'
import type { Rulebook } from '../rulebook/load.ts'
import { STRENGTH_FACTS } from './crown.ts'
import { doubt, drawn, scattered } from './draws.ts'

/** Facts of the joint whose doubt is sampled beside the rulebook's scatter. */
export const DOUBTED_OF_JOINT = [...STRENGTH_FACTS, 'fastenerTorque', 'registerHeight'] as const

/** Items of scatter.json that are about the loads. */
const OF_LOADS = ['gasForce', 'inertiaForce']

/**
 * Draw what is uncertain about a joint. The same build gives the same cases; builds
 * that differ in one fact share the draws of all others, so that they compare like
 * with like.
 */
export function jointDraws(build: Build, rulebook: Rulebook): Map<string, Float64Array> {
  const of = new Map<string, Float64Array>()
  for (const item of rulebook.scatter) {
    const values = OF_LOADS.includes(item.id) ? undefined : scattered(item, build, rulebook)
    if (values) of.set(item.id, values)
  }
  for (const key of DOUBTED_OF_JOINT) {
    // A torque that does not set the clamp leaves it in no doubt.
    const idle = key === 'fastenerTorque' && !isByTorque(build)
    const ends = idle ? undefined : doubt(build, key)
    if (ends) of.set(key, drawn(key, ends, rulebook))
  }
  return of
}
