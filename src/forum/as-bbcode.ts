import { type Item, oneLine, type Part, type Post } from './post.ts'

/**
 * A post in the tags that every BBCode forum knows: b, i, quote, list, url. BBCode has no
 * way to escape a bracket, so those of a person's text become round ones.
 */
export function asBbcode(post: Post): string {
  return `${post.map(part).join('\n\n')}\n`
}

function part(one: Part): string {
  switch (one.kind) {
    case 'heading':
      return `[b]${escaped(one.text)}[/b]`
    case 'list':
      return `[list]\n${one.items.map(item).join('\n')}\n[/list]`
    case 'quote':
      return `[quote]${escaped(one.text)}[/quote]`
    case 'link':
      return `[url=${one.href.replace(/[[\]\s"]/g, encodeURIComponent)}]${escaped(one.text)}[/url]`
    default:
      return escaped(one.text)
  }
}

function item({ name, text }: Item): string {
  return name === '' ? `[*]${escaped(text)}` : `[*][b]${escaped(name)}[/b]: ${escaped(text)}`
}

function escaped(text: string): string {
  return oneLine(text).replaceAll('[', '(').replaceAll(']', ')')
}
