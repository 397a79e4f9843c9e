import { z } from 'zod'
import { runWorksheet } from '../worksheets/input.ts'
import { bodySchema, unitSystem, WORKSHEETS, worksheetAnswer } from '../worksheets/registry.ts'
import type { Worksheet } from '../worksheets/worksheet.ts'
import { getOperation, type Operation, postOperation } from './operation.ts'
import { problemResponse } from './problem-response.ts'
import { steadyFigures } from './steady-figures.ts'

const listed = z.strictObject({ name: z.string(), title: z.string(), summary: z.string() })

const list = getOperation({
  path: '/worksheets',
  id: 'worksheets',
  title: 'List the worksheets',
  text: 'Each piece of the mechanics that a builder uses alone, by name.',
  response: z.strictObject({ worksheets: z.array(listed) }),
  examples: [{ name: 'all', title: 'Every worksheet' }],
  answer: (_, c) =>
    c.json({
      worksheets: WORKSHEETS.map(({ name, title, summary }) => ({ name, title, summary })),
    }),
})

// What was given comes back as it was given; its shape is that of the request.
const answer = worksheetAnswer.extend({ inputs: z.record(z.string(), z.unknown()) })

function worksheetOperation(sheet: Worksheet): Operation {
  const { name, title, summary, fields, example } = sheet
  return postOperation({
    path: `/worksheets/${name}`,
    id: `worksheet-${name}`,
    title,
    text: summary,
    body: rawBody(sheet),
    shownBody: bodySchema(sheet),
    response: answer,
    examples: [{ name: 'invented', title: 'An invented case', body: inNumbers(fields, example) }],
    answer(_, c, { units, ...raw }) {
      const outcome = runWorksheet(sheet, raw, units)
      if ('problems' in outcome) {
        return problemResponse(c, 400, 'invalid-body', outcome.problems)
      }
      return c.json(steadyFigures(outcome.ok))
    },
  })
}

/** An example as a program would send it: the page's texts of plain numbers as numbers. */
function inNumbers(
  fields: Worksheet['fields'],
  example: Readonly<Record<string, unknown>>,
): Record<string, unknown> {
  const entries = Object.entries(example).map(([key, value]): [string, unknown] => {
    const control = fields[key]?.control
    if (control?.type === 'number') return [key, Number(value)]
    if (control?.type !== 'list' || !Array.isArray(value)) return [key, value]
    return [key, value.map((row) => inNumbers(control.fields, row))]
  })
  return Object.fromEntries(entries)
}

/** The body's own keys and no others; each figure is judged afterwards, by its field. */
function rawBody({ fields }: Worksheet) {
  const keys = Object.keys(fields)
  const inputs = keys.map((key): [string, z.ZodType] => [key, z.unknown().optional()])
  return z
    .strictObject(
      { ...Object.fromEntries(inputs), units: unitSystem },
      {
        error: ({ code }) =>
          code === 'unrecognized_keys' ? `use only ${[...keys, 'units'].join(', ')}` : undefined,
      },
    )
    .transform((body) => body as Record<string, unknown> & { units: 'us' | 'metric' })
}

/** One operation for each worksheet, and the list of them. */
export const worksheetOperations: readonly Operation[] = [
  list,
  ...WORKSHEETS.map(worksheetOperation),
]
