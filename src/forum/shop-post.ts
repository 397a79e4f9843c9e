import { type Assessment, stillOpen } from '../../shared/assessment.ts'
import type { Item, Post } from './post.ts'

/** What a person asks a shop for. */
export interface ShopCase {
  readonly assessment: Assessment
  /** What the person said, in words. */
  readonly said: readonly string[]
  /** Whole address of the sheet for the machine shop. */
  readonly sheetHref: string
  /** Steps of the work before the block goes to the shop, in order. */
  readonly before: readonly string[]
  /** Work that the shop does not do itself, by the ids of the price list. */
  readonly elsewhere: readonly string[]
}

/** How the line begins that says the build; the sheet's own text goes in before it. */
export const BUILD = 'Build: '

/** An enquiry in the person's own name: the call, the work and parts it asks for, what is open, the build, the sheet. */
export function shopPost({ assessment, said, sheetHref, before, elsewhere }: ShopCase): Post {
  const { call, cost, assumptions } = assessment
  const items = (kind: 'work' | 'part'): Item[] =>
    cost.items
      .filter((item) => item.kind === kind)
      .map(({ id, label }) => ({
        name: '',
        text: elsewhere.includes(id)
          ? `${label} (not in your own house, as your profile says)`
          : label,
      }))
  const list = (text: string, entries: readonly Item[]): Post =>
    entries.length === 0
      ? []
      : [
          { kind: 'line', text },
          { kind: 'list', items: entries },
        ]
  const open = stillOpen(assumptions).slice(0, 4)
  return [
    { kind: 'line', text: `I am planning: ${call.sentence}` },
    ...list('Work I would ask you for:', items('work')),
    ...list('Parts:', items('part')),
    ...list(
      'Before the block comes:',
      before.map((text) => ({ name: '', text })),
    ),
    ...list(
      'Not known yet, and it could change the plan:',
      open.map(({ label, text }) => ({ name: label, text: `${text} assumed` })),
    ),
    { kind: 'line', text: `${BUILD}${said.join('; ')}.` },
    { kind: 'link', text: 'The whole sheet for the machine shop', href: sheetHref },
  ]
}
