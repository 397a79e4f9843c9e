import { assemblyPage } from './assembly-notes.ts'
import { glossaryPage } from './glossary.ts'
import { each, type Html, html, NOTHING, raw } from './html.ts'
import { page } from './layout.ts'
import { learnThumbnail } from './learn-drawings.ts'
import type { Content, ContentDocument } from './markdown.ts'
import { measuringPage } from './measuring.ts'
import { pageHref, type UnitSystem } from './page-href.ts'
import { type SourceRecord, sourceList, sourcesNamed } from './source-list.ts'

export interface LearnView {
  readonly content: Content
  readonly sources: readonly SourceRecord[]
  readonly units: UnitSystem
  /** The case, kept by every link. */
  readonly link: string
}

/** An explanation, as the index and the search for "what is …" see it. */
export interface Topic {
  readonly slug: string
  readonly title: string
  readonly summary: string
  /** Words by which people ask for it. */
  readonly terms: readonly string[]
  /** Name of its first drawing; '' when it has none. */
  readonly drawing: string
}

export interface TopicGroup {
  readonly title: string
  readonly topics: readonly Topic[]
}

/** Topics in reading order, as content/learn.md lists them: a heading for each group, an item for each. */
export function topicGroups(content: Content): TopicGroup[] {
  const index = content.document('learn.md')
  if (!index) return []
  return index.text
    .split(/^## /m)
    .slice(1)
    .map((part) => ({
      title: (part.split('\n')[0] as string).trim(),
      topics: [...part.matchAll(/^- \[([a-z0-9-]+)\]/gm)].flatMap((match) =>
        topic(content, match[1] as string),
      ),
    }))
}

function topic(content: Content, slug: string): Topic[] {
  const found = content.document(`learn/${slug}.md`)
  if (!found) return []
  const { title = slug, summary = '', terms = '', drawing = '' } = found.front
  return [{ slug, title, summary, terms: terms.split(',').map((term) => term.trim()), drawing }]
}

const REFERENCE = [
  ['glossary', 'Glossary', 'The trade’s words, plainly.'],
  ['measuring', 'How to find each figure', 'Step by step, with what goes wrong.'],
  ['assembly', 'Assembly notes', 'For each route: order, torque, checks, first strip-down.'],
  ['safety', 'Cautions', 'What can hurt you or the engine, and who comes before the guide.'],
] as const

/** All explanations at a glance. */
export function learnIndexPage(view: LearnView): Html {
  const { content, units, link } = view
  const summary = content.document('learn.md')?.front.summary ?? ''
  const entry = (slug: string, title: string, words: string, picture = NOTHING) =>
    html`<li>${picture}<div><h3><a href="${pageHref(`/learn/${slug}`, link, units)}">${title}</a></h3><p class="soft">${words}</p></div></li>
`
  return page({
    title: 'Learn',
    description: summary,
    path: '/learn',
    units,
    link,
    wide: true,
    body: html`<div class="page-head"><h1>Learn</h1><p class="lede">${summary}</p></div>
<div class="learn-index">${each(
      topicGroups(content),
      (group) => html`<h2>${group.title}</h2>
<ul class="topics pictured">${each(group.topics, ({ slug, title, summary: words, drawing }) => entry(slug, title, words, learnThumbnail(drawing)))}</ul>
`,
    )}<h2>To look things up</h2>
<ul class="topics">${each(REFERENCE, ([slug, title, words]) => entry(slug, title, words))}</ul></div>`,
  })
}

/** The page `/learn/<slug>`, or undefined when there is none. */
export function learnPage(view: LearnView & { slug: string }): Html | undefined {
  const { slug, content } = view
  if (slug === 'glossary') return glossaryPage(view)
  if (slug === 'measuring') return measuringPage(view)
  if (slug === 'assembly') return assemblyPage(view)
  const document = content.document(slug === 'safety' ? 'safety.md' : `learn/${slug}.md`)
  return document && explanation(view, document)
}

function explanation(view: LearnView & { slug: string }, document: ContentDocument): Html {
  const { slug, units, link, content, sources } = view
  const { title = slug, summary = '' } = document.front
  const named = sourcesNamed(document.front.sources, sources)
  return page({
    title,
    description: summary,
    path: `/learn/${slug}`,
    units,
    link,
    body: html`<article><div class="page-head"><p class="kicker"><a href="${pageHref('/learn', link, units)}">Learn</a></p>
<h1>${title}</h1><p class="lede">${summary}</p></div>
<div class="prose">${raw(document.render({ localHref: (href) => pageHref(href, link, units) }))}
${named.length > 0 ? html`<h2 id="sources">Sources</h2>${sourceList(named)}` : NOTHING}</div></article>
${neighbours(content, slug, link, units)}`,
  })
}

function neighbours(content: Content, slug: string, link: string, units: UnitSystem): Html {
  const topics = topicGroups(content).flatMap((group) => group.topics)
  const here = topics.findIndex((one) => one.slug === slug)
  if (here < 0) return NOTHING
  const to = (one: Topic | undefined, words: string, rel: 'prev' | 'next') =>
    one
      ? html`<li><span class="tag">${words}</span> <a rel="${rel}" href="${pageHref(`/learn/${one.slug}`, link, units)}">${one.title}</a></li>`
      : NOTHING
  return html`<nav aria-label="More to learn" class="neighbours"><ul>
${to(topics[here - 1], 'before', 'prev')}${to(topics[here + 1], 'next', 'next')}
</ul></nav>`
}
