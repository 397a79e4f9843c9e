import { describe, expect, it } from 'vitest'
import { FACT_KEYS } from '../../shared/fact-keys.ts'
import { ROUTE_IDS } from '../../shared/route-ids.ts'
import { glossary } from '../../src/pages/glossary.ts'
import { learnIndexPage, learnPage, topicGroups } from '../../src/pages/learn.ts'
import { LEARN_DRAWING_NAMES, learnDrawing } from '../../src/pages/learn-drawings.ts'
import { createContent } from '../../src/pages/markdown.ts'
import { readSources } from '../../src/pages/source-list.ts'
import { content, readContent } from '../content/read-content.ts'
import { ruleTexts } from '../support/rulebook.ts'

const view = {
  content,
  sources: readSources(ruleTexts()),
  units: 'metric' as const,
  link: 'bore=4.03in',
}
const slugs = topicGroups(content).flatMap(({ topics }) => topics.map(({ slug }) => slug))
const every = [...slugs, 'glossary', 'measuring', 'assembly', 'safety']
const pageOf = (slug: string) => String(learnPage({ ...view, slug }))
const ids = (page: string) =>
  [...page.matchAll(/ id="([^"]+)"/g)].map((match) => match[1] as string)

describe('learn pages', () => {
  it.each(every)('%s has one h1, ids that are its own, and nothing inline', (slug) => {
    const page = pageOf(slug)
    expect(page.match(/<h1/g)).toHaveLength(1)
    expect(ids(page)).toEqual([...new Set(ids(page))])
    expect(page).not.toMatch(/ style="|<style|<script(?! src="\/assets\/)| on[a-z]+="/)
  })

  it.each(every)('%s steps down its headings one at a time', (slug) => {
    const depths = [...pageOf(slug).matchAll(/<h([1-6])/g)].map((match) => Number(match[1]))
    const jumps = depths.filter((depth, i) => i > 0 && depth > (depths[i - 1] as number) + 1)
    expect(jumps).toEqual([])
  })

  it.each(every)(
    '%s keeps the case and the units in every link to another page of ours',
    (slug) => {
      const hrefs = [...pageOf(slug).matchAll(/<a [^>]*href="(\/[^"]*)"/g)].map(
        (match) => match[1] as string,
      )
      // Example builds, the shops' page and the API's speak of no case.
      const own = hrefs.filter((href) => !/^\/(assets\/|presets|shops|api)/.test(href))
      expect(own.length).toBeGreaterThan(3)
      expect(own.filter((href) => !href.includes('bore=4.03in'))).toEqual([])
    },
  )

  it('knows no page for a slug that is not there', () => {
    for (const slug of ['nothing', '../method', '', 'learn']) {
      expect(learnPage({ ...view, slug })).toBeUndefined()
    }
  })

  it('lists every explanation in the index with its picture', () => {
    const page = String(learnIndexPage(view))
    for (const slug of slugs)
      expect(page).toContain(`href="/learn/${slug}?bore=4.03in&amp;units=metric"`)
    expect(page.match(/class="thumbnail"/g)).toHaveLength(slugs.length)
    expect(ids(page)).toEqual([...new Set(ids(page))])
  })

  it('says of every fact how to find it, at a place named after its key', () => {
    expect(ids(pageOf('measuring'))).toEqual(expect.arrayContaining([...FACT_KEYS]))
  })

  it('has assembly notes for every route, at a place named after its id', () => {
    expect(ids(pageOf('assembly'))).toEqual(expect.arrayContaining([...ROUTE_IDS]))
  })

  it('links each explanation to its neighbours in reading order', () => {
    const page = pageOf(slugs[1] as string)
    expect(page).toContain(`rel="prev" href="/learn/${slugs[0]}?`)
    expect(page).toContain(`rel="next" href="/learn/${slugs[2]}?`)
  })

  it('shows nothing rather than fails when content is missing', () => {
    const empty = { ...view, content: createContent(() => undefined) }
    expect(String(learnIndexPage(empty))).toContain('<h1>Learn</h1>')
    expect(learnPage({ ...empty, slug: 'glossary' })).toBeUndefined()
  })
})

describe('drawings', () => {
  it.each(LEARN_DRAWING_NAMES)(
    '%s has words for whoever cannot see it, and whole coordinates',
    (name) => {
      const markup = learnDrawing(name) ?? ''
      expect(markup).toMatch(/role="img" aria-labelledby="[^"]+"/)
      expect(/<desc[^>]*>([^<]*)/.exec(markup)?.[1]?.length).toBeGreaterThan(80)
      expect(markup).toMatch(/<figcaption>.{40,}<\/figcaption>/s)
      expect(markup).not.toMatch(/NaN|undefined|Infinity|\[object/)
    },
  )

  it.each(LEARN_DRAWING_NAMES)('%s keeps its words inside the picture', (name) => {
    const markup = learnDrawing(name) ?? ''
    const wide = [
      ...markup.matchAll(/<text x="([\d.-]+)" y="[\d.-]+" class="([^"]*)">([^<]*)/g),
    ].filter(([, x, classes = '', text = '']) => {
      // Widest advance: 0.6 of 12 px for the mono face, 0.56 of 13.5 px for the serif one.
      const width = text.length * (/label/.test(classes) ? 7 : /small/.test(classes) ? 6.7 : 7.3)
      const left = /middle/.test(classes)
        ? Number(x) - width / 2
        : /end/.test(classes)
          ? Number(x) - width
          : Number(x)
      return left < -4 || left + width > 364
    })
    expect(wide.map((match) => match[3])).toEqual([])
  })

  it('knows no drawing of another name', () => expect(learnDrawing('constructor')).toBeUndefined())
})

describe('glossary', () => {
  it('reads term, other names and explanation', () => {
    const [first, second] = glossary(
      '---\nx\n---\n## Cap walk\nAlso: walked cap, walking cap\n\nIt *moves*.\n\n## Web\n\nA wall.',
    )
    expect(first).toEqual({
      slug: 'cap-walk',
      term: 'Cap walk',
      also: ['walked cap', 'walking cap'],
      html: '<p>It <em>moves</em>.</p>\n',
      text: 'It *moves*.',
    })
    expect(second).toMatchObject({ slug: 'web', also: [], html: '<p>A wall.</p>\n' })
  })

  it('gives no name to two terms', () => {
    const entries = glossary(readContent('glossary.md') ?? '')
    const names = entries.flatMap(({ term, also }) =>
      [term, ...also].map((name) => name.toLowerCase()),
    )
    const twice = names.filter((name, i) => names.indexOf(name) !== i)
    expect(entries.length).toBeGreaterThan(60)
    expect(twice).toEqual([])
  })
})
