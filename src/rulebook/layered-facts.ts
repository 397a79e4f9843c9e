import type { FactValue, FlatFacts } from './evaluate.ts'

/** Facts on top of others, without copying either; the upper ones hide lower ones of their name. */
export function layered(top: FlatFacts, base: FlatFacts): FlatFacts {
  return {
    get: (name) => top.get(name) ?? base.get(name),
    has: (name) => top.has(name) || base.has(name),
    *[Symbol.iterator]() {
      yield* base
      yield* top
    },
  }
}

/** How each fact is read off a thing, by name. */
export type Readers<T> = ReadonlyMap<string, (of: T) => FactValue>

/** Facts of a thing that are worked out each time they are read: of many, rules ask for a few. */
export function readOff<T>(readers: Readers<T>, of: T): FlatFacts {
  return {
    get: (name) => readers.get(name)?.(of),
    has: (name) => readers.has(name),
    *[Symbol.iterator]() {
      for (const [name, read] of readers) yield [name, read(of)] as const
    },
  }
}
