import { type Item, oneLine, type Part, type Post } from './post.ts'

/**
 * A post as Markdown.
 *
 * @see CommonMark 0.31, sections 2.4 (backslash escapes) and 4.1 to 5.3 (what a line may begin)
 */
export function asMarkdown(post: Post): string {
  return `${post.map(part).join('\n\n')}\n`
}

function part(one: Part): string {
  switch (one.kind) {
    case 'heading':
      return `**${escaped(one.text)}**`
    case 'list':
      return one.items.map(item).join('\n')
    case 'quote':
      return `> ${escaped(one.text)}`
    case 'link':
      return `[${escaped(one.text)}](<${one.href.replace(/[<>\\]/g, encodeURIComponent)}>)`
    default:
      return escaped(one.text)
  }
}

function item({ name, text }: Item): string {
  return name === '' ? `- ${escaped(text)}` : `- **${escaped(name)}**: ${escaped(text)}`
}

/** Signs that mean something inside a line, and what a line may not begin with. */
function escaped(text: string): string {
  return oneLine(text)
    .replace(/[\\`*_[\]<>&|~$@]/g, '\\$&')
    .replace(/^[#+=-]/, '\\$&')
    .replace(/^(\d+)([.)])(?=\s|$)/, '$1\\$2')
}
