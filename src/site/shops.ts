import { type Context, Hono } from 'hono'
import { printMoney } from '../../shared/print.ts'
import { assessOnce } from '../api/assess-once.ts'
import { clientOf } from '../api/client.ts'
import type { AppDeps } from '../api/deps.ts'
import { originOf } from '../api/origin-of.ts'
import { asPlain } from '../forum/as-plain.ts'
import { mailWith } from '../forum/mail.ts'
import { saidWords } from '../forum/said-words.ts'
import { shopPost } from '../forum/shop-post.ts'
import { askShopPage } from '../pages/ask-shop.ts'
import { demoShopPage } from '../pages/demo-shop.ts'
import { pageHref } from '../pages/page-href.ts'
import { type ShopCard, shopsPage } from '../pages/shops.ts'
import type { WorkStep } from '../pages/work-order.ts'
import type { Rulebook } from '../rulebook/load.ts'
import { sheetText } from '../shop-sheet/sheet-text.ts'
import type { Shop } from '../shops/schema.ts'
import { EMPTY_TALK } from '../talk/state.ts'
import { workSteps } from './call.ts'
import { demoPlaces, demoPolicy } from './demo-shop.ts'
import { contentPolicy } from './headers.ts'
import { fullLink, measuredViewOf } from './measured-view.ts'
import { viewOf } from './request-view.ts'
import { previewOf } from './share.ts'
import { sheetOf } from './sheet.ts'

/** `/shops`, how to embed, with a live example; in a shop's frame also the enquiry to that shop. */
export function shopRoutes(deps: AppDeps): Hono {
  const site = new Hono()
  site.get('/shops', (c) => explained(deps, c))
  site.get('/shops/demo', (c) => {
    const places = demoPlaces(deps, c)
    const shop = deps.shops.find((one) => one.demo)
    if (!places || !shop) return c.notFound()
    c.header('content-security-policy', demoPolicy(places))
    return c.html(demoShopPage({ guide: places.guide, shop: shop.id, name: shop.name }))
  })
  const { shop } = deps
  if (shop) site.get('/ask-shop', (c) => enquiry(deps, shop, c))
  return site
}

function explained(deps: AppDeps, c: Context) {
  const request = viewOf(deps.rulebook, c)
  const { units, link } = request
  const places = demoPlaces(deps, c)
  const isThere = places !== undefined && deps.shops.some(({ demo }) => demo)
  if (places && isThere) {
    const ancestors = deps.shop?.origins ?? []
    c.header('content-security-policy', contentPolicy({ ancestors, frames: [places.demo] }))
  }
  const [first] = deps.shops
  const code = `<script src="${originOf(deps, c)}/embed.js" async></script>\n<mainstay-guide shop="${first?.id ?? 'your-shop'}"></mainstay-guide>`
  return c.html(
    shopsPage({
      units,
      link,
      words: deps.content.document('shops.md')?.render() ?? '',
      code,
      shops: deps.shops.map((shop) => shopCard(shop, deps)),
      demo: places && isThere ? `${places.demo}/shops/demo` : undefined,
      preview: previewOf(deps, c, { ...request, answers: {}, state: EMPTY_TALK }, '/shops'),
    }),
  )
}

function shopCard(shop: Shop, { rulebook }: AppDeps): ShopCard {
  const { id, name, demo, currency, contact, prices } = shop
  return {
    id,
    name,
    demo,
    currency,
    place: contact.place ?? '',
    does: doesWords(shop),
    prices: Object.entries(prices).map(([item, { low, high }]) => ({
      label: rulebook.cost.items.find((one) => one.id === item)?.label ?? item,
      text: `${printMoney(low, currency).split('\u00a0')[0]} to ${printMoney(high, currency)}`,
    })),
  }
}

function doesWords({ does }: Shop): string {
  const words = [
    ...(does.bore ? ['line bores'] : []),
    ...(does.hone ? ['line hones'] : []),
    ...(does.drill ? ['drills and taps'] : []),
  ]
  return words.join(', ') || 'sends machine work out'
}

/** Work of the price list that a shop does not do itself. */
function elsewhere({ does }: Shop): string[] {
  return [
    ...(does.bore ? [] : ['line-bore', 'ship-block']),
    ...(does.hone ? [] : ['line-hone', 'line-hone-if-needed']),
    ...(does.drill ? [] : ['drill-and-tap']),
  ]
}

/** The steps at home that come before the first one at the shop, less those that ask it. */
function beforeTheShop({ followOn }: Rulebook, steps: readonly WorkStep[]): string[] {
  const first = steps.findIndex(({ at }) => at !== 'home')
  return steps
    .slice(0, Math.max(first, 0))
    .filter(({ id }) => !followOn[id]?.asksShop)
    .map(({ title }) => title)
}

async function enquiry(deps: AppDeps, shop: Shop, c: Context): Promise<Response> {
  const { rulebook } = deps
  const request = measuredViewOf(deps, c)
  const { answers, units } = request
  const link = fullLink(request, request.measured)
  const assessment = await assessOnce(rulebook, answers, { system: units }, clientOf(c))
  const sheetHref = `${originOf(deps, c)}${pageHref('/sheet', link, units)}`
  const said = saidWords(answers)
  const post = shopPost({
    assessment,
    said,
    sheetHref,
    before: beforeTheShop(rulebook, workSteps(rulebook, assessment)),
    elsewhere: elsewhere(shop),
  })
  const made = await sheetOf(deps, request, clientOf(c))
  const text = withSheet(asPlain(post), 'sheet' in made ? sheetText(made.sheet, TOLD) : '')
  const subject = `Main caps: ${assessment.call.title}`
  const { name, contact, does } = shop
  const mail = mailWith(contact.email, subject, text, CUT)
  return c.html(askShopPage({ units, link, name, contact, does, text, mail }))
}

/** Sections of the sheet that the enquiry tells itself, or that are written on by hand. */
const TOLD = ['order', 'parts', 'sign-off', 'questions']
const CUT = 'Cut here for the mail. All of it is on the sheet:'

/** The sheet's text goes in before the link to it, which ends the enquiry. */
function withSheet(enquiry: string, sheet: string): string {
  if (sheet === '') return enquiry
  const lines = enquiry.trimEnd().split('\n')
  return `${lines.toSpliced(-1, 0, sheet, '').join('\n')}\n`
}
