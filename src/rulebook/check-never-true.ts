import type { Condition, Leaf } from './schema.ts'

/** What the comparisons of one `all` leave a fact to be. */
interface Room {
  low: number
  high: number
  /** Whether the ends themselves are left out. */
  openLow: boolean
  openHigh: boolean
  only: ReadonlySet<unknown> | undefined
  not: Set<unknown>
}

/**
 * Facts whose comparisons within one `all` cannot be true together, so that the
 * rule never fires whatever the build is: above 5 and below 3, or equal to two
 * different choices.
 *
 * @returns names of those facts, each once; none when the condition can be true
 */
export function neverTrue(condition: Condition): string[] {
  if ('any' in condition) {
    const parts = condition.any.map(neverTrue)
    return parts.every((part) => part.length > 0) ? (parts[0] ?? []) : []
  }
  if ('not' in condition || 'fact' in condition) return []
  const inner = condition.all.flatMap(neverTrue)
  const rooms = new Map<string, Room>()
  for (const leaf of leavesOfAll(condition)) narrow(roomOf(rooms, leaf.fact), leaf)
  const empty = [...rooms].filter(([, room]) => isEmpty(room)).map(([name]) => name)
  return [...new Set([...inner, ...empty])]
}

/** Comparisons that must all be true: those of the `all` and of an `all` within it. */
function leavesOfAll(condition: { readonly all: readonly Condition[] }): Leaf[] {
  return condition.all.flatMap((part) => {
    if ('fact' in part) return [part]
    return 'all' in part ? leavesOfAll(part) : []
  })
}

function roomOf(rooms: Map<string, Room>, name: string): Room {
  let room = rooms.get(name)
  if (!room) {
    const [low, high] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]
    room = { low, high, openLow: false, openHigh: false, only: undefined, not: new Set() }
    rooms.set(name, room)
  }
  return room
}

function narrow(room: Room, { operator, value }: Leaf): void {
  if (typeof value === 'object' && 'fact' in value) return
  switch (operator) {
    case 'equal':
    case 'in':
      room.only = both(room.only, new Set<unknown>(Array.isArray(value) ? value : [value]))
      return
    case 'notEqual':
    case 'notIn':
      for (const one of Array.isArray(value) ? value : [value]) room.not.add(one)
      return
    default:
      bound(room, operator, Number(value))
  }
}

function both(had: ReadonlySet<unknown> | undefined, more: ReadonlySet<unknown>): Set<unknown> {
  return new Set([...more].filter((one) => had?.has(one) ?? true))
}

function bound(room: Room, operator: Leaf['operator'], value: number): void {
  const open = !operator.endsWith('Inclusive')
  if (operator.startsWith('greater')) {
    if (value < room.low || (value === room.low && !open)) return
    room.low = value
    room.openLow = open
  } else {
    if (value > room.high || (value === room.high && !open)) return
    room.high = value
    room.openHigh = open
  }
}

function isEmpty({ low, high, openLow, openHigh, only, not }: Room): boolean {
  if (low > high || (low === high && (openLow || openHigh))) return true
  if (!only) return false
  return ![...only].some((one) => {
    if (not.has(one)) return false
    if (typeof one !== 'number') return true
    return (openLow ? one > low : one >= low) && (openHigh ? one < high : one <= high)
  })
}
