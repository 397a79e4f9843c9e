import { each, type Html, html, NOTHING, raw } from './html.ts'
import { type Preview, page } from './layout.ts'
import type { UnitSystem } from './page-href.ts'
import { copySaid, textToCopy } from './text-to-copy.ts'

export interface ShopsView {
  readonly units: UnitSystem
  readonly link: string
  /** The page's words, safe HTML. */
  readonly words: string
  /** The lines that a shop puts on its page. */
  readonly code: string
  readonly shops: readonly ShopCard[]
  /** Address of the invented shop on another origin; undefined when this server has only one name. */
  readonly demo: string | undefined
  readonly preview?: Preview | undefined
}

export interface ShopCard {
  readonly id: string
  readonly name: string
  readonly demo: boolean
  readonly currency: string
  readonly place: string
  /** What it does in its own house, in words. */
  readonly does: string
  /** Prices of its own, by name: "900 to 1,100 USD". */
  readonly prices: readonly { readonly label: string; readonly text: string }[]
}

/** How a shop shows the guide on its own site, with a shop that does. */
export function shopsPage(view: ShopsView): Html {
  const { units, link, words, code, shops, demo, preview } = view
  return page({
    title: 'For shops',
    description: 'The guide on a machine shop’s own page: one line of HTML, the shop’s own prices.',
    path: '/shops',
    units,
    link,
    preview,
    wide: true,
    scripts: ['copy-text.js'],
    body: html`<div class="page-head"><h1>For shops</h1>
<p class="lede">Show the guide on your own page, with your own prices. It stays the guide: same questions, same reasons, same cautions.</p></div>
${copySaid()}
${textToCopy({ id: 'embed-code', label: 'Two lines for your page', text: code })}
<section aria-labelledby="live"><h2 id="live">A shop that does</h2>${live(demo)}</section>
<div class="prose">${raw(words)}</div>
<section aria-labelledby="here"><h2 id="here">Shops that this guide knows</h2>
${shops.length === 0 ? html`<p>None yet.</p>` : html`<div class="card-grid">${each(shops, shopCard)}</div>`}</section>`,
  })
}

function live(demo: string | undefined): Html {
  if (!demo) {
    return html`<p>The live example needs this server under a second name, because a frame on one’s own site would show nothing of what is allowed and what is not. Whoever runs the guide can set <code>DEMO_ORIGIN</code>.</p>`
  }
  return html`<p>The page in this window comes from another address, <code>${new URL(demo).origin}</code>. It belongs to an invented shop, its content policy is strict, and it holds no more than the two lines above and a list of what the guide tells it.</p>
<iframe class="demo-shop" src="${demo}" title="The page of an invented shop" loading="lazy"></iframe>
<p><a href="${demo}" target="_blank" rel="noopener">Open it in a window of its own</a></p>`
}

function shopCard({ id, name, demo, currency, place, does, prices }: ShopCard): Html {
  return html`<article class="card" id="${id}"><div class="card-head"><h3>${name}</h3><p class="tag">${demo ? 'invented, to show how it works' : place}</p></div>
<dl class="pairs"><dt>Does</dt><dd>${does}</dd><dt>Counts in</dt><dd>${currency}</dd>${each(prices, ({ label, text }) => html`<dt>${label}</dt><dd class="figure-text">${text}</dd>`)}</dl>
${demo ? html`<p><a href="/embed?shop=${id}">The guide as this shop shows it</a></p>` : NOTHING}</article>`
}
