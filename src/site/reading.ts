import { type Context, Hono } from 'hono'
import type { AppDeps } from '../api/deps.ts'
import { glossaryPage } from '../pages/glossary.ts'
import type { Html } from '../pages/html.ts'
import { learnIndexPage, learnPage } from '../pages/learn.ts'
import { methodPage } from '../pages/method.ts'
import { notFoundPage } from '../pages/not-found.ts'
import { rulePage, rulesPage } from '../pages/rule-pages.ts'
import { viewOf } from './request-view.ts'

/** Pages to read: explanations, glossary, method, rules. */
export function readingRoutes(deps: AppDeps): Hono {
  const { rulebook, content, sources } = deps
  const site = new Hono()
  const view = (c: Context) => {
    const { units, link } = viewOf(rulebook, c)
    return { content, sources, rulebook, units, link }
  }
  const orMissing = (c: Context, page: Html | undefined) =>
    page ? c.html(page) : c.html(notFoundPage({ ...view(c), path: c.req.path }), 404)

  site.get('/learn', (c) => c.html(learnIndexPage(view(c))))
  site.get('/learn/glossary', (c) => orMissing(c, glossaryPage(view(c))))
  site.get('/learn/:slug', (c) =>
    orMissing(c, learnPage({ ...view(c), slug: c.req.param('slug') })),
  )
  site.get('/method', (c) => c.html(methodPage(view(c))))
  site.get('/rules', (c) => c.html(rulesPage(view(c))))
  site.get('/rules/:id', (c) => orMissing(c, rulePage({ ...view(c), id: c.req.param('id') })))
  return site
}
