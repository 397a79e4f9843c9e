import { type Item, oneLine, type Part, type Post } from './post.ts'

/** A post as plain text: nothing in it means anything but itself. */
export function asPlain(post: Post): string {
  return `${post.map(part).join('\n\n')}\n`
}

function part(one: Part): string {
  switch (one.kind) {
    case 'heading':
      return oneLine(one.text).toUpperCase()
    case 'list':
      return one.items.map(item).join('\n')
    case 'quote':
      return `“${oneLine(one.text)}”`
    case 'link':
      return `${oneLine(one.text)}: ${one.href}`
    default:
      return oneLine(one.text)
  }
}

function item({ name, text }: Item): string {
  return name === '' ? `- ${oneLine(text)}` : `- ${oneLine(name)}: ${oneLine(text)}`
}
