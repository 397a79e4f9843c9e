import type { Context } from 'hono'
import type { MessageReader } from '../answers/read-message.ts'
import type { Content } from '../pages/markdown.ts'
import type { PrintFonts } from '../pages/pdf-pen.ts'
import type { SourceRecord } from '../pages/source-list.ts'
import type { Rulebook } from '../rulebook/load.ts'
import type { ShopRules } from '../shop-sheet/shop-rules.ts'
import type { Shop } from '../shops/schema.ts'
import type { GiveWay } from './take-turns.ts'

/** Other processes that serve the same addresses. */
export interface RatePeers {
  /** Tell them that this one has served an address. */
  tell(address: string): void
  /** Call this whenever one of them has; instead of what was to be called before. */
  onHearing(listener: (address: string) => void): void
}

/** How many requests one address may make, as a bucket that fills steadily. */
export interface RateLimit {
  /** Requests a minute; 0 is no limit. */
  readonly perMinute: number
  /** Addresses remembered at once; the one seen longest ago is forgotten first. */
  readonly addresses: number
  /** Those that the limit is shared with; undefined where one process serves all. */
  readonly peers?: RatePeers | undefined
}

/** What the app needs from outside: the same on Node and where there is no file system. */
export interface AppDeps {
  readonly rulebook: Rulebook
  /** Reads messages by the words of rules/vocabulary/. */
  readonly reader: MessageReader
  readonly content: Content
  readonly sources: readonly SourceRecord[]
  /** A built asset by its hashed name; undefined when there is none. */
  readonly asset: (name: string) => Promise<Uint8Array<ArrayBuffer> | undefined>
  /** Shops that may show the guide in a frame of their own. */
  readonly shops: readonly Shop[]
  /** The one whose frame this app serves; undefined for the guide itself. */
  readonly shop?: Shop
  /** The guide's own address as the world knows it, such as `https://guide.example`; from the request when not given. */
  readonly origin?: string | undefined
  /** A second address of the same server, on which the demonstration shop stands. */
  readonly demoOrigin?: string | undefined
  /** A drawing as PNG; undefined where there is nothing that draws one. */
  readonly drawPng?: ((svg: string) => Promise<Uint8Array<ArrayBuffer>>) | undefined
  /** Limits, gauges and what is often forgotten, for the shop sheet and the check-in. */
  readonly shopRules: ShopRules
  /** Faces of printed sheets; undefined where there is nothing that draws a PDF. */
  readonly printFonts?: PrintFonts | undefined
  /** Milliseconds since any fixed moment, to bound how often cards are drawn. */
  readonly clock: () => number
  /**
   * Lets other requests pass between the steps of a long computation, which then take turns;
   * undefined where one request may not wait for another.
   */
  readonly giveWay?: GiveWay | undefined
  /** Address of the client, proxies of ours taken into account. */
  readonly addressOf: (c: Context) => string
  /** How often one address may ask. */
  readonly rate: RateLimit
  /** Whether every request gets a line in the log, not only faults. */
  readonly logEach: boolean
  /** Writes one structured line of the log; never given answers. */
  readonly log: (entry: Readonly<Record<string, string | number>>) => void
}
