import type { Context } from 'hono'
import type { Answers } from '../../shared/answers.ts'
import type { Assessment } from '../../shared/assessment.ts'
import type { Problem } from '../../shared/problem.ts'
import type { AssessOptions } from '../assess.ts'
import type { Rulebook } from '../rulebook/load.ts'
import { assessOnce } from './assess-once.ts'
import { type AtFault, atFault } from './at-fault.ts'
import { type Client, clientOf } from './client.ts'
import { type CasePlace, NoEngineError, ofCase } from './no-engine-error.ts'
import { type Kept, problemResponse } from './problem-response.ts'
import { inTurn } from './take-turns.ts'

/** Which case of a request is assessed, and what was said before it, where it is a change of that. */
export interface CaseAsked {
  readonly place?: CasePlace
  readonly earlier?: Answers | undefined
}

/**
 * Assess answers that were read. Each may be in its range and all of them together
 * still no engine that the equations cover: that is theirs to mend, not a fault of ours.
 */
export async function assessOrProblems(
  c: Context,
  rulebook: Rulebook,
  answers: Answers,
  options: AssessOptions,
  { place, earlier }: CaseAsked = {},
): Promise<{ ok: Assessment } | { problems: readonly Problem[] }> {
  const client = clientOf(c)
  try {
    return { ok: await ofCase(place, assessOnce(rulebook, answers, options, client), earlier) }
  } catch (error) {
    if (!(error instanceof NoEngineError)) throw error
    const found = await atFaultInTurn(rulebook, error, client)
    return { problems: found.map(({ problem }) => problem) }
  }
}

/**
 * The same for a request of one case, with its refusal (422).
 *
 * @param kept - what the refusal says is kept; these answers when left out
 */
export async function assessOrRefuse(
  c: Context,
  rulebook: Rulebook,
  answers: Answers,
  options: AssessOptions,
  { kept = { answers }, ...asked }: CaseAsked & { readonly kept?: Kept } = {},
): Promise<{ ok: Assessment } | { refusal: Response }> {
  const assessed = await assessOrProblems(c, rulebook, answers, options, asked)
  return 'ok' in assessed ? assessed : { refusal: noEngine(c, assessed.problems, kept) }
}

/** The refusal of answers that make no engine. */
export function noEngine(c: Context, problems: readonly Problem[], kept?: Kept): Response {
  return problemResponse(c, 422, 'outside-the-model', problems, { kept })
}

/** {@link atFault} in its turn: it takes some assessments. */
export function atFaultInTurn(
  rulebook: Rulebook,
  error: NoEngineError,
  client: Client,
): Promise<AtFault[]> {
  return inTurn(
    (giveWay) => atFault(rulebook, error, giveWay),
    () => !client?.aborted,
  )
}
