import { visible } from '../../shared/visible.ts'
import type { OlderLink } from '../pages/older-link.ts'
import type { Rulebook } from '../rulebook/load.ts'

/** Longest version that is echoed. */
const LONGEST = 20

/** What to say of a link's version; undefined when it is today's, or the link says none. */
export function olderLinkOf(
  { version: now, changes }: Pick<Rulebook, 'version' | 'changes'>,
  version: string | undefined,
): OlderLink | undefined {
  if (version === undefined || version === now) return undefined
  const place = changes.findIndex((change) => change.version === version)
  const since = place < 0 ? [] : changes.slice(place + 1)
  return {
    version: visible(version.slice(0, LONGEST)),
    now,
    changes: since.map(({ version: one, effect }) => `${one}: ${effect}`).reverse(),
  }
}
