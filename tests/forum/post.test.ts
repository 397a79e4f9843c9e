import fc from 'fast-check'
import { Marked } from 'marked'
import { describe, expect, it } from 'vitest'
import { callPost, postTexts } from '../../src/forum/call-post.ts'
import { helperPost } from '../../src/forum/helper-post.ts'
import { mailtoHref, mailWith } from '../../src/forum/mail.ts'
import type { Post } from '../../src/forum/post.ts'
import { shopPost } from '../../src/forum/shop-post.ts'
import { sampleAssessment } from '../support/sample-assessment.ts'

const HREF = 'https://guide.example/call?v=1.0.0&bore=4.03in&fastenerThread=1/2-13'
const SAID = ['bore 4.03 in', 'cap history original to the block, never moved']
const END = 'Ask a machinist first.'

const POST: Post = [
  { kind: 'heading', text: 'Main caps: steel' },
  {
    kind: 'list',
    items: [
      { name: 'Hold', text: '0.94' },
      { name: '', text: 'and 3 more' },
    ],
  },
  { kind: 'quote', text: '# *Not* a [heading](x) <b>' },
  { kind: 'link', text: 'The call', href: HREF },
]

describe('a post in three ways', () => {
  it('is plain text', () => {
    expect(postTexts(POST).plain).toBe(`MAIN CAPS: STEEL

- Hold: 0.94
- and 3 more

“# *Not* a [heading](x) <b>”

The call: ${HREF}
`)
  })

  it('is Markdown', () => {
    expect(postTexts(POST).markdown).toBe(`**Main caps: steel**

- **Hold**: 0.94
- and 3 more

> \\# \\*Not\\* a \\[heading\\](x) \\<b\\>

[The call](<${HREF}>)
`)
  })

  it('is BBCode', () => {
    expect(postTexts(POST).bbcode).toBe(`[b]Main caps: steel[/b]

[list]
[*][b]Hold[/b]: 0.94
[*]and 3 more
[/list]

[quote]# *Not* a (heading)(x) <b>[/quote]

[url=${HREF}]The call[/url]
`)
  })
})

/** What a reader of Markdown sees of a text: no tags, entities read. */
function shown(markdown: string): string {
  const page = new Marked({ gfm: true }).parse(markdown, { async: false }) as string
  return page
    .replace(/<\/?(?:p|blockquote|ul|li|strong)>/g, ' ')
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&#39;', "'")
    .replaceAll('&amp;', '&')
    .replace(/\s+/g, ' ')
    .trim()
}

/** Signs that any of the three ways could take for its own. */
const nasty = fc
  .array(
    fc.oneof(
      fc.constantFrom(
        '*',
        '_',
        '[',
        ']',
        '<',
        '>',
        '&',
        '#',
        '`',
        '~',
        '|',
        '\\',
        '-',
        '+',
        '1.',
        '2)',
      ),
      fc.constantFrom(
        'word',
        'x',
        ' ',
        '  ',
        '\n',
        '[b]',
        '[/quote]',
        '&lt;',
        '<script>',
        '](',
        '---',
        '===',
      ),
    ),
    { minLength: 1, maxLength: 14 },
  )
  .map((parts) => parts.join(''))
  .filter((text) => text.trim() !== '')

describe('a person’s own words', () => {
  it('read the same in Markdown as they were written', () => {
    fc.assert(
      fc.property(nasty, (text) => {
        const { markdown } = postTexts([{ kind: 'quote', text }])
        expect(shown(markdown)).toBe(text.replace(/\s+/g, ' ').trim())
      }),
      { numRuns: 500 },
    )
  })

  it('are no tag in BBCode, and one line everywhere', () => {
    fc.assert(
      fc.property(nasty, (text) => {
        const { bbcode, plain } = postTexts([{ kind: 'quote', text }])
        const inside = bbcode.replace(/^\[quote\]/, '').replace(/\[\/quote\]\n$/, '')
        expect(inside).not.toMatch(/[[\]\n]/)
        expect(plain.trimEnd()).not.toMatch(/\n/)
      }),
    )
  })

  it('cannot turn the direction of the text or hide in it', () => {
    const { plain } = postTexts([{ kind: 'quote', text: 'a\u202eb\u200bc\u0000d' }])
    expect(plain).toBe('“a b c d”\n')
  })
})

