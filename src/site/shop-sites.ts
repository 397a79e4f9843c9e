import { Hono } from 'hono'
import type { AppDeps } from '../api/deps.ts'
import { pricedRulebook } from '../shops/priced-rulebook.ts'
import type { Shop } from '../shops/schema.ts'

/**
 * The guide, and beside it the same guide once for each shop, chosen by the parameter
 * `shop`: with the shop's prices in the rulebook, and in frames of the shop's own sites.
 * Every page and the API are the same code; a shop that is not known gets the guide.
 *
 * @param site - makes the whole app for one set of dependencies
 */
export function withShops(deps: AppDeps, site: (deps: AppDeps) => Hono): Hono {
  const guide = site(deps)
  const made = new Map<string, Hono>()
  const ofShop = (id: string): Hono | undefined => {
    const known = made.get(id)
    const shop = known ? undefined : deps.shops.find((one) => one.id === id)
    if (!shop) return known
    const rulebook = pricedRulebook(deps.rulebook, shop)
    const own = site({ ...deps, rulebook, shop: shownAt(shop, deps) })
    made.set(id, own)
    return own
  }
  const app = new Hono()
  app.all('*', (c) => (ofShop(c.req.query('shop') ?? '') ?? guide).fetch(c.req.raw, c.env))
  return app
}

/** The demonstration's own two addresses are the operator's to set, not the profile's. */
function shownAt(shop: Shop, { origin, demoOrigin }: AppDeps): Shop {
  if (!shop.demo || !origin || !demoOrigin) return shop
  return { ...shop, origins: [...shop.origins, origin, demoOrigin] }
}
