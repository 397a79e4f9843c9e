import type { FactKey } from '../../shared/fact-keys.ts'
import { pageHref, type UnitSystem } from '../pages/page-href.ts'

/** Where a person reads more about the subject of a question: the page of measuring it. */
export function learnHrefFor(key: FactKey, link: string, units: UnitSystem): string {
  return pageHref(`/learn/measuring#${key}`, link, units)
}
