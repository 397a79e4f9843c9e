import type { Context } from 'hono'
import { toQuery } from '../../shared/share-link.ts'
import type { AppDeps } from '../api/deps.ts'
import { originOf } from '../api/origin-of.ts'
import type { Preview } from '../pages/layout.ts'
import { pageHref } from '../pages/page-href.ts'
import type { Rulebook } from '../rulebook/load.ts'
import type { RequestView } from './request-view.ts'

/**
 * The link to give away: the answers and the version, nothing of how the person came to
 * them. The same from the page, from any shop's frame and from the API.
 */
export function canonicalLink(
  { version }: Pick<Rulebook, 'version'>,
  { answers, state }: Pick<RequestView, 'answers' | 'state'>,
): string {
  const said = Object.keys(answers).length + Object.keys(state.parked).length
  return said === 0 ? '' : toQuery(answers, version, state.parked)
}

/** What a forum shows of a link to a page of this case. */
export function previewOf(
  deps: AppDeps,
  c: Context,
  request: RequestView,
  path: string,
): Preview | undefined {
  if (!deps.drawPng) return undefined
  const { units } = request
  const link = canonicalLink(deps.rulebook, request)
  const origin = originOf(deps, c)
  return {
    url: `${origin}${pageHref(path, link, units)}`,
    image: `${origin}${pageHref('/card.png', link, units)}`,
    alt:
      link === ''
        ? 'A section through a main cap, and the question that the guide answers.'
        : 'A section through the main cap with its forces, the call in words, and the figures it rests on.',
  }
}
