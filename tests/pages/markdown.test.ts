import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  createContent,
  renderInline,
  renderMarkdown,
  slugOf,
  splitFrontMatter,
} from '../../src/pages/markdown.ts'

/** Tags that Markdown itself can make here; anything else in the output came from raw HTML. */
const OWN_TAGS =
  /<\/?(?:p|h[1-6]|a|em|strong|del|code|pre|ul|ol|li|blockquote|hr|br|table|thead|tbody|tr|th|td|div|input)(?: (?:id|href|rel|class|scope|role|aria-label|tabindex|start|type|checked|disabled)(?:="[^"<>]*")?)*\s*\/?>/g

function foreign(html: string): string {
  return html.replace(OWN_TAGS, '').match(/[<>][\s\S]{0,40}/)?.[0] ?? ''
}

describe('renderMarkdown', () => {
  it.each([
    '<script>alert(1)</script>',
    'a <img src=x onerror=alert(1)> b',
    '<div onclick="x()">**bold**</div>',
    '<!-- comment --><style>*{}</style>',
    '<svg><script>1</script></svg>',
    '[x](<" onmouseover="alert(1)>)',
    '# <b onload=x>title</b>',
    '| <i>a</i> |\n| --- |\n| <u>b</u> |',
    '```html "><script>\n</code><script>1</script>\n```',
    '`<script>`',
    '&lt;script&gt;',
    '<http://example.org/"onx=1>',
  ])('leaves no tag of its author in %s', (text) => {
    expect(foreign(renderMarkdown(text))).toBe('')
    expect(foreign(renderInline(text))).toBe('')
  })

  it('makes only its own tags whatever the text is', () => {
    const part = fc.constantFrom(
      '<',
      '>',
      '"',
      "'",
      '[',
      ']',
      '(',
      ')',
      '!',
      '&#58;',
      'javascript:',
      '\n',
      '`',
      '#',
      ' ',
      'a',
      '<b x=',
      '</a>',
      '|',
      '---',
      '![drawing: x]',
    )
    const hostile = fc.array(part, { maxLength: 24 }).map((parts) => parts.join(''))
    fc.assert(
      fc.property(hostile, (text) => foreign(renderMarkdown(text)) === ''),
      { numRuns: 2000, seed: 7 },
    )
    expect(foreign('<b x="1">')).not.toBe('')
  })

  it.each([
    'javascript:alert(1)',
    'JaVaScRiPt:alert(1)',
    'javascript&#58;alert(1)',
    'java&#x0A;script:alert(1)',
    'data:text/html,x',
    'vbscript:x',
    '//example.org/x',
    '/\\example.org',
    'https:/\\example.org',
    'file:///etc/passwd',
    'a:b',
  ])('gives no address to a link to %s', (href) => {
    const html = renderMarkdown(`[words](<${href}>) and [more](${href})`)
    const hrefs = [...html.matchAll(/href="([^"]*)"/g)].map((match) => match[1])
    expect(html).toContain('words')
    expect(hrefs).toEqual([])
  })

  it.each(['/learn/register', '#step-2', '?units=us', 'register', './a', 'https://example.org/a'])(
    'keeps a link to %s',
    (href) => expect(renderMarkdown(`[w](${href})`)).toContain(`<a href="${href}"`),
  )

  it('shows words in place of an image', () => {
    const html = renderMarkdown('![a cap](https://example.org/x.png)')
    expect(html).not.toContain('<img')
    expect(html).toContain('a cap')
  })

  it('puts a named drawing where its line stands, and nothing for an unknown name', () => {
    const drawing = (name: string) => (name === 'cap' ? '<svg id="cap"></svg>' : undefined)
    const html = renderMarkdown('one\n\n![drawing: cap]\n\ntwo\n\n![drawing: no]\n', {}, drawing)
    expect(html).toMatch(/<p>one<\/p>\s*<svg id="cap"><\/svg>\s*<p>two<\/p>/)
    expect(html).not.toContain('drawing')
  })

  it('gives every heading an id of its own, prefixed and shifted as asked', () => {
    const html = renderMarkdown('## Cap walk\n## Cap walk\n### *Grip* & hold', {
      idPrefix: 'x-',
      shift: 1,
    })
    expect(html).toContain('<h3 id="x-cap-walk">')
    expect(html).toContain('<h3 id="x-cap-walk-2">')
    expect(html).toContain('<h4 id="x-grip-hold">')
  })
})

describe('splitFrontMatter', () => {
  it('reads key and value lines, Windows line ends too', () => {
    const { front, text } = splitFrontMatter('---\r\ntitle: Line bore: why\r\n---\r\nBody')
    expect(front.title).toBe('Line bore: why')
    expect(text).toBe('Body')
  })

  it('takes no inherited name for a field', () => {
    expect(splitFrontMatter('---\na: b\n---\n').front.constructor).toBeUndefined()
  })
})

describe('createContent', () => {
  it('reads only plain names, each once', () => {
    const asked: string[] = []
    const content = createContent((path) => {
      asked.push(path)
      return path === 'learn/a.md' ? '# A' : undefined
    })
    expect(content.document('learn/a.md')?.render()).toContain('A</h1>')
    content.document('learn/a.md')
    for (const path of ['../secret.md', 'a/b/c.md', '/etc/passwd', 'a%2fb.md', 'a.txt']) {
      expect(content.document(path)).toBeUndefined()
    }
    expect(asked).toEqual(['learn/a.md'])
  })
})

describe('slugOf', () => {
  it.each([
    ['Cap walk', 'cap-walk'],
    ['Machinist’s sheet', 'machinists-sheet'],
    ['  Två — 2 ', 'tva-2'],
    ['!!', ''],
  ])('%s becomes %s', (words, slug) => expect(slugOf(words)).toBe(slug))
})
