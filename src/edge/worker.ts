import type { Hono } from 'hono'
import { jsonLine } from '../../shared/visible.ts'
import { createApp } from '../app.ts'
import { fromOperatorFiles } from '../operator-files.ts'
import { readSettings } from '../settings.ts'
import { clientAddress } from '../site/client-address.ts'

/** Path → text of every file of rules/, content/ and content/shops/; the build puts them in. */
declare const EDGE_FILES: Readonly<
  Record<'rules' | 'content' | 'shops', Readonly<Record<string, string>>>
>

/** What the host may give: settings by the names they have on a server, and the built assets. */
interface EdgeBindings {
  readonly ORIGIN?: string | null
  readonly DEMO_ORIGIN?: string | null
  readonly RATE_PER_MINUTE?: string | null
  readonly TRUSTED_PROXIES?: string | null
  /** Answers `/<hashed name>` with a built asset. */
  readonly ASSETS?: { fetch(address: string): Promise<Response> }
}

const REMEMBERED_ADDRESSES = 10_000
let app: Hono | undefined

/**
 * The same guide on a runtime without files or processes. It draws no PNG and no PDF: those
 * need what is native. Links to them are not shown.
 */
const worker = {
  fetch(request: Request, bindings: EdgeBindings): Response | Promise<Response> {
    app ??= edgeApp(bindings)
    return app.fetch(request, bindings)
  },
}

export { worker as default }

function edgeApp(bindings: EdgeBindings): Hono {
  const settings = readSettings(
    {
      ORIGIN: bindings.ORIGIN ?? '',
      DEMO_ORIGIN: bindings.DEMO_ORIGIN ?? '',
      RATE_PER_MINUTE: bindings.RATE_PER_MINUTE ?? '',
      TRUSTED_PROXIES: bindings.TRUSTED_PROXIES ?? '',
    },
    '',
  )
  const { rules, shops, content } = EDGE_FILES
  return createApp({
    ...fromOperatorFiles({
      rules: new Map(Object.entries(rules)),
      shops: new Map(Object.entries(shops)),
      content: (path) => (Object.hasOwn(content, path) ? content[path] : undefined),
    }),
    asset: (name) => assetOf(bindings, name),
    origin: settings.origin,
    demoOrigin: settings.demoOrigin,
    clock: () => performance.now(),
    addressOf: (c) =>
      clientAddress(c.req.header('x-forwarded-for'), 'edge', settings.trustedProxies),
    // Without a proxy that says who asks, all would share one bucket: the host limits them.
    rate: {
      perMinute: settings.trustedProxies === 0 ? 0 : settings.ratePerMinute,
      addresses: REMEMBERED_ADDRESSES,
    },
    logEach: false,
    log: (entry) => console.error(jsonLine(entry)),
  })
}

async function assetOf(
  { ASSETS }: EdgeBindings,
  name: string,
): Promise<Uint8Array<ArrayBuffer> | undefined> {
  const found = await ASSETS?.fetch(`http://assets/${name}`)
  return found?.ok ? new Uint8Array(await found.arrayBuffer()) : undefined
}
