import { z } from 'zod'
import { readAnswer } from '../../shared/answers.ts'
import { type FactKey, isFactKey } from '../../shared/fact-keys.ts'
import { describeFound, type Problem } from '../../shared/problem.ts'
import type { Rulebook } from '../rulebook/load.ts'
import type { TalkState } from '../talk/state.ts'
import { acceptAnswers } from './accept-answers.ts'
import { factKey, messageText, unitsPart } from './body-parts.ts'
import { rawAnswers } from './read-request.ts'

const ONE = 'give either text or answer, not both'

/** One turn of a conversation: where it stands, and what the person says. */
export const turnBody = z
  .strictObject({
    answers: rawAnswers.default({}),
    parked: rawAnswers
      .optional()
      .meta({ description: 'As the last turn gave it: answers that do not count now.' }),
    before: z
      .record(z.string(), z.unknown())
      .optional()
      .meta({ description: 'As the last turn gave it: what undo takes back; null for no answer.' }),
    text: messageText.optional(),
    answer: z
      .unknown()
      .optional()
      .meta({ description: 'An answer to the fact in `asking`, in any form that answers take.' }),
    asking: factKey.optional(),
    units: unitsPart,
  })
  .superRefine((body, context) => {
    const [text, answer] = [body.text !== undefined, body.answer !== undefined]
    const wrong = (path: string, message: string) =>
      context.addIssue({ code: 'custom', path: [path], message })
    if (text && answer) wrong('answer', ONE)
    if (!text && !answer) wrong('text', ONE)
    if (answer && body.asking === undefined) wrong('asking', 'name the fact that is answered')
  })
export type TurnBody = z.output<typeof turnBody>

/** The conversation so far, with a problem for each part of it that cannot be used. */
export function readState(
  rulebook: Rulebook,
  { answers: raw, parked: rawParked = {}, before: rawBefore = {} }: TurnBody,
): { state: TalkState; problems: Problem[] } {
  const answers = acceptAnswers(rulebook, raw)
  const parked = acceptAnswers(rulebook, rawParked, 'parked.')
  const problems = [...answers.problems, ...parked.problems]
  const before = new Map()
  for (const [key, value] of Object.entries(rawBefore)) {
    const read = readBefore(rulebook, key, value)
    if ('problem' in read) problems.push({ ...read.problem, field: `before.${describeFound(key)}` })
    else before.set(key as FactKey, read.ok)
  }
  return { state: { answers: answers.answers, parked: parked.answers, before }, problems }
}

function readBefore(rulebook: Rulebook, key: string, value: unknown) {
  if (isFactKey(key) && value === null) return { ok: undefined }
  const { answers, problems } = acceptAnswers(rulebook, { [key]: value })
  const problem = problems[0]
  return problem ? { problem } : { ok: answers[key as FactKey] }
}

/** The answer of a body that has one. */
export function readAnswered(
  rulebook: Rulebook,
  key: FactKey,
  raw: unknown,
): ReturnType<typeof readAnswer> {
  const read = readAnswer(key, raw)
  if ('problem' in read) return read
  const problem = acceptAnswers(rulebook, { [key]: raw }).problems[0]
  return problem ? { problem } : read
}
