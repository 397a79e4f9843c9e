import type { Assessment } from '../../shared/assessment.ts'
import { printMoney } from '../../shared/print.ts'
import { visible } from '../../shared/visible.ts'
import { keyFigures } from './call-head.ts'
import { each, type Html, html, NOTHING } from './html.ts'
import { type Preview, page } from './layout.ts'
import { pageHref, shopPart, type UnitSystem } from './page-href.ts'

/** An example build as a list shows it. */
export interface PresetEntry {
  readonly id: string
  readonly title: string
  readonly summary: string
}

interface Common {
  readonly units: UnitSystem
  /** The person's own case, kept by the header. */
  readonly link: string
  readonly preview?: Preview | undefined
}

export interface PresetsView extends Common {
  /** What was searched for; '' for all. */
  readonly query: string
  readonly found: readonly PresetEntry[]
}

/** All example builds, or those that a search finds. */
export function presetsPage({ units, link, query, found, preview }: PresetsView): Html {
  const shop = shopPart(link)
  return page({
    title: 'Example builds',
    description:
      'Invented engines, answered from end to end: open one, change anything in it, link it.',
    path: '/presets',
    units,
    link,
    preview,
    noindex: query !== '',
    body: html`<div class="page-head"><h1>Example builds</h1>
<p class="lede">Invented engines, answered from end to end. Open one and change anything in it.</p></div>
<form method="get" action="/presets" role="search" class="field">
${shop === '' ? NOTHING : html`<input type="hidden" name="shop" value="${shop.slice(5)}">`}
${units === 'metric' ? html`<input type="hidden" name="units" value="metric">` : NOTHING}
<label for="q">Search the example builds</label>
<div class="control"><input class="short" id="q" name="q" type="search" maxlength="80" value="${query}"><button class="button" type="submit">Search</button></div>
</form>
<p class="hint" role="status">${countWords(found.length, query)}</p>
<ul class="preset-list">${each(
      found,
      ({
        id,
        title,
        summary,
      }) => html`<li class="preset"><h2><a href="${pageHref(`/preset/${id}`, shop, units)}">${title}</a></h2><p>${summary}</p></li>
`,
    )}</ul>`,
  })
}

function countWords(count: number, asked: string): string {
  const query = visible(asked)
  if (query === '') return `${count} builds`
  if (count === 0) return `None has “${query}” in it.`
  return `${count === 1 ? '1 build has' : `${count} builds have`} “${query}” in it.`
}

export interface PresetView extends Common {
  readonly preset: PresetEntry
  /** The preset's own answers as a query string, in the frame that the page stands in. */
  readonly presetLink: string
  readonly answers: readonly { readonly label: string; readonly text: string }[]
  readonly assessment: Assessment
}

/** One example build: what it is, the call it leads to, and the way into it. */
export function presetPage(view: PresetView): Html {
  const { units, preset, presetLink, answers, assessment, preview } = view
  const { call, cost } = assessment
  return page({
    title: preset.title,
    description: `${preset.summary} ${call.sentence}`,
    path: `/preset/${preset.id}`,
    units,
    link: shopPart(presetLink),
    wide: true,
    preview,
    body: html`<header class="page-head"><span class="kicker">An example build</span><h1>${preset.title}</h1>
<p class="lede">${preset.summary}</p>
<p class="actions"><a class="button primary" href="${pageHref('/', presetLink, units)}">Open it in the guide</a> <a class="button" href="${pageHref('/call', presetLink, units)}">The whole call</a> <a class="button" href="${pageHref('/forum', presetLink, units)}">Text for a forum</a></p></header>
<section aria-labelledby="call"><h2 id="call">The call</h2><p class="lede">${call.sentence}</p>
${call.route === null ? NOTHING : keyFigures(assessment, { link: presetLink, units })}
${call.route === null ? NOTHING : html`<p>At stake: ${printMoney(cost.stake, cost.currency)}${cost.stakeState === 'said' ? '' : ', assumed'}.</p>`}</section>
<section aria-labelledby="build"><h2 id="build">The build</h2>
<dl class="pairs">${each(
      answers,
      ({ label, text }) => html`<dt>${label}</dt><dd class="figure-text">${text}</dd>
`,
    )}</dl></section>
<p><a href="${pageHref('/presets', shopPart(presetLink), units)}">All example builds</a></p>`,
  })
}
