import type { Helper } from '../pages/conversation-view.ts'
import type { Shop } from '../shops/schema.ts'
import type { RequestView } from './request-view.ts'

/** Whoever set answers of this link or left a note; undefined when nobody did. */
export function helperOf(
  { answers, extras }: Pick<RequestView, 'answers' | 'extras'>,
  shop: Shop | undefined,
): Helper | undefined {
  const { by, note } = extras
  if (by.length === 0 && note === '') return undefined
  const isStart = by.length > 0 && Object.keys(answers).length === by.length
  return shop
    ? { kind: 'shop', who: shop.name, note, isStart }
    : { kind: 'helper', who: 'your helper', note, isStart }
}
