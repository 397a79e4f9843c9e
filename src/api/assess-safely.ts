import type { Context } from 'hono'
import type { Answers } from '../../shared/answers.ts'
import type { Assessment } from '../../shared/assessment.ts'
import type { AssessOptions } from '../assess.ts'
import { DomainError } from '../mechanics/domain-error.ts'
import type { Rulebook } from '../rulebook/load.ts'
import { assessOnce } from './assess-once.ts'
import { clientOf } from './client.ts'
import { outsideTheModel } from './outside-the-model.ts'
import { type Kept, problemResponse } from './problem-response.ts'

/**
 * Assess answers that were read. Each may be in its range and all of them together
 * still no engine that the equations cover: that is refused (422), not a fault of ours.
 *
 * @param kept - what the refusal says is kept; these answers when left out
 */
export async function assessOrRefuse(
  c: Context,
  rulebook: Rulebook,
  answers: Answers,
  options: AssessOptions,
  kept: Kept = { answers },
): Promise<{ ok: Assessment } | { refusal: Response }> {
  try {
    return { ok: await assessOnce(rulebook, answers, options, clientOf(c)) }
  } catch (error) {
    if (!(error instanceof DomainError)) throw error
    const problems = outsideTheModel(error, answers)
    const refusal = problemResponse(c, 422, 'outside-the-model', problems, { kept })
    return { refusal }
  }
}
