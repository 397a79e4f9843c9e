import type { EngineGas } from './engine-gas.ts'
import type { EngineLoads } from './engine-loads.ts'
import type { Joint } from './joint.ts'

/**
 * What was worked out already while one case is looked at, each under a key of all that it rests
 * on. What-ifs change one answer at a time, and most leave the loads alone. Nothing depends on
 * what is remembered but the time it takes.
 */
export interface Memory {
  readonly gas: Map<string, EngineGas>
  readonly loads: Map<string, EngineLoads>
  readonly joints: Map<string, Joint>
}

/** An empty memory. */
export function newMemory(): Memory {
  return { gas: new Map(), loads: new Map(), joints: new Map() }
}

/** Make a value when it is first asked for, and keep it. */
export function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | undefined
  return () => {
    made ??= { value: make() }
    return made.value
  }
}

/** What a map holds under a key; made and kept when it is not there yet. */
export function remembered<T>(map: Map<string, T>, key: string, make: () => T): T {
  let found = map.get(key)
  if (found === undefined) {
    found = make()
    map.set(key, found)
  }
  return found
}
