import { createReader } from './answers/read-message.ts'
import { vocabularyFromFiles } from './answers/vocabulary-files.ts'
import type { AppDeps } from './api/deps.ts'
import { checkContent } from './pages/check-content.ts'
import { learnDrawing } from './pages/learn-drawings.ts'
import { createContent, type ReadText } from './pages/markdown.ts'
import { readSources } from './pages/source-list.ts'
import { loadRulebook } from './rulebook/load.ts'
import { checkShopReferences } from './shop-sheet/shop-references.ts'
import { loadShopRules } from './shop-sheet/shop-rules.ts'
import { loadShops } from './shops/load.ts'

/** What an operator may change, as texts: from a disk, or bundled where there is none. */
export interface OperatorFiles {
  /** Path below rules/ → text. */
  readonly rules: ReadonlyMap<string, string>
  /** File name below content/shops/ → text. */
  readonly shops: ReadonlyMap<string, string>
  readonly content: ReadText
}

/** The part of the app's dependencies that is made of these files. */
export type FromFiles = Pick<
  AppDeps,
  'rulebook' | 'reader' | 'content' | 'sources' | 'shops' | 'shopRules'
>

/**
 * Read all of them, or none.
 *
 * @throws {Error} naming file, place and reason of what is broken
 */
export function fromOperatorFiles({ rules, shops, content }: OperatorFiles): FromFiles {
  const rulebook = loadRulebook(rules)
  const pages = createContent(content, learnDrawing)
  checkContent(pages)
  const shopRules = loadShopRules(rules)
  checkShopReferences(shopRules, rulebook)
  return {
    rulebook,
    reader: createReader(vocabularyFromFiles(rules)),
    content: pages,
    sources: readSources(rules),
    shops: loadShops(shops, rulebook.cost),
    shopRules,
  }
}