describe('the call as a post', () => {
  const assessment = sampleAssessment()
  const post = callPost({ assessment, isGuess: false, said: SAID, href: HREF, end: END })
  const { plain, bbcode } = postTexts(post)

  it('says the call, three numbers, what was assumed and the link', () => {
    expect(plain).toContain(assessment.call.sentence.replaceAll('\u00a0', ' '))
    expect(plain).toMatch(/^- Weakest margin as it is: [a-z ]+ \d/m)
    expect(plain).toMatch(/^- Holds in: \d+ of 100 sampled cases/m)
    expect(plain).toMatch(/^- Likely cost: [\d,]+ [A-Z]{3} \(/m)
    expect(plain).toContain('Assumed, because nobody said it:')
    expect(plain).toContain(HREF)
    expect(plain.trimEnd().split('\n').at(-1)).toBe(END)
    expect(plain).toContain('Build: bore 4.03 in; cap history original to the block, never moved.')
  })

  it('says how sure the call is, and that a guess is one', () => {
    expect(plain).toContain('How sure: likely. An open answer could still change it.')
    const guess = callPost({ assessment, isGuess: true, said: SAID, href: HREF, end: END })
    expect(postTexts(guess).plain).toMatch(/How sure: first guess\. .*not what to buy\./)
  })

  it('uses the tags that every forum knows, each closed', () => {
    const tags = [...bbcode.matchAll(/\[(\/?[a-z*]+)(?:=[^\]]*)?\]/g)].map((match) => match[1])
    expect(new Set(tags.map((tag) => tag?.replace('/', '')))).toEqual(
      new Set(['b', 'list', '*', 'url']),
    )
    for (const tag of ['b', 'list', 'url']) {
      expect(tags.filter((one) => one === tag).length, tag).toBe(
        tags.filter((one) => one === `/${tag}`).length,
      )
    }
  })

  it('gives no number while contradictory answers withhold the call', () => {
    const withheld = sampleAssessment({
      call: { ...assessment.call, route: null, confidence: 'withheld', sentence: 'No call.' },
    })
    const text = postTexts(
      callPost({ assessment: withheld, isGuess: false, said: SAID, href: HREF, end: END }),
    ).plain
    expect(text).not.toMatch(/Holds in|Likely cost|Weakest/)
  })

  it('puts what can still change the call first among what was assumed', () => {
    const [one] = assessment.assumptions
    if (!one) throw new Error('the sample assumes something')
    const assumptions = [
      { ...one, label: 'Idle', matters: 'no' as const },
      { ...one, label: 'Weighty', matters: 'with-others' as const },
    ]
    const text = postTexts(
      callPost({
        assessment: sampleAssessment({ assumptions }),
        isGuess: false,
        said: SAID,
        href: HREF,
        end: END,
      }),
    ).plain
    expect(text.indexOf('Weighty')).toBeLessThan(text.indexOf('Idle'))
    expect(text).toMatch(/Weighty: .*could still change the call/)
  })
})

describe('a helper’s post', () => {
  it('says what is set, what is left, and the note as a quote', () => {
    const post = helperPost({
      set: ['bore 4.03 in'],
      open: ['boost', 'fuel'],
      note: 'Ask the seller.',
      href: HREF,
    })
    expect(postTexts(post).plain).toBe(`MAIN CAPS: YOUR ANSWERS DECIDE

“Ask the seller.”

Set already: bore 4.03 in.

Left for you: boost; fuel.

Answer the rest here: ${HREF}
`)
  })
})

describe('an enquiry to a shop', () => {
  const assessment = sampleAssessment()
  const sheetHref = 'https://guide.example/sheet?v=1.0.0'
  const text = postTexts(
    shopPost({
      assessment,
      said: SAID,
      sheetHref,
      before: ['Strip the block'],
      elsewhere: ['line-bore'],
    }),
  ).plain

  it('asks for the work of the call, marks what the shop does not do, and ends with the sheet', () => {
    const work = assessment.cost.items.filter(({ kind }) => kind === 'work')
    expect(work.length).toBeGreaterThan(0)
    for (const { label } of work) expect(text).toContain(label)
    expect(text).toMatch(/Done elsewhere, since your profile says that you do not:\s+- Line bore/)
    expect(text.indexOf('Build: ')).toBeLessThan(text.indexOf('Before the block comes'))
    expect(text.trimEnd().endsWith(sheetHref)).toBe(true)
  })

  it('is one mail address, subject and body that any mail program takes', () => {
    const href = mailtoHref('counter@shop.example', 'Caps & studs?', text)
    const url = new URL(href)
    expect(url.protocol).toBe('mailto:')
    expect(url.pathname).toBe('counter@shop.example')
    expect(url.searchParams.get('subject')).toBe('Caps & studs?')
    expect(url.searchParams.get('body')).toMatch(/^I am planning: .*\r\n/)
    expect(href).not.toMatch(/[\s"<>]/)
  })

  it('is cut for the mail program when long, and keeps the link', () => {
    const href = mailtoHref(
      'a@shop.example',
      'Long',
      `${'A line of text.\n'.repeat(400)}${sheetHref}\n`,
    )
    expect(href.length).toBeLessThanOrEqual(1900)
    expect(new URL(href).searchParams.get('body')?.endsWith(sheetHref)).toBe(true)
  })

  it('says how much of it the mail carries, and where it was cut', () => {
    const long = `${'A line of text.\n\n'.repeat(400)}${sheetHref}\n`
    const { href, lines, of } = mailWith('a@shop.example', 'Long', long, 'The rest is at:')
    expect(href.length).toBeLessThanOrEqual(1800)
    expect(of).toBe(401)
    const body = new URL(href).searchParams.get('body') ?? ''
    // What is there is counted: the lines of text and the link, not the line that says of the cut.
    expect(body.split('\r\n').filter((line) => line !== '').length).toBe(lines + 1)
    expect(body).toMatch(/A line of text\.\r\n\r\nThe rest is at:\r\nhttp/)
    expect(mailWith('a@shop.example', 'Short', 'One.\n\nTwo.\n', 'Cut')).toMatchObject({
      lines: 2,
      of: 2,
    })
  })
})
