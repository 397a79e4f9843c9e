import { Hono } from 'hono'
import type { Problem } from '../../shared/problem.ts'
import { assessOnce } from '../api/assess-once.ts'
import { caseFromLink } from '../api/case-from-link.ts'
import { clientOf } from '../api/client.ts'
import type { AppDeps } from '../api/deps.ts'
import { ofCase } from '../api/no-engine-error.ts'
import { comparePage } from '../pages/compare.ts'
import { compareCases } from '../what-if/compare.ts'
import { viewOf } from './request-view.ts'

/** `/compare?a=…&b=…`: two links side by side. */
export function compareRoutes({ rulebook }: AppDeps): Hono {
  const site = new Hono()
  site.get('/compare', async (c) => {
    const { units, link } = viewOf(rulebook, c)
    const [a, b] = [c.req.query('a') ?? '', c.req.query('b') ?? '']
    const view = { units, link, a, b }
    if (a === '' || b === '') return c.html(comparePage({ ...view, problems: [] }))
    const cases = [caseFromLink(rulebook, a), caseFromLink(rulebook, b)] as const
    const problems = [...placed('a', cases[0]), ...placed('b', cases[1])]
    if (cases.some(({ answers }) => Object.keys(answers).length === 0)) {
      return c.html(comparePage({ ...view, problems }), 422)
    }
    const [one, other] = await Promise.all(
      cases.map(async ({ answers }, at) => {
        const options = { system: units, withoutWhatIf: true }
        const assessed = assessOnce(rulebook, answers, options, clientOf(c))
        return { answers, assessment: await ofCase(at === 0 ? 'a' : 'b', assessed) }
      }),
    )
    const found = one && other ? compareCases(one, other) : undefined
    return c.html(comparePage({ ...view, problems, found }))
  })
  return site
}

function placed(place: string, { problems }: { problems: readonly Problem[] }): Problem[] {
  return problems.map((one) => ({ ...one, field: `${place}.${one.field}` }))
}
