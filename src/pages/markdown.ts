import { Marked, type RendererObject, type Tokens } from 'marked'

/**
 * The one reader of `content/`: plain `key: value` front matter and Markdown in,
 * safe HTML out. It never touches the disk: whoever starts the program hands it
 * a reader, so tests and other runtimes can give their own.
 */

/** The text of a file below `content/`, such as `learn/register.md`; undefined when there is none. */
export type ReadText = (path: string) => string | undefined

/** A drawing that a page names by a line `![drawing: name]`; undefined when there is none. */
export type DrawingByName = (name: string) => string | undefined

export interface RenderOptions {
  /** Put before every heading's id, so that two documents can stand on one page. */
  readonly idPrefix?: string
  /** Added to every heading's depth; 0 when not given. */
  readonly shift?: number
  /** Address of another page of ours, to keep the case and the units; as it stands when not given. */
  readonly localHref?: (href: string) => string
}

export interface ContentDocument {
  readonly front: Readonly<Record<string, string>>
  /** Markdown without its front matter. */
  readonly text: string
  /** Safe HTML. Headings carry ids made of their words. */
  render(options?: RenderOptions): string
}

export interface Content {
  /** One document, or undefined when there is none or the path is no plain name. */
  document(path: string): ContentDocument | undefined
}

const PLAIN_PATH = /^[A-Za-z0-9-]+(?:\/[A-Za-z0-9-]+)?\.md$/

/**
 * Documents by path. Each is read once.
 *
 * @param read - gives the text of a file below `content/`
 * @param drawing - gives the SVG for a name; a name it does not know draws nothing
 */
export function createContent(read: ReadText, drawing: DrawingByName = () => undefined): Content {
  const known = new Map<string, ContentDocument>()
  return {
    document(path) {
      const before = known.get(path)
      if (before || !PLAIN_PATH.test(path)) return before
      const source = read(path)
      if (source === undefined) return undefined
      const { front, text } = splitFrontMatter(source)
      const render = (options: RenderOptions = {}) => renderMarkdown(text, options, drawing)
      const found = { front, text, render }
      known.set(path, found)
      return found
    },
  }
}

/** Front matter is `key: value` lines between two lines of three dashes; a value is plain text. */
export function splitFrontMatter(source: string): {
  front: Record<string, string>
  text: string
} {
  const normal = source.replaceAll('\r\n', '\n')
  const match = /^---\n([\s\S]*?)\n---(?:\n|$)/.exec(normal)
  if (!match) return { front: {}, text: normal }
  const front: Record<string, string> = Object.create(null)
  for (const line of (match[1] as string).split('\n')) {
    const colon = line.indexOf(':')
    if (colon > 0) front[line.slice(0, colon).trim()] = line.slice(colon + 1).trim()
  }
  return { front, text: normal.slice(match[0].length) }
}

/**
 * Markdown to safe HTML. Raw HTML stays visible text, images are left out but
 * for named drawings, and a link that is not plain web, mail or local loses its address.
 */
export function renderMarkdown(
  text: string,
  options: RenderOptions = {},
  drawing: DrawingByName = () => undefined,
): string {
  return parser(options, drawing).parse(text, { async: false }) as string
}

/** One sentence of Markdown to safe HTML without a paragraph around it. */
export function renderInline(text: string, options: RenderOptions = {}): string {
  return parser(options, () => undefined).parseInline(text, { async: false }) as string
}

function parser(options: RenderOptions, drawing: DrawingByName): Marked {
  const { idPrefix = '', shift = 0, localHref = (href) => href } = options
  const used = new Map<string, number>()
  const marked = new Marked({ gfm: true })
  marked.use({
    // Without these tokens a tag is just text, and text is escaped.
    tokenizer: { html: () => undefined, tag: () => undefined },
    renderer: safeRenderer((words, depth) => {
      const slug = slugOf(words) || 'section'
      const count = used.get(slug) ?? 0
      used.set(slug, count + 1)
      const id = `${idPrefix}${slug}${count === 0 ? '' : `-${count + 1}`}`
      return { id, depth: Math.min(6, depth + shift) }
    }, localHref),
    extensions: [drawingExtension(drawing)],
  })
  return marked
}

function safeRenderer(
  heading: (words: string, depth: number) => { id: string; depth: number },
  localHref: (href: string) => string,
): RendererObject {
  return {
    html: ({ text }: Tokens.HTML | Tokens.Tag) => escapeHtml(text),
    image: ({ text }: Tokens.Image) => escapeHtml(text),
    heading(token: Tokens.Heading) {
      const { id, depth } = heading(plainText(token.tokens), token.depth)
      return `<h${depth} id="${escapeHtml(id)}">${this.parser.parseInline(token.tokens)}</h${depth}>\n`
    },
    link(token: Tokens.Link) {
      const inside = this.parser.parseInline(token.tokens)
      if (!isSafeHref(token.href)) return inside
      const away = /^https?:/i.test(token.href) ? ' rel="external noreferrer"' : ''
      const href = token.href.startsWith('/') ? localHref(token.href) : token.href
      return `<a href="${escapeHtml(href)}"${away}>${inside}</a>`
    },
    code: ({ text }: Tokens.Code) => `<pre><code>${escapeHtml(text)}</code></pre>\n`,
    table(token: Tokens.Table) {
      const inside = (cell: Tokens.TableCell) => this.parser.parseInline(cell.tokens)
      const head = token.header.map((cell) => `<th scope="col">${inside(cell)}</th>`).join('')
      const body = token.rows
        .map((row) => `<tr>${row.map((cell) => `<td>${inside(cell)}</td>`).join('')}</tr>`)
        .join('\n')
      const name = escapeHtml(token.header.map((cell) => plainText(cell.tokens)).join(', '))
      return `<div class="table-scroll" role="region" aria-label="Table: ${name}" tabindex="0"><table><thead><tr>${head}</tr></thead><tbody>${body}</tbody></table></div>\n`
    },
  }
}

function drawingExtension(drawing: DrawingByName) {
  const line = /^!\[drawing: ([a-z0-9-]+)\] *(?:\n+|$)/
  return {
    name: 'drawing',
    level: 'block' as const,
    start: (source: string) => source.match(/!\[drawing: /)?.index,
    tokenizer(source: string) {
      const match = line.exec(source)
      return match ? { type: 'drawing', raw: match[0], drawing: match[1] } : undefined
    },
    renderer: (token: Tokens.Generic) => `${drawing(String(token.drawing)) ?? ''}\n`,
  }
}

/** Words of a heading without marks. */
function plainText(tokens: readonly { type: string; raw: string }[]): string {
  return tokens
    .map((token) => {
      if ('tokens' in token && Array.isArray(token.tokens)) return plainText(token.tokens)
      return 'text' in token ? String(token.text) : token.raw
    })
    .join('')
}

/** Words to an id: lower case, ASCII letters and figures, single dashes. */
export function slugOf(words: string): string {
  return words
    .normalize('NFKD')
    .toLowerCase()
    .replace(/['’]/g, '')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
}

const SAFE_HREF = [
  /^https?:\/\/[^\s\\/][^\s\\]*$/i,
  /^mailto:[^\s\\:]+$/i,
  // Local: no scheme, so no colon before a slash, and no second slash that would name a host.
  /^(?:#|\?|\/(?![/\\])|\.{1,2}\/|[a-z0-9][\w-]*(?=[/?#]|$))[^\s\\:]*$/i,
]

function isSafeHref(href: string): boolean {
  return SAFE_HREF.some((shape) => shape.test(href))
}

function escapeHtml(text: string): string {
  return text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')
    .replaceAll("'", '&#39;')
}
