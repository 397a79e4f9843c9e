import { assetHref } from './asset-href.ts'
import { each, type Html, html, NOTHING } from './html.ts'
import { pageHref, shopPart, type UnitSystem } from './page-href.ts'

export interface PageView {
  readonly title: string
  readonly description: string
  /** Path of this page, for the units switch and to mark where a person is. */
  readonly path: string
  readonly units: UnitSystem
  /** The case as a query string; kept by every link of the header. */
  readonly link: string
  readonly body: Html
  readonly noindex?: boolean
  /** What a forum shows of a link to this page. */
  readonly preview?: Preview | undefined
  /** Give the page the whole width; without it prose keeps a readable measure. */
  readonly wide?: boolean
  /** Logical names of scripts, such as `conversation.js`. */
  readonly scripts?: readonly string[]
}

/** Whole addresses, because whoever shows a preview reads it elsewhere. */
export interface Preview {
  /** The page's own canonical address. */
  readonly url: string
  /** A PNG of 1200 by 630. */
  readonly image: string
  /** What the picture says. */
  readonly alt: string
}

const SECTIONS = [
  ['/', 'Guide'],
  ['/learn', 'Learn'],
  ['/worksheets', 'Worksheets'],
  ['/method', 'Method'],
] as const

const FONTS = [
  'source-serif-4-latin-400-normal.woff2',
  'source-serif-4-latin-400-italic.woff2',
  'source-serif-4-latin-600-normal.woff2',
  'ibm-plex-mono-latin-400-normal.woff2',
] as const

/** A whole page: head, skip link, header, `<main>` with the body, footer with the cautions. */
export function page(view: PageView): Html {
  return html`<!doctype html>
<html lang="en">
${head(view)}
<body>
<a class="skip" href="#main">Skip to the content</a>
${header(view)}
<main id="main" class="${view.wide ? 'wide' : 'narrow'}" tabindex="-1">
${view.body}
</main>
${footer(view)}
</body>
</html>
`
}

function head(view: PageView): Html {
  const { title, description, noindex, scripts = [] } = view
  return html`<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${title === 'Mainstay' ? title : `${title} · Mainstay`}</title>
<meta name="description" content="${description}">
<meta name="color-scheme" content="light dark">
<meta name="theme-color" content="#1b3577">
${noindex ? html`<meta name="robots" content="noindex">` : NOTHING}
${view.preview ? previewTags(view, view.preview) : NOTHING}
${each(FONTS, fontPreload)}
<link rel="stylesheet" href="${assetHref('site.css')}">
<link rel="icon" type="image/svg+xml" href="${assetHref('mark.svg')}">
${each(['keep-offline.js', ...scripts], (name) => html`<script src="${assetHref(name)}" defer></script>`)}
</head>`
}

/**
 * @see The Open Graph protocol, basic and image metadata; a large card also where only the
 * twitter:card name is read
 */
function previewTags(
  { title, description, noindex }: PageView,
  { url, image, alt }: Preview,
): Html {
  return html`<meta property="og:type" content="website">
<meta property="og:site_name" content="Mainstay">
<meta property="og:title" content="${title}">
<meta property="og:description" content="${description}">
<meta property="og:url" content="${url}">
<meta property="og:image" content="${image}">
<meta property="og:image:type" content="image/png">
<meta property="og:image:width" content="1200">
<meta property="og:image:height" content="630">
<meta property="og:image:alt" content="${alt}">
<meta name="twitter:card" content="summary_large_image">
${noindex ? NOTHING : html`<link rel="canonical" href="${url}">`}`
}

function fontPreload(name: string): Html {
  return html`<link rel="preload" href="${assetHref(name)}" as="font" type="font/woff2" crossorigin>
`
}

function header({ path, units, link }: PageView): Html {
  return html`<header class="plate">
<div class="plate-inner">
<a class="wordmark" href="${pageHref('/', link, units)}">${mark()}<span>Mainstay</span></a>
<nav aria-label="Sections"><ul>
${each(SECTIONS, ([section, name]) => html`<li><a href="${pageHref(section, link, units)}"${current(path, section)}>${name}</a></li>`)}
</ul></nav>
<nav class="units" aria-label="Units"><ul>
${unitLink('us', 'US', path, units, link)}
${unitLink('metric', 'Metric', path, units, link)}
</ul></nav>
</div>
</header>`
}

function current(path: string, section: string): Html {
  if (path === section) return html` aria-current="page"`
  const inside = section !== '/' && path.startsWith(`${section}/`)
  return inside ? html` aria-current="true"` : NOTHING
}

function unitLink(
  system: UnitSystem,
  name: string,
  path: string,
  units: UnitSystem,
  link: string,
): Html {
  const here = system === units ? html` aria-current="true"` : NOTHING
  return html`<li><a href="${pageHref(path, link, system)}"${here}><span class="unseen">Show figures in </span>${name}<span class="unseen"> units</span></a></li>`
}

/** A main cap on its centre lines, as the mark of the house. */
function mark(): Html {
  return html`<svg viewBox="0 0 32 32" width="32" height="32" aria-hidden="true" focusable="false"><path class="mark-cap" d="M3 9.5h6.5a6.5 6.5 0 0 0 13 0H29V16l-3 3v7H6v-7l-3-3z"/><path class="mark-line" d="M16 2v28M2 9.5h28"/></svg>`
}

function footer({ units, link }: PageView): Html {
  return html`<footer class="foot">
<div class="foot-inner">
<p><strong>Before the guide come</strong> the engine’s service manual, the fastener supplier’s torque, local codes and the judgement of a qualified machinist who has the block in hand.</p>
<p>Lift a block with rated gear and keep from under it. High-strength fasteners break without warning when over-tightened. Keep clear of an engine that turns. Detonation breaks caps that would hold otherwise.</p>
<p class="foot-links">An estimate by handbook methods, not a finite-element study: <a href="${pageHref('/method', link, units)}">what it leaves out</a> · <a href="${pageHref('/rules', link, units)}">the rules it decides by</a>. <a href="${pageHref('/presets', shopPart(link), units)}">Example builds</a> · <a href="${pageHref('/shops', shopPart(link), units)}">For shops</a> · <a href="${pageHref('/api', shopPart(link), units)}">API</a></p>
</div>
</footer>`
}
