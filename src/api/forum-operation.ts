import { z } from 'zod'
import { callPost, postTexts } from '../forum/call-post.ts'
import { saidWords } from '../forum/said-words.ts'
import { safetyWords } from '../pages/safety-words.ts'
import { neededButAssumed } from '../talk/call-so-far.ts'
import { acceptAnswers } from './accept-answers.ts'
import { assessOrRefuse } from './assess-safely.ts'
import { unitsPart } from './body-parts.ts'
import { postOperation } from './operation.ts'
import { originOf } from './origin-of.ts'
import { problemResponse } from './problem-response.ts'
import { rawAnswers } from './read-request.ts'

/** `POST /api/forum`: the call as a text to paste. */
export const forumOperation = postOperation({
  path: '/forum',
  id: 'forum',
  title: 'Say the call for a forum',
  text: 'The call, the three numbers that decide it, what was assumed and the link, as plain text, as Markdown and as BBCode.',
  body: z.strictObject({ answers: rawAnswers, units: unitsPart }),
  response: z.object({
    link: z.string().meta({ description: 'Whole address of the call.' }),
    plain: z.string(),
    markdown: z.string(),
    bbcode: z.string(),
  }),
  examples: [
    {
      name: 'street-engine',
      title: 'A mild street engine',
      body: { answers: { layout: 'v8-cross-plane', bore: '4.03 in', use: 'street' } },
    },
  ],
  async answer(deps, c, { answers: raw, units }) {
    const { rulebook } = deps
    const { answers, problems } = acceptAnswers(rulebook, raw)
    if (problems.length > 0) {
      return problemResponse(c, 400, 'invalid-answers', problems, { kept: { answers } })
    }
    const assessed = await assessOrRefuse(c, rulebook, answers, { system: units })
    if ('refusal' in assessed) return assessed.refusal
    const assessment = assessed.ok
    const system = units === 'metric' ? '&units=metric' : ''
    const link = `${originOf(deps, c)}/call?${assessment.link}${system}`
    const end = safetyWords(deps.content, 'end-of-post')
    const isGuess = neededButAssumed(rulebook, assessment).length > 0
    const post = callPost({ assessment, isGuess, said: saidWords(answers), href: link, end })
    return c.json({ link, ...postTexts(post) })
  },
})
