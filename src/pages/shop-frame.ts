import { assetHref } from './asset-href.ts'
import { type Html, html, NOTHING } from './html.ts'
import { pageHref, type UnitSystem } from './page-href.ts'

/** A shop as the pages in its frame name it. */
export interface ShopName {
  readonly id: string
  readonly name: string
  readonly demo: boolean
}

/** What the frame's script tells the host of a page. */
export interface FrameState {
  /** Path of the page, such as `/embed` or `/call`. */
  readonly page: string
  /** The answers as the canonical query string, the same as from the page and the API. */
  readonly link: string
  readonly answers: number
  readonly units: UnitSystem
  /** The call that the page shows; undefined while none may be shown. */
  readonly call?:
    | { readonly route: string | null; readonly confidence: string; readonly sentence: string }
    | undefined
}

/** Opening tag of a page that stands in a frame: which sites may talk to it. */
export function framedBody({ id }: ShopName, origins: readonly string[]): Html {
  return html`<body class="framed" data-shop="${id}" data-origins="${origins.join(' ')}">`
}

/** The shop's colours and the script that talks to the host. */
export function frameHead({ id }: ShopName): Html {
  return html`<link rel="stylesheet" href="/embed/theme.css?shop=${id}">
<script src="${assetHref('embed-frame.js')}" defer></script>`
}

/** Says who runs the frame, first on the page and on every page of it. */
export function shopBand(
  { id, name, demo }: ShopName,
  { link, units, asks }: { link: string; units: UnitSystem; asks: boolean },
): Html {
  const ask = html`<a class="button" href="${pageHref('/ask-shop', link, units)}">Ask this shop</a>`
  return html`<aside class="shop-band" aria-label="Who runs this frame">
<p><strong>${name}</strong>${demo ? ' (an invented shop)' : ''} shows the guide with its own prices. Routes, reasons and cautions are Mainstay’s: <a href="/shops#${id}" target="_blank" rel="noopener">what a shop can change</a>. Nothing is sent to the shop unless you send it.</p>
${asks ? ask : NOTHING}
</aside>`
}

/** What the host is told, as data that a swap of `<main>` brings along. */
export function frameState({ page, link, answers, units, call }: FrameState): Html {
  const known = call
    ? html` data-route="${call.route ?? ''}" data-confidence="${call.confidence}" data-sentence="${call.sentence}"`
    : NOTHING
  return html`<span id="frame-state" hidden data-page="${page}" data-link="${link}" data-answers="${answers}" data-units="${units}"${known}></span>`
}
