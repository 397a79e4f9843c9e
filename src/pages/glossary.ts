import { each, type Html, html, NOTHING, raw } from './html.ts'
import { page } from './layout.ts'
import { type Content, type RenderOptions, renderMarkdown, slugOf } from './markdown.ts'
import { pageHref, type UnitSystem } from './page-href.ts'

/** Before an entry's slug in the page's places: `/learn/glossary#term-cap-walk`. */
const GLOSSARY_PLACE = 'term-'

/** One word of the trade. */
export interface GlossaryEntry {
  readonly slug: string
  readonly term: string
  /** Other names for it, as people say them. */
  readonly also: readonly string[]
  /** The explanation in Markdown. */
  readonly text: string
  /** The same as safe HTML. */
  readonly html: string
}

/**
 * Entries of a glossary text: a `## Term` heading each, an optional line `Also: a, b`,
 * then the explanation. In the order of the text.
 */
export function glossary(text: string, options: RenderOptions = {}): GlossaryEntry[] {
  return text
    .replaceAll('\r\n', '\n')
    .split(/^## /m)
    .slice(1)
    .map((part) => {
      const [heading = '', ...rest] = part.split('\n')
      const body = rest.join('\n').trim()
      const also = /^Also: (.*)(?:\n|$)/.exec(body)
      const term = heading.trim()
      const meaning = (also ? body.slice(also[0].length) : body).trim()
      return {
        slug: slugOf(term),
        term,
        also: also ? (also[1] as string).split(',').map((name) => name.trim()) : [],
        text: meaning,
        html: renderMarkdown(meaning, options),
      }
    })
}

/** The entry of a word: its term, another name for it, or its slug, in any case, one or several. */
export function glossaryEntry(content: Content, words: string): GlossaryEntry | undefined {
  const said = words.trim().toLowerCase()
  const entries = glossary(content.document('glossary.md')?.text ?? '')
  const named = (wanted: string) =>
    entries.find(
      ({ slug, term, also }) =>
        slug === wanted || [term, ...also].some((name) => name.toLowerCase() === wanted),
    )
  return named(said) ?? named(said.replace(/s$/, ''))
}

/** The words of the trade, by letter. Undefined when there is no glossary. */
export function glossaryPage(view: {
  content: Content
  units: UnitSystem
  link: string
}): Html | undefined {
  const { content, units, link } = view
  const document = content.document('glossary.md')
  if (!document) return undefined
  const entries = glossary(document.text, { localHref: (href) => pageHref(href, link, units) })
  const letterOf = ({ term }: GlossaryEntry) => term.charAt(0).toUpperCase()
  const letters = [...new Set(entries.map(letterOf))].sort()
  const sorted = letters.map(
    (letter) => [letter, entries.filter((entry) => letterOf(entry) === letter)] as const,
  )
  return page({
    title: document.front.title ?? 'Glossary',
    description: document.front.summary ?? '',
    path: '/learn/glossary',
    units,
    link,
    body: html`<div class="page-head"><p class="kicker"><a href="${pageHref('/learn', link, units)}">Learn</a></p>
<h1>${document.front.title ?? 'Glossary'}</h1><p class="lede">${document.front.summary ?? ''}</p></div>
<nav aria-label="Letters" class="letters"><ul>${each(sorted, ([letter]) => html`<li><a href="#letter-${letter.toLowerCase()}">${letter}</a></li>`)}</ul></nav>
<div class="prose glossary">${each(sorted, ([letter, words]) => letterSection(letter, words))}</div>`,
  })
}

function letterSection(letter: string, entries: readonly GlossaryEntry[]): Html {
  return html`<h2 id="letter-${letter.toLowerCase()}">${letter}</h2>
<dl>${each(
    entries,
    ({
      slug,
      term,
      also,
      html: meaning,
    }) => html`<dt id="${GLOSSARY_PLACE}${slug}">${term}${also.length > 0 ? html` <span class="tag">also ${also.join(', ')}</span>` : NOTHING}</dt>
<dd>${raw(meaning)}</dd>
`,
  )}</dl>`
}
