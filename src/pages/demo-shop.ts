import { assetHref } from './asset-href.ts'
import { type Html, html } from './html.ts'

/** The page of an invented shop: what a host writes, and a list of what it is told. */
export function demoShopPage(view: { guide: string; shop: string; name: string }): Html {
  const { guide, shop, name } = view
  return html`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="robots" content="noindex">
<title>${name}, an invented shop</title>
<link rel="stylesheet" href="${assetHref('site.css')}">
<link rel="icon" type="image/svg+xml" href="${assetHref('mark.svg')}">
<script src="${assetHref('demo-shop.js')}" defer></script>
<script src="${guide}/embed.js" async></script>
</head>
<body class="demo-shop">
<header><p class="name">${name}</p><p>An invented machine shop, to show a frame of the guide.</p></header>
<main>
<h1>Which caps for your block?</h1>
<mainstay-guide shop="${shop}"></mainstay-guide>
<h2>What the guide tells this page</h2>
<ol id="told" aria-live="polite"></ol>
</main>
</body>
</html>
`
}
