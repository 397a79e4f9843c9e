import { FACT_KEYS, type FactKey, fact, type Topic } from '../../shared/fact-keys.ts'
import { each, type Html, html, NOTHING, raw } from './html.ts'
import { page } from './layout.ts'
import type { Content } from './markdown.ts'
import { pageHref, type UnitSystem } from './page-href.ts'

const TOPICS: readonly (readonly [Topic, string])[] = [
  ['engine', 'Engine'],
  ['plan', 'Plan'],
  ['block', 'Block'],
  ['caps', 'Caps'],
  ['fasteners', 'Fasteners'],
  ['bearings', 'Crank and bearings'],
  ['money', 'Money'],
  ['shop', 'Machine shop'],
]

interface MeasuringView {
  readonly content: Content
  readonly units: UnitSystem
  readonly link: string
}

/** How to find or measure one fact, as safe HTML; undefined when nothing is written of it. */
function howToFind(view: MeasuringView, key: FactKey): string | undefined {
  const { content, units, link } = view
  return content.document(`questions/${key}.md`)?.render({
    idPrefix: `${key}-`,
    shift: 2,
    localHref: (href) => pageHref(href, link, units),
  })
}

/** Every fact that the guide may ask for, with how to find it; each has its key as its place. */
export function measuringPage(view: MeasuringView): Html {
  const { units, link } = view
  const title = 'How to find each figure'
  const summary =
    'Every fact that the guide may ask for: how to find or measure it, and what goes wrong.'
  return page({
    title,
    description: summary,
    path: '/learn/measuring',
    units,
    link,
    body: html`<div class="page-head"><p class="kicker"><a href="${pageHref('/learn', link, units)}">Learn</a></p>
<h1>${title}</h1><p class="lede">${summary}</p></div>
<nav aria-label="Figures" class="jump"><ul>${each(TOPICS, jumpLine)}</ul></nav>
<div class="prose measuring">${each(
      TOPICS,
      ([topic, name]) =>
        html`<h2 id="topic-${topic}">${name}</h2>${each(keysOf(topic), (key) => one(view, key))}`,
    )}</div>`,
  })
}

function one(view: MeasuringView, key: FactKey): Html {
  const words = howToFind(view, key)
  if (words === undefined) return NOTHING
  return html`<section aria-labelledby="${key}"><h3 id="${key}">${fact(key).label}</h3>
<p>${fact(key).help}</p>
${raw(words)}
${explained(view, key)}<p><a href="${pageHref('/', view.link, view.units, { ask: key })}">Answer this in the guide<span class="unseen">: ${fact(key).short}</span></a></p></section>
`
}

/** The explanation that goes with a fact, named in its document's line `learn: <slug>`. */
export function explanationOf(
  content: Content,
  key: FactKey,
): { slug: string; title: string } | undefined {
  const slug = content.document(`questions/${key}.md`)?.front.learn
  const title = slug && content.document(`learn/${slug}.md`)?.front.title
  return slug && title ? { slug, title } : undefined
}

function explained({ content, link, units }: MeasuringView, key: FactKey): Html {
  const found = explanationOf(content, key)
  if (!found) return NOTHING
  return html`<p>With a drawing: <a href="${pageHref(`/learn/${found.slug}`, link, units)}">${found.title}</a>.</p>
`
}

function keysOf(topic: Topic): FactKey[] {
  return FACT_KEYS.filter((key) => fact(key).topic === topic)
}

function jumpLine([topic, name]: readonly [Topic, string]): Html {
  const links = keysOf(topic).map((key) => html` <a href="#${key}">${fact(key).short}</a>`)
  return html`<li><span class="tag">${name}</span>${links}</li>
`
}
