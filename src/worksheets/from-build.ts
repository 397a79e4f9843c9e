import type { Assessment } from '../../shared/assessment.ts'

/** Raw inputs taken over from a build: field name → fact key. Facts without a value are left out. */
export function buildInputs(
  { build }: Assessment,
  facts: Readonly<Record<string, string>>,
): Record<string, unknown> {
  const entries = Object.entries(facts).flatMap(([field, key]): [string, unknown][] => {
    const entry = build[key]
    if (!entry || entry.value === null || entry.state === 'not-needed') return []
    const { value, unit } = entry
    if (typeof value === 'string' || unit === '') return [[field, value]]
    return [[field, { value: Number(value.toPrecision(6)), unit }]]
  })
  return Object.fromEntries(entries)
}

/** A figure worked out by the assessment, as a raw input. */
export function figureInput(value: number, unit: string): { value: number; unit: string } {
  return { value: Number(value.toPrecision(6)), unit }
}
