import { describe, expect, it } from 'vitest'
import { conversationPage } from '../../src/pages/conversation.ts'
import type { ConversationView } from '../../src/pages/conversation-view.ts'
import { questionWith, STATES, viewWith } from '../support/conversation-views.ts'

async function main(view: ConversationView): Promise<string> {
  const text = String(await conversationPage(view))
  return text.slice(text.indexOf('<main'), text.indexOf('</main>'))
}

describe('conversationPage', () => {
  it.each(Object.keys(STATES))(
    '%s has one h1, unique ids and no dangling reference',
    async (name) => {
      const text = String(await conversationPage(STATES[name] as ConversationView))
      expect(text.match(/<h1/g)).toHaveLength(1)
      const ids = [...text.matchAll(/\sid="([^"]+)"/g)].map(([, id]) => id)
      expect(ids).toEqual([...new Set(ids)])
      const pointed = [
        ...text.matchAll(/(?:aria-describedby|aria-labelledby|\sfor|\slist)="([^"]+)"/g),
      ]
      expect(pointed.length).toBeGreaterThan(0)
      for (const [, list = ''] of pointed) {
        for (const id of list.split(' ')) expect(ids).toContain(id)
      }
    },
  )

  it('carries the case in every form, so that a plain post loses nothing', async () => {
    const text = await main(viewWith())
    const forms = text.match(/<form[\s\S]*?<\/form>/g) ?? []
    expect(forms.length).toBeGreaterThanOrEqual(3)
    for (const form of forms) {
      expect(form).toContain('method="post" action="/"')
      expect(form).toContain('name="state" value="v=1&amp;bore=4.03in"')
      expect(form).toContain('name="units" value="us"')
      expect(form).toContain('name="fact" value="boost"')
    }
  })

  it('sends the typed answer on Enter: its button stands before "I don’t know"', async () => {
    const text = await main(viewWith())
    expect(text.indexOf('type="submit">Answer')).toBeGreaterThan(-1)
    expect(text.indexOf('type="submit">Answer')).toBeLessThan(text.indexOf('name="know"'))
  })

  it.each([
    ['us', 'psi'],
    ['metric', 'bar'],
  ] as const)('offers every unit, the usual one of %s chosen', async (units, chosen) => {
    const text = await main(viewWith({ units }))
    const offered = [...text.matchAll(/type="radio" name="unit" value="([^"]+)"( checked)?/g)]
    expect(offered.map(([, unit]) => unit).sort()).toEqual(['bar', 'kPa', 'psi'])
    expect(offered.filter(([, , checked]) => checked).map(([, unit]) => unit)).toEqual([chosen])
  })

  it('ties a refusal to the field, keeps what was typed, and leads to it', async () => {
    const text = await main(STATES.refused as ConversationView)
    expect(text).toMatch(
      /<input[^>]*id="answer"[^>]*value="-8"[^>]*aria-describedby="answer-error [^"]*"[^>]*aria-invalid="true"/,
    )
    expect(text).toMatch(/value="bar" checked/)
    expect(text).toContain(
      '<a href="#answer">Highest boost: “-8 bar” does not fit; give 0 to 90 psi.',
    )
  })

  it('says in words, not by outline alone, how each fact came to be known', async () => {
    const text = await main(viewWith())
    for (const heading of ['You said', 'Worked out from it', 'Assumed for now', 'Set aside']) {
      expect(text).toContain(heading)
    }
    for (const state of ['said', 'derived', 'assumed', 'parked']) {
      expect(text).toContain(`class="chip is-${state}"`)
    }
  })

  it('offers "unknown" once, as the button that says what is assumed', async () => {
    const text = await main(STATES.choice as ConversationView)
    expect(text).not.toContain('name="choice" value="unknown"')
    expect(text).toMatch(/name="know" value="no"[^>]*aria-describedby="assumes"/)
    expect(text).toContain('your answer now')
  })

  it('escapes all that a person may have written', async () => {
    const nasty = '"><script>alert(1)</script>'
    const text = String(
      await conversationPage(
        viewWith({
          typed: nasty,
          exchanges: [
            { fact: 'bore', question: nasty, answer: nasty, origin: 'said', changeHref: '/' },
          ],
          question: questionWith({ value: nasty }),
          problems: [{ field: nasty, code: 'unknown-fact', found: nasty, fits: nasty }],
          contradictions: [{ title: nasty, text: nasty }],
        }),
      ),
    )
    expect(text).not.toContain('<script>alert')
  })

  it('sets the words of a contradiction, and shows no marks of them', async () => {
    const view = viewWith({
      contradictions: [{ title: 'Boost', text: 'Said **0 psi** of boost.' }],
    })
    const text = String(await conversationPage(view))
    expect(text).toContain('Said <strong>0 psi</strong> of boost.')
  })

  it('says how many questions are needed first', async () => {
    expect(await main(viewWith({ needed: 3, left: 20 }))).toContain('3 questions are needed first')
    expect(await main(viewWith({ needed: 1, left: 20 }))).toContain(
      'The last question that is needed',
    )
  })

  it('numbers the operations in tens and folds all but the last two', async () => {
    const text = await main(viewWith())
    expect([...text.matchAll(/class="op" aria-hidden="true">(\d+)</g)].map(([, n]) => n)).toEqual([
      '10',
      '20',
      '30',
      '40',
    ])
    expect(text).toContain('<summary>The answer before</summary>')
  })

  it('shows no call and no way to stop before there is one', async () => {
    const text = await main(viewWith({ sofar: null }))
    expect(text).toContain('No call yet')
    expect(text).not.toContain('Stop here')
  })

  it('sets a what-if beside the present call, both figures of each row', async () => {
    const text = await main(STATES['what-if'] as ConversationView)
    expect(text).toMatch(/Hold margin<\/th><td[^>]*>1\.32<\/td><td[^>]*>0\.96<\/td>/)
    expect(text).toContain('href="/?v=1&amp;boost=12psi"')
    expect(text).not.toContain('no call yet')
  })

  it('calls nothing a call in a what-if where the panel beside it has none yet', async () => {
    const { compare } = STATES['what-if'] as ConversationView
    if (!compare) throw new Error('the view has no what-if')
    const text = await main(viewWith({ sofar: null, compare: { ...compare, notYet: 'both' } }))
    expect(text).toContain('No call yet')
    expect(text).toContain('Neither side is a call yet.')
    expect(text.match(/,<br>if the assumptions hold<\/h3>/g)).toHaveLength(2)
  })
})
