import { FACT_KEYS } from '../../shared/fact-keys.ts'
import { ROUTE_IDS } from '../../shared/route-ids.ts'
import { WORKSHEETS } from '../worksheets/registry.ts'
import type { Content } from './markdown.ts'
import { SAFETY_WORDS } from './safety-words.ts'

/** Pages of content/ that cannot be used: which file, and what is wrong with it. */
export class ContentError extends Error {
  constructor(readonly faults: readonly string[]) {
    super(`the pages of content/ cannot be used:\n  ${faults.join('\n  ')}`)
    this.name = 'ContentError'
  }
}

/** Pages that the guide shows by name. */
const NEEDED = [
  ...['glossary.md', 'learn.md', 'method.md', 'safety.md', 'shops.md'],
  ...FACT_KEYS.map((key) => `questions/${key}.md`),
  ...ROUTE_IDS.map((route) => `assembly/${route}.md`),
  ...WORKSHEETS.map(({ name }) => `worksheets/${name}.md`),
]

/**
 * Read every page that the guide shows or that one of them names, so that a set of pages is taken
 * whole: what is changed on the disk later changes none of them.
 *
 * @throws {ContentError} naming every page that is missing or empty, and who names it
 */
export function checkContent(content: Content): void {
  const faults = [
    ...NEEDED.flatMap((path) => pageFaults(content, path)),
    ...safetyFaults(content),
    ...namedFaults(content),
  ]
  if (faults.length > 0) throw new ContentError(faults)
}

function pageFaults(content: Content, path: string): string[] {
  const document = content.document(path)
  if (!document) return [`${path}: the file is missing`]
  return document.text.trim() === '' ? [`${path}: the file has no text`] : []
}

/** What papers and posts say of safety.md. */
function safetyFaults(content: Content): string[] {
  const document = content.document('safety.md')
  const missing = SAFETY_WORDS.filter((name) => document && !document.front[name])
  return missing.map((name) => `safety.md: its front matter has no ${name}`)
}

/** Explanations that the index of learn.md lists, or that belong to a question. */
function namedFaults(content: Content): string[] {
  const index = content.document('learn.md')?.text ?? ''
  const listed = [...index.matchAll(/^- \[([a-z0-9-]+)\]/gm)].map((match) => match[1] as string)
  const named = FACT_KEYS.flatMap((key) => {
    const path = `questions/${key}.md`
    const slug = content.document(path)?.front.learn
    return slug ? [{ path, slug }] : []
  })
  return [...listed.map((slug) => ({ path: 'learn.md', slug })), ...named].flatMap(
    ({ path, slug }) =>
      pageFaults(content, `learn/${slug}.md`).map((fault) => `${path} names ${fault}`),
  )
}
