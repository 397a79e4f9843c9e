import type { Answers } from '../../shared/answers.ts'
import { DomainError } from '../mechanics/domain-error.ts'

/** Which of several cases in one request is meant: the sides of a comparison, or a what-if. */
export type CasePlace = 'a' | 'b' | 'supposed'

/** Answers that fit one by one and make no engine together, with the equation that refused them. */
export class NoEngineError extends DomainError {
  override readonly name = 'NoEngineError'

  /**
   * @param refused - by the equation
   * @param answers - of the very case that was refused
   * @param place - which case of several it is
   * @param earlier - what was said before the change that is refused
   */
  constructor(
    refused: DomainError,
    readonly answers: Answers,
    readonly place?: CasePlace | undefined,
    readonly earlier?: Answers | undefined,
  ) {
    super(refused.argument, refused.found, refused.fits)
  }
}

/**
 * The same work, whose refusal says which case it is about.
 *
 * @param earlier - what was said before, where the case is a change of that
 * @throws {NoEngineError} if the case is no engine
 */
export async function ofCase<T>(
  place: CasePlace | undefined,
  work: Promise<T>,
  earlier?: Answers,
): Promise<T> {
  try {
    return await work
  } catch (error) {
    if (!(error instanceof NoEngineError)) throw error
    throw new NoEngineError(error, error.answers, place, earlier)
  }
}
