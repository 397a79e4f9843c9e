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

/** Facts that are worked out each time they are read, for those that rules seldom ask for. */
export function late(make: Readonly<Record<string, () => FactValue>>): FlatFacts {
  const own = (name: string): boolean => Object.hasOwn(make, name)
  return {
    get: (name) => (own(name) ? make[name]?.() : undefined),
    has: own,
    *[Symbol.iterator]() {
      for (const [name, value] of Object.entries(make)) yield [name, value()] as const
    },
  }
}
