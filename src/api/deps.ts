import type { Content } from '../pages/markdown.ts'
import type { SourceRecord } from '../pages/source-list.ts'
import type { Rulebook } from '../rulebook/load.ts'

/** What the app needs from outside: the same on Node and where there is no file system. */
export interface AppDeps {
  readonly rulebook: Rulebook
  readonly content: Content
  readonly sources: readonly SourceRecord[]
  /** A built asset by its hashed name; undefined when there is none. */
  readonly asset: (name: string) => Promise<Uint8Array<ArrayBuffer> | undefined>
  /** Writes one structured line of the log; never given answers. */
  readonly log: (entry: Readonly<Record<string, string | number>>) => void
}
