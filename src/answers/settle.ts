import { type FactKey, fact } from '../../shared/fact-keys.ts'
import { sameAnswer } from './candidates.ts'
import type { Findings, Reading } from './findings.ts'

/** Where a message takes back what it said: "no wait", "make that". */
export interface Corrections {
  readonly at: readonly number[]
  /** Readings before this token give way to later ones of the same fact. */
  readonly anewFrom?: number
}

/**
 * One reading for each fact. Equal readings agree; after a correction the later
 * counts; a named figure counts before one taken by its unit; otherwise none
 * counts and each is a doubt.
 *
 * @returns the readings in the order of the message, and whether one was corrected
 */
export function settle(
  { readings, doubts }: Findings,
  corrections: Corrections,
): { settled: Reading[]; corrected: boolean } {
  const byKey = new Map<FactKey, Reading[]>()
  for (const reading of readings) {
    const list = byKey.get(reading.key)
    if (list) list.push(reading)
    else byKey.set(reading.key, [reading])
  }
  const settled: Reading[] = []
  let corrected = false
  for (const [key, list] of byKey) {
    const inOrder = [...list].sort((a, b) => a.from - b.from)
    const later = afterCorrection(inOrder, corrections)
    if (later.length < inOrder.length) corrected = true
    for (const { from, to } of inOrder.slice(0, inOrder.length - later.length))
      doubts.push({ from, to, why: `${fact(key).short}: replaced by what follows` })
    const strongest = Math.max(...later.map(({ strength }) => strength))
    const strong = later.filter(({ strength }) => strength === strongest)
    const [first] = strong as [Reading]
    if (strong.every(({ answer }) => sameAnswer(answer, first.answer))) settled.push(first)
    else for (const { from, to } of later) doubts.push({ from, to, why: twice(key) })
    for (const weak of later) {
      if (weak.strength < strongest && !sameAnswer(weak.answer, first.answer)) {
        doubts.push({ from: weak.from, to: weak.to, why: twice(key) })
      }
    }
  }
  return { settled: settled.sort((a, b) => a.from - b.from), corrected }
}

function twice(key: FactKey): string {
  return `more than one reading for ${fact(key).short}: say which`
}

function afterCorrection(
  inOrder: readonly Reading[],
  { at, anewFrom }: Corrections,
): readonly Reading[] {
  const last = inOrder.at(-1) as Reading
  if (anewFrom !== undefined && last.from >= anewFrom) {
    const anew = inOrder.filter(({ from }) => from >= anewFrom)
    if (anew.length < inOrder.length) return anew
  }
  const cut = at
    .filter((place) => place <= last.from && place > (inOrder[0] as Reading).from)
    .at(-1)
  return cut === undefined ? inOrder : inOrder.filter(({ from }) => from >= cut)
}
