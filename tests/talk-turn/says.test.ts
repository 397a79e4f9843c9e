import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readAnswers } from '../../shared/answers.ts'
import type { Assessment } from '../../shared/assessment.ts'
import { renderMarkdown } from '../../src/pages/markdown.ts'
import { callMayShow } from '../../src/talk/call-so-far.ts'
import { plainInMarkdown } from '../../src/talk/markdown-text.ts'
import { replyTo } from '../../src/talk/reply.ts'
import { says } from '../../src/talk/says.ts'
import { EMPTY_TALK, type TalkState } from '../../src/talk/state.ts'
import { answerTurn, messageTurn } from '../../src/talk/turn.ts'
import { rulebook } from '../support/app.ts'
import { reader } from '../support/reader.ts'
import { sampleAssessment } from '../support/sample-assessment.ts'

const talk = (raw: Record<string, unknown>): TalkState => ({
  ...EMPTY_TALK,
  answers: readAnswers(raw).answers,
})

const BOOSTED = talk({ induction: 'turbocharged', boost: '12 psi' })

describe('what the guide says', () => {
  it('says back what it took, in the person’s own unit', () => {
    const turn = answerTurn(rulebook, EMPTY_TALK, 'bore', { value: 102.4, unit: 'mm' })
    expect(says({ before: EMPTY_TALK, turn })).toBe('Taken: **bore** 102.4 mm.')
  })

  it('says what is kept aside, and why nothing vanished', () => {
    const turn = answerTurn(rulebook, BOOSTED, 'induction', 'naturally-aspirated')
    expect(says({ before: BOOSTED, turn })).toContain('Kept aside until it counts again: boost.')
  })

  it('ends with the question and why it is asked', () => {
    const turn = answerTurn(rulebook, EMPTY_TALK, 'use', 'drag')
    const said = says({
      before: EMPTY_TALK,
      turn,
      call: 'Keep them.',
      next: { ask: 'How long?', why: 'It matters.' },
    })
    expect(said.endsWith('The call so far: Keep them.\n\n**How long?** It matters.')).toBe(true)
  })

  it('tells undo from a change, and says when there is nothing to undo', () => {
    const changed = answerTurn(rulebook, BOOSTED, 'boost', { value: 9, unit: 'psi' }).state
    const turn = messageTurn({ rulebook, reader }, changed, 'undo', undefined)
    expect(says({ before: changed, turn })).toContain('Taken back: **boost** 12')
    const idle = messageTurn({ rulebook, reader }, BOOSTED, 'undo', undefined)
    expect(says({ before: BOOSTED, turn: idle })).toContain('There is nothing to take back')
  })

  it('says so when a what-if is how it stands', () => {
    const turn = messageTurn({ rulebook, reader }, BOOSTED, 'what if I ran 12 psi?', undefined)
    const compared = { present: 'Keep.', supposed: 'Keep.', isCall: true }
    expect(says({ before: BOOSTED, turn, compared })).toContain('That is how it stands already')
  })
})

describe('a person’s words in Markdown', () => {
  it('make no element, link or emphasis, whatever they are', () => {
    const piece = fc.oneof(
      fc.constantFrom(
        '<',
        '>',
        '[a](/b)',
        '*',
        '_',
        '`',
        '~',
        '|',
        '&lt;',
        '&',
        '\\',
        'http://a.b',
        'www.a.b',
        'a@b.cd',
        '![x](y)',
        '\n\n',
        '- ',
        '# ',
        '1. ',
      ),
      fc.string({ unit: 'binary', maxLength: 5 }),
    )
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 12 }), (pieces) => {
        const html = renderMarkdown(`Not used: “${plainInMarkdown(pieces.join(''))}”.`)
        expect(html.match(/<\/?[a-z]+/g)).toEqual(['<p', '</p'])
      }),
      { numRuns: 600 },
    )
  })

  it('read as they were written', () => {
    const html = renderMarkdown(`x ${plainInMarkdown('a*b* [c] <d> `e` 6,500 3.48 & "f"')} y`)
    expect(html).toBe('<p>x a*b* [c] &lt;d&gt; `e` 6,500 3.48 &amp; &quot;f&quot; y</p>\n')
  })
})

describe('replies', () => {
  const words = {
    questions: rulebook.questions,
    routes: rulebook.routes,
    explain: (term: string) =>
      term === 'crush' ? { term: 'Crush', text: 'Shells *stand proud*.' } : undefined,
  }
  const reply = (text: string, asking?: 'boost') =>
    replyTo(words, messageTurn({ rulebook, reader }, BOOSTED, text, asking), asking)

  it('give the question’s own reason to a why', () => {
    const asked = rulebook.questions.find(({ fact }) => fact === 'boost')
    expect(reply('why?', 'boost')).toContain(asked?.why)
    expect(reply('why?')).toContain('can still change the call')
  })

  it.each([
    ['do I need studs?', 'keep-caps-add-studs'],
    ['Should I go four bolt?', 'four-bolt-conversion'],
  ])('say why a route that is asked about is not called: %s', (text, route) => {
    const call = sampleAssessment().call
    const why = call.insteadOf.find((one) => one.route === route)?.why
    const turn = messageTurn({ rulebook, reader }, BOOSTED, text, undefined)
    expect(why).toBeTruthy()
    expect(turn.intent).toBe('result')
    expect(replyTo(words, turn, undefined, call)).toContain(why)
  })

  it('say so when the route that is asked about is the call', () => {
    const call = { ...sampleAssessment().call, route: 'girdle' as const }
    const turn = messageTurn({ rulebook, reader }, BOOSTED, 'do I need a girdle?', undefined)
    expect(replyTo(words, turn, undefined, call)).toContain('that is the call')
  })

  it('explain from the glossary, and say when there is no entry', () => {
    expect(reply('what is crush?')).toBe('**Crush.** Shells *stand proud*.')
    expect(reply('what is a hedgehog?')).toContain('no entry')
  })

  it('say nothing to a message that only tells', () => {
    expect(reply('bore 4.03 in')).toBeUndefined()
  })
})

describe('whether the call may show', () => {
  const essential = rulebook.questions.filter((one) => one.essential).map(({ fact }) => fact)
  const needed = (state: 'assumed' | 'not-needed'): Assessment => {
    const assessment = sampleAssessment()
    const entry = { state, value: null, unit: '', text: '' }
    return { ...assessment, build: Object.fromEntries(essential.map((key) => [key, entry])) }
  }
  const all = Object.fromEntries(essential.map((key) => [key, 'unknown']))

  it('waits for every essential answer, and takes “I don’t know” for one', () => {
    expect(essential.length).toBeGreaterThan(3)
    expect(callMayShow(rulebook, all, needed('assumed'))).toBe(true)
    for (const key of essential) {
      const { [key]: _, ...others } = all
      expect(callMayShow(rulebook, others, needed('assumed'))).toBe(false)
    }
  })

  it('does not wait for what is not needed', () => {
    expect(callMayShow(rulebook, {}, needed('not-needed'))).toBe(true)
  })

  it('shows at once that it is withheld', () => {
    const assessment = needed('assumed')
    const call = { ...assessment.call, confidence: 'withheld' as const }
    expect(callMayShow(rulebook, {}, { ...assessment, call })).toBe(true)
  })
})
