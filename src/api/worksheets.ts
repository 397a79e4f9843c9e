import { Hono } from 'hono'
import { z } from 'zod'
import { runWorksheet } from '../worksheets/input.ts'
import { unitSystem, WORKSHEETS, worksheetNamed } from '../worksheets/registry.ts'
import type { Worksheet } from '../worksheets/worksheet.ts'
import type { AppDeps } from './deps.ts'
import { problemResponse } from './problem-response.ts'
import { readBody } from './read-request.ts'

/** One endpoint for each piece of the mechanics that a builder uses alone. */
export function worksheetApi(_deps: AppDeps): Hono {
  const api = new Hono()
  api.get('/worksheets', (c) =>
    c.json({
      worksheets: WORKSHEETS.map(({ name, title, summary }) => ({ name, title, summary })),
    }),
  )
  api.post('/worksheets/:name', async (c) => {
    const sheet = worksheetNamed(c.req.param('name'))
    if (!sheet) return problemResponse(c, 404, 'not-found')
    const body = await readBody(c, rawBody(sheet))
    if ('refusal' in body) return body.refusal
    const { units, ...raw } = body.ok
    const outcome = runWorksheet(sheet, raw, units)
    if ('problems' in outcome) {
      return problemResponse(c, 400, 'invalid-body', outcome.problems)
    }
    return c.json(outcome.ok)
  })
  return api
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
