import { describe, expect, it } from 'vitest'
import { FACT_KEYS } from '../../shared/fact-keys.ts'
import { ROUTE_IDS } from '../../shared/route-ids.ts'
import { topicGroups } from '../../src/pages/learn.ts'
import { LEARN_DRAWING_NAMES } from '../../src/pages/learn-drawings.ts'
import { slugOf } from '../../src/pages/markdown.ts'
import { readSources } from '../../src/pages/source-list.ts'
import { ruleTexts } from '../support/rulebook.ts'
import { content, contentPaths, readContent } from './read-content.ts'

const inFolder = (folder: string) =>
  contentPaths
    .filter((path) => path.startsWith(`${folder}/`))
    .map((path) => path.slice(folder.length + 1, -3))

const named = (path: string, pattern: RegExp) =>
  [...(readContent(path) ?? '').matchAll(pattern)].map((match) => match[1] as string)

describe('content', () => {
  it('says how to find every fact, and no other', () => {
    expect(inFolder('questions')).toEqual([...FACT_KEYS].sort())
  })

  it('names only explanations that exist beside a fact', () => {
    const named = FACT_KEYS.flatMap(
      (key) => content.document(`questions/${key}.md`)?.front.learn ?? [],
    )
    expect(named.length).toBeGreaterThan(30)
    expect(named.filter((slug) => !inFolder('learn').includes(slug))).toEqual([])
  })

  it('has assembly notes for every route, and no other', () => {
    expect(inFolder('assembly')).toEqual([...ROUTE_IDS].sort())
  })

  it.each(ROUTE_IDS)(
    'tells for %s the order, the torque, the checks and the first strip-down',
    (id) => {
      const text = readContent(`assembly/${id}.md`) ?? ''
      for (const needed of [
        'Turning torque|Turn the crank',
        'arrow',
        'thrust cap',
        '## End float',
        '## At the first strip-down',
        'torque',
        'brown dust|fretting',
      ]) {
        expect(text, needed).toMatch(new RegExp(needed, 'i'))
      }
    },
  )

  it('tells to measure the bores again after studs', () => {
    expect(readContent('assembly/keep-caps-add-studs.md')).toMatch(/Measure every housing bore/)
  })

  it('lists every explanation in the index once, and each has its front matter', () => {
    const topics = topicGroups(content).flatMap((group) => group.topics)
    expect(topics.map(({ slug }) => slug).sort()).toEqual(inFolder('learn'))
    for (const { slug, title, summary, terms, drawing } of topics) {
      expect(title, slug).not.toBe(slug)
      expect(summary.length, slug).toBeGreaterThan(20)
      expect(terms.length, slug).toBeGreaterThan(1)
      expect(LEARN_DRAWING_NAMES, slug).toContain(drawing)
    }
  })

  it('uses every drawing, and names none that does not exist', () => {
    const used = contentPaths.flatMap((path) => named(path, /^!\[drawing: (.+)\]$/gm))
    expect([...new Set(used)].sort()).toEqual([...LEARN_DRAWING_NAMES].sort())
  })

  it('names only sources that have a record', () => {
    const known = readSources(ruleTexts()).map(({ id }) => id)
    const used = contentPaths.flatMap((path) =>
      named(path, /^sources: (.+)$/gm).flatMap((line) => line.split(', ')),
    )
    expect(used.length).toBeGreaterThan(20)
    expect(used.filter((id) => !known.includes(id))).toEqual([])
  })

  it.each(contentPaths)('%s links only to pages and places that exist', (path) => {
    const broken = named(path, /\]\(([^)]+)\)/g).filter((href) => !isPage(href))
    expect(broken).toEqual([])
  })

  it.each(contentPaths)('%s gives US figures with their metric twin', (path) => {
    const blocks = (readContent(path) ?? '').split(/\n\n|\n(?=- |\d\. |\| )/)
    const lone = blocks.filter(
      (block) =>
        (/\d lb ft/.test(block) && !/N m/.test(block)) ||
        (/\d psi/.test(block) && !/\bbar\b|kPa|MPa|GPa/.test(block)) ||
        (/\d lbf/.test(block) && !/kN/.test(block)) ||
        (/0\.\d+ in\b/.test(block) &&
          !/mm|micrometre/.test(block) &&
          !/^\| |^\d\. Caliper/.test(block)),
    )
    expect(lone).toEqual([])
  })

  it.each(contentPaths)('%s holds no HTML, no image and no address of another site', (path) => {
    expect(readContent(path)).not.toMatch(/<\/?[a-z]|!\[(?!drawing: )|https?:/i)
  })
})

function isPage(href: string): boolean {
  const [page = '', place] = href.split('#')
  if (['/rules', '/method', '/learn', '/learn/glossary', '/learn/measuring'].includes(page))
    return true
  const path = /^\/learn\/([a-z-]+)$/.exec(page)?.[1]
  const found = path === undefined ? undefined : content.document(`learn/${path}.md`)
  if (!found) return false
  return place === undefined || found.text.split('\n').some((line) => slugOf(line) === place)
}

describe('figures in the explanations', () => {
  const text = (slug: string) => readContent(`learn/${slug}.md`) ?? ''
  const tens = (value: number, to: number) =>
    String(Math.round(value / to) * to).replace(/\B(?=(\d{3})+$)/g, ',')

  it('gas force: area of a 4 in bore times 1,000 psi, half on each main', () => {
    const force = (Math.PI / 4) * 4 ** 2 * 1000
    expect(text('main-cap')).toContain(
      `${tens(force, 100)} lbf (${Math.round(force * 4.4482216e-3)} kN)`,
    )
    expect(text('main-cap')).toContain(
      `${tens(force / 2, 100)} lbf (${Math.round(force * 2.2241108e-3)} kN)`,
    )
  })

  it('clamp: torque over nut factor and diameter, Shigley eq. 8–27', () => {
    const clamp = (torque: number) => (torque * 12) / (0.18 * 0.5)
    for (const torque of [85, 110]) {
      const pounds = clamp(torque)
      expect(text('studs-and-bolts')).toContain(
        `${tens(pounds, 100)} lbf (${Math.round(pounds * 4.4482216e-3)} kN)`,
      )
    }
    expect(text('studs-and-bolts')).toContain(
      `${Math.round((clamp(110) / clamp(85) - 1) * 100)}% more`,
    )
  })

  it('gear backlash: about 2 tan 20° of the shift', () => {
    expect(text('axis-shift')).toContain(`${(2 * Math.tan(Math.PI / 9)).toFixed(2)} of the shift`)
  })

  it('clearance: the trade rule on a 2.500 in journal', () => {
    expect(text('clearance')).toContain(
      `${(2.5 * 0.00075).toFixed(4)} to ${(2.5 * 0.001).toFixed(4)} in`,
    )
  })

  it('aluminium housing: 65 mm, 80 °C, 356 against 4140 of Callister’s Table B.6', () => {
    const growth = (21.5e-6 - 12.3e-6) * 65 * 80
    expect(text('clearance')).toContain(
      `${growth.toFixed(3)} mm (${(growth / 25.4).toFixed(4)} in)`,
    )
  })

  it('insurance: cost over loss', () => {
    expect(text('how-the-guide-decides')).toContain(`900 / 6,000 = ${(900 / 6000) * 100}%`)
  })
})
