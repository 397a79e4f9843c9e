import { Hono } from 'hono'
import { z } from 'zod'
import { type Answers, readAnswers } from '../../shared/answers.ts'
import { FACT_KEYS, fact } from '../../shared/fact-keys.ts'
import type { Problem } from '../../shared/problem.ts'
import { assess } from '../assess.ts'
import type { Rulebook } from '../rulebook/load.ts'
import { currencyProblems } from './currency.ts'
import type { AppDeps } from './deps.ts'
import { problemResponse } from './problem-response.ts'
import { rawAnswers, readBody } from './read-request.ts'

const units = z.enum(['us', 'metric']).default('us')
export const assessBody = z.strictObject({ answers: rawAnswers, units })

/** Answers from outside, with the problems of reading them and of their currencies. */
export function acceptAnswers(
  rulebook: Rulebook,
  raw: unknown,
): { answers: Answers; problems: Problem[] } {
  const { answers, problems } = readAnswers(raw)
  return { answers, problems: [...problems, ...currencyProblems(rulebook, answers)] }
}

/** JSON in and out: calls what the pages call, nothing more. */
export function apiRoutes({ rulebook }: AppDeps): Hono {
  const api = new Hono()
  api.post('/assess', async (c) => {
    const body = await readBody(c, assessBody)
    if ('refusal' in body) return body.refusal
    const { answers, problems } = acceptAnswers(rulebook, body.ok.answers)
    if (problems.length > 0) return problemResponse(c, 400, 'invalid-answers', problems)
    return c.json(await assess(rulebook, answers, { system: body.ok.units }))
  })
  api.get('/facts', (c) => c.json({ version: rulebook.version, facts: FACT_KEYS.map(fact) }))
  api.get('/routes', (c) => c.json({ version: rulebook.version, routes: routeList(rulebook) }))
  return api
}

function routeList({ routes, cost, followOn }: Rulebook) {
  const name = (id: string): string =>
    cost.items.find((item) => item.id === id)?.label ?? followOn[id]?.title ?? id
  const items = (entries: (typeof routes)[number]['parts']) =>
    entries.map((entry) =>
      typeof entry === 'string'
        ? { id: entry, title: name(entry) }
        : { id: entry.item, title: name(entry.item), when: entry.when },
    )
  return routes.map(({ id, title, strength, changes, parts, work }) => ({
    id,
    title,
    strength,
    changes,
    parts: items(parts),
    work: items(work),
  }))
}
