/** One part of a text for a forum. Every text in it is plain; each kind of forum escapes it its own way. */
export type Part =
  | { readonly kind: 'heading'; readonly text: string }
  | { readonly kind: 'line'; readonly text: string }
  | { readonly kind: 'list'; readonly items: readonly Item[] }
  /** A person's own words. */
  | { readonly kind: 'quote'; readonly text: string }
  | { readonly kind: 'link'; readonly text: string; readonly href: string }

/** One entry of a list. */
export interface Item {
  /** Stands out before the text; '' when the text stands alone. */
  readonly name: string
  readonly text: string
}

/** A text for a forum, part by part. */
export type Post = readonly Part[]

/** The same text in the three ways that forums read. */
export interface PostTexts {
  readonly plain: string
  readonly markdown: string
  readonly bbcode: string
}

/** Ordinary spaces and one line: what survives being pasted anywhere. */
export function oneLine(text: string): string {
  return text.replace(/[\p{Cc}\p{Cf}\s]+/gu, ' ').trim()
}
