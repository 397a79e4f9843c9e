import { type Assessment, toFindOut } from '../../shared/assessment.ts'
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

/** An enquiry in the person's own name: the call, the work and parts it asks for, the build, what is open, the sheet. */
export function shopPost({ assessment, said, sheetHref, before, elsewhere }: ShopCase): Post {
  const { call, cost } = assessment
  const items = (kind: 'work' | 'part'): Item[] =>
    cost.items
      .filter((item) => item.kind === kind && !elsewhere.includes(item.id))
      .map(({ label }) => ({ name: '', text: label }))
  const others = cost.items.filter(({ id }) => elsewhere.includes(id))
  const list = (text: string, entries: readonly Item[]): Post =>
    entries.length === 0
      ? []
      : [
          { kind: 'line', text },
          { kind: 'list', items: entries },
        ]
  const open = toFindOut(assessment).slice(0, 4)
  return [
    { kind: 'line', text: `I am planning: ${call.sentence}` },
    ...list('Work I would ask you for:', items('work')),
    ...list(
      'Done elsewhere, since your profile says that you do not:',
      others.map(({ label }) => ({ name: '', text: label })),
    ),
    ...list('Parts:', items('part')),
    { kind: 'line', text: `Build: ${said.join('; ')}.` },
    ...list(
      'Not known yet, and it could change the plan:',
      open.map(({ label, text }) => ({ name: label, text: `${text} assumed` })),
    ),
    ...list(
      'Before the block comes:',
      before.map((text) => ({ name: '', text })),
    ),
    { kind: 'link', text: 'The whole sheet for the machine shop', href: sheetHref },
  ]
}
