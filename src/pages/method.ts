import { each, type Html, html, NOTHING, raw } from './html.ts'
import { page } from './layout.ts'
import type { Content } from './markdown.ts'
import { pageHref, type UnitSystem } from './page-href.ts'
import { type SourceRecord, sourceList } from './source-list.ts'

const TOPICS: readonly (readonly [SourceRecord['topic'], string])[] = [
  ['gas', 'Gas pressure'],
  ['crank', 'Crank train and main loads'],
  ['joint', 'Threads, preload and the cap joint'],
  ['strength', 'Strength of cap and block'],
  ['machining', 'Machining, clearance and check-in'],
  ['chance', 'How sure'],
  ['money', 'Money'],
  ['general', 'Everywhere'],
]

const PLACES = [
  ['the-model-step-by-step', 'The model'],
  ['limits', 'Limits'],
  ['what-the-marks-mean', 'What the marks mean'],
  ['sources', 'Sources'],
  ['cautions', 'Cautions'],
] as const

/** Model and limits from content/method.md, every source from its record, then the cautions. */
export function methodPage(view: {
  content: Content
  sources: readonly SourceRecord[]
  units: UnitSystem
  link: string
}): Html {
  const { content, sources, units, link } = view
  const localHref = (href: string) => pageHref(href, link, units)
  const method = content.document('method.md')
  const safety = content.document('safety.md')
  const summary = method?.front.summary ?? ''
  return page({
    title: method?.front.title ?? 'Method',
    description: summary,
    path: '/method',
    units,
    link,
    body: html`<div class="page-head"><h1>${method?.front.title ?? 'Method'}</h1><p class="lede">${summary}</p></div>
<nav class="places" aria-label="On this page"><ul>${each(
      PLACES,
      ([id, name]) => html`<li><a href="#${id}">${name}</a></li>
`,
    )}</ul></nav>
<div class="prose">${raw(method?.render({ localHref }) ?? '')}
<p><a href="${pageHref('/rules', link, units)}">The rules that decide, in plain words</a></p>
<h2 id="sources">Sources</h2>
<p>${count(sources)}</p>
${each(TOPICS, ([topic, name]) => topicSources(topic, name, sources))}
${safety ? html`<h2 id="cautions">Cautions</h2>${raw(safety.render({ idPrefix: 'cautions-', shift: 1, localHref }))}` : NOTHING}</div>`,
  })
}

function count(sources: readonly SourceRecord[]): string {
  const of = (kind: SourceRecord['kind']) => sources.filter((one) => one.kind === kind).length
  return `${sources.length} records: ${of('published')} published, ${of('memory')} from memory, ${of('practice')} common practice. Each says what it is used for and how it was read.`
}

function topicSources(
  topic: SourceRecord['topic'],
  name: string,
  sources: readonly SourceRecord[],
): Html {
  const those = sources.filter((one) => one.topic === topic)
  if (those.length === 0) return NOTHING
  return html`<details class="prints" id="sources-${topic}"><summary>${name}: ${those.length === 1 ? 'one source' : `${those.length} sources`}</summary>${sourceList(those)}</details>
`
}
