import { ROUTE_IDS, type RouteId } from '../../shared/route-ids.ts'
import { each, type Html, html, NOTHING, raw } from './html.ts'
import { page } from './layout.ts'
import type { Content } from './markdown.ts'
import { pageHref, type UnitSystem } from './page-href.ts'

interface AssemblyView {
  readonly content: Content
  readonly units: UnitSystem
  readonly link: string
}

/** Assembly notes of one route: title, summary and safe HTML; undefined when there are none. */
export function assemblyNotes(
  view: AssemblyView,
  route: RouteId,
  shift = 1,
): { title: string; summary: string; html: string } | undefined {
  const found = view.content.document(`assembly/${route}.md`)
  if (!found) return undefined
  const { title = route, summary = '' } = found.front
  const localHref = (href: string) => pageHref(href, view.link, view.units)
  return { title, summary, html: found.render({ idPrefix: `${route}-`, shift, localHref }) }
}

/** The notes of all routes on one page; each has its route's id as its place. */
export function assemblyPage(view: AssemblyView): Html {
  const { units, link } = view
  const title = 'Assembly notes'
  const summary =
    'For each route: what to check before, the order, the torque, the checks, and what to look for later.'
  const notes = ROUTE_IDS.flatMap((route) => {
    const found = assemblyNotes(view, route)
    return found ? [{ route, ...found }] : []
  })
  return page({
    title,
    description: summary,
    path: '/learn/assembly',
    units,
    link,
    body: html`<div class="page-head"><p class="kicker"><a href="${pageHref('/learn', link, units)}">Learn</a></p>
<h1>${title}</h1><p class="lede">${summary}</p></div>
<nav aria-label="Routes"><ul>${each(notes, ({ route, title: name }) => html`<li><a href="#${route}">${name}</a></li>`)}</ul></nav>
<div class="prose">${each(
      notes,
      ({
        route,
        title: name,
        summary: words,
        html: body,
      }) => html`<section aria-labelledby="${route}"><h2 id="${route}">${name}</h2>
${words === '' ? NOTHING : html`<p class="soft">${words}</p>`}
${raw(body)}</section>
`,
    )}</div>`,
  })
}
