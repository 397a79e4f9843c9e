import { z } from 'zod'
import { boreMachiningSheet } from './bore-machining.ts'
import { capJointSheet } from './cap-joint.ts'
import { clearanceSheet } from './clearance.ts'
import { gasCycleSheet } from './gas-cycle.ts'
import { jobCostSheet } from './job-cost.ts'
import { mainLoadsSheet } from './main-loads.ts'
import { preload } from './preload.ts'
import type { Worksheet } from './worksheet.ts'

/** Every worksheet, in the order a builder meets them. */
export const WORKSHEETS: readonly Worksheet[] = [
  gasCycleSheet,
  mainLoadsSheet,
  preload,
  capJointSheet,
  boreMachiningSheet,
  clearanceSheet,
  jobCostSheet,
]

/** A worksheet by its name; undefined when there is none. */
export function worksheetNamed(name: string): Worksheet | undefined {
  return WORKSHEETS.find((sheet) => sheet.name === name)
}

/** Units in which a worksheet answers. */
export const unitSystem = z.enum(['us', 'metric']).default('us')

/** What `POST /api/worksheets/{name}` takes, for its description. */
export function bodySchema({ fields }: Worksheet): z.ZodType {
  const inputs = Object.entries(fields).map(([key, field]): [string, z.ZodType] => {
    const described = field.schema.describe([field.label, field.help].join('. '))
    return [key, field.required ? described : described.optional()]
  })
  return z.strictObject({ ...Object.fromEntries(inputs), units: unitSystem })
}

const result = z.strictObject({
  id: z.string(),
  label: z.string(),
  value: z.number().nullable(),
  unit: z.string(),
  text: z.string(),
})
const axis = z.strictObject({ label: z.string(), unit: z.string(), values: z.array(z.number()) })

/** What it answers with. */
export const worksheetAnswer = z.strictObject({
  name: z.string(),
  inputs: z.record(z.string(), z.json()),
  results: z.array(result),
  steps: z.array(
    z.strictObject({
      title: z.string(),
      formula: z.string(),
      withNumbers: z.string(),
      result: z.string(),
      source: z.strictObject({
        kind: z.enum(['published', 'practice', 'memory', 'computed', 'said']),
        cite: z.string(),
      }),
    }),
  ),
  notes: z.array(z.string()),
  series: z
    .array(z.strictObject({ id: z.string(), label: z.string(), x: axis, y: axis }))
    .optional(),
})
