import type { FactValue, FlatFacts } from './evaluate.ts'

/** Facts on top of others, without copying either; the upper ones hide lower ones of their name. */
export function layered(top: ReadonlyMap<string, FactValue>, base: FlatFacts): FlatFacts {
  return {
    get: (name) => top.get(name) ?? base.get(name),
    has: (name) => top.has(name) || base.has(name),
    *[Symbol.iterator]() {
      yield* base
      yield* top
    },
  }
}
