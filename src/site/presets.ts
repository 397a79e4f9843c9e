import { type Context, Hono } from 'hono'
import { type Answers, readAnswers } from '../../shared/answers.ts'
import { FACT_KEYS, fact } from '../../shared/fact-keys.ts'
import { printAnswer } from '../../shared/print.ts'
import { toQuery } from '../../shared/share-link.ts'
import { assessOnce } from '../api/assess-once.ts'
import { clientOf } from '../api/client.ts'
import type { AppDeps } from '../api/deps.ts'
import { originOf } from '../api/origin-of.ts'
import type { Preview } from '../pages/layout.ts'
import { notFoundPage } from '../pages/not-found.ts'
import { pageHref, shopPart } from '../pages/page-href.ts'
import { presetPage, presetsPage } from '../pages/presets.ts'
import type { Preset } from '../rulebook/schema-tables.ts'
import { viewOf } from './request-view.ts'

const LONGEST_QUERY = 80

/** `/presets`, listed and searchable, and `/preset/<id>`, a page for each that search engines may keep. */
export function presetRoutes(deps: AppDeps): Hono {
  const { rulebook } = deps
  const site = new Hono()
  site.get('/presets', (c) => {
    const { units, link } = viewOf(rulebook, c)
    const query = (c.req.query('q') ?? '').trim().slice(0, LONGEST_QUERY)
    const found = rulebook.presets.filter((preset) => isFound(preset, query))
    const preview = previewAt(deps, c, '/presets', '')
    return c.html(presetsPage({ units, link, query, found, preview }))
  })
  site.get('/preset/:id', async (c) => {
    const { units, link } = viewOf(rulebook, c)
    const preset = rulebook.presets.find(({ id }) => id === c.req.param('id'))
    if (!preset) return c.html(notFoundPage({ units, link, path: c.req.path }), 404)
    const { answers } = readAnswers(preset.answers)
    const own = toQuery(answers, rulebook.version)
    return c.html(
      presetPage({
        units,
        link,
        preset,
        presetLink: [own, shopPart(link)].filter((part) => part !== '').join('&'),
        answers: printed(answers),
        assessment: await assessOnce(rulebook, answers, { system: units }, clientOf(c)),
        preview: previewAt(deps, c, `/preset/${preset.id}`, own),
      }),
    )
  })
  return site
}

/** Every word of the search stands somewhere in the preset: its title, its summary or an answer. */
function isFound({ title, summary, answers: raw }: Preset, query: string): boolean {
  const answers = printed(readAnswers(raw).answers)
  const text = [title, summary, ...answers.map(({ label, text: said }) => `${label} ${said}`)]
    .join(' ')
    .toLowerCase()
  return query
    .toLowerCase()
    .split(/\s+/)
    .every((word) => text.includes(word))
}

function printed(answers: Answers): { label: string; text: string }[] {
  return FACT_KEYS.flatMap((key) => {
    const answer = answers[key]
    return answer === undefined ? [] : [{ label: fact(key).label, text: printAnswer(key, answer) }]
  })
}

/** The page's own readable address, with a picture of the case it shows. */
function previewAt(deps: AppDeps, c: Context, path: string, link: string): Preview | undefined {
  if (!deps.drawPng) return undefined
  const origin = originOf(deps, c)
  const alt = 'A section through the main cap, the call in words and the figures it rests on.'
  return { url: `${origin}${path}`, image: `${origin}${pageHref('/card.png', link, 'us')}`, alt }
}
