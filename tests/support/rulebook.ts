import { fileURLToPath } from 'node:url'
import { type Answers, readAnswers } from '../../shared/answers.ts'
import type { Assessment, RouteReport } from '../../shared/assessment.ts'
import type { RouteId } from '../../shared/route-ids.ts'
import { assess } from '../../src/assess.ts'
import { loadRulebook } from '../../src/rulebook/load.ts'
import { readFolder } from '../../src/rulebook/read-folder.ts'

const folder = fileURLToPath(new URL('../../rules', import.meta.url))

/** The texts of rules/, a fresh map each time, so that a test may spoil its own. */
export function ruleTexts(): Map<string, string> {
  return readFolder(folder)
}

/** The project's own rulebook. */
export const rulebook = loadRulebook(ruleTexts())

/** Answers as the API takes them; a slip in the test's own figures fails it. */
export function said(raw: Readonly<Record<string, unknown>>): Answers {
  const { answers, problems } = readAnswers(raw)
  if (problems.length > 0) throw new RangeError(JSON.stringify(problems))
  return answers
}

/** A plain V8 for the street, two-bolt gray-iron caps of its own, every deciding figure given. */
export const STREET_V8 = {
  layout: 'v8-cross-plane',
  bore: '4.03 in',
  stroke: '3.48 in',
  compressionRatio: 9.5,
  induction: 'naturally-aspirated',
  fuel: 'pump-gasoline',
  peakRpm: '5800 rpm',
  use: 'street',
  capFastening: 'two-bolt',
  capMaterial: 'gray-iron',
  capHistory: 'matched',
  capOrigin: 'factory',
  blockMaterial: 'gray-iron',
  fastenerKind: 'bolt',
  fastenerThread: '1/2-13',
  fastenerTorque: '85 lb ft',
  fastenerLubricant: 'oil',
  invested: '3500 USD',
  shopLineBores: 'yes',
} as const

/** The call for the street V8 with some answers changed; `undefined` takes one out. */
export async function callFor(
  changes: Readonly<Record<string, unknown>> = {},
): Promise<Assessment> {
  const raw = Object.fromEntries(
    Object.entries({ ...STREET_V8, ...changes }).filter(([, value]) => value !== undefined),
  )
  return assess(rulebook, said(raw), { withoutWhatIf: true })
}

export function routeOf({ routes }: Assessment, id: RouteId): RouteReport {
  const found = routes.find((route) => route.id === id)
  if (!found) throw new RangeError(`no report of ${id}`)
  return found
}
