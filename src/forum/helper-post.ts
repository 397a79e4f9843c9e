import type { Post } from './post.ts'

/** What a helper gives to someone who asks. */
export interface HelperCase {
  /** Answers that the helper set, in words. */
  readonly set: readonly string[]
  /** Answers that are left open for the asker, by name. */
  readonly open: readonly string[]
  /** The helper's own words; '' when there are none. */
  readonly note: string
  /** Whole address of the guide with the set answers. */
  readonly href: string
}

/** A link that asks the asker what is still open. */
export function helperPost({ set, open, note, href }: HelperCase): Post {
  return [
    { kind: 'heading', text: 'Main caps: your answers decide' },
    ...(note === '' ? [] : [{ kind: 'quote', text: note } as const]),
    ...(set.length === 0
      ? []
      : [{ kind: 'line', text: `Set already: ${set.join('; ')}.` } as const]),
    ...(open.length === 0
      ? []
      : [{ kind: 'line', text: `Left for you: ${open.join('; ')}.` } as const]),
    { kind: 'link', text: 'Answer the rest here', href },
  ]
}
