import type { Assessment } from '../../shared/assessment.ts'
import { visibleWords } from '../../shared/visible.ts'
import type { MessageReader } from '../answers/read-message.ts'
import { atFault } from '../api/at-fault.ts'
import { currencyProblems } from '../api/currency.ts'
import { NoEngineError } from '../api/no-engine-error.ts'
import { assess } from '../assess.ts'
import { asPlain } from '../forum/as-plain.ts'
import { callNumbers, heaviestFirst, shownCautions } from '../forum/call-post.ts'
import type { Post } from '../forum/post.ts'
import { saidWords } from '../forum/said-words.ts'
import { DomainError } from '../mechanics/domain-error.ts'
import { problemWords } from '../pages/problem-words.ts'
import type { Rulebook } from '../rulebook/load.ts'
import type { AskArguments } from './ask-arguments.ts'

/** What a terminal shows and how the program ends. */
export interface AskResult {
  readonly out: string
  /** Words that were not used, and why: for people, beside the answer. */
  readonly notes: readonly string[]
  readonly code: 0 | 3
}

/** Read a build in free text and answer with its call. */
export async function askAnswer(
  { rulebook, reader }: { readonly rulebook: Rulebook; readonly reader: MessageReader },
  { text, json, units }: AskArguments,
): Promise<AskResult> {
  const { facts, unclear } = reader.read(text, { answers: {} })
  const notes = unclear.map((one) => `not used: “${visibleWords(one.text)}”, ${one.why}`)
  const money = currencyProblems(rulebook, facts).map(({ field, fits }) => `${field}: ${fits}`)
  if (Object.keys(facts).length === 0 || money.length > 0) {
    return { out: '', notes: [...notes, ...money, 'nothing to make a call from'], code: 3 }
  }
  try {
    const assessment = await assess(rulebook, facts, { system: units })
    const code = assessment.call.route === null ? 3 : 0
    if (json) return { out: JSON.stringify(assessment, null, 2), notes, code }
    return { out: asPlain(terminalPost(assessment, saidWords(facts))).trimEnd(), notes, code }
  } catch (error) {
    if (!(error instanceof DomainError)) throw error
    const why = 'these answers make no engine that the equations cover'
    const found = await atFault(rulebook, new NoEngineError(error, facts))
    const where = found.map(({ problem }) => problemWords(problem))
    return { out: '', notes: [...notes, why, ...where], code: 3 }
  }
}

const MOST_ASSUMED = 8
const NEEDED = 'A call needs this first'
const MOST = 'Could change it most'

function terminalPost(assessment: Assessment, said: readonly string[]): Post {
  const { call, contradictions, assumptions, next, link } = assessment
  const standing = contradictions.map(({ title }) => ({ name: '', text: title }))
  const assumed = heaviestFirst(assessment)
    .slice(0, MOST_ASSUMED)
    .map(({ label, text }) => ({ name: label, text }))
  const left = assumptions.length - assumed.length
  const more = left > 0 ? [{ name: '', text: `and ${left} more` }] : []
  return [
    { kind: 'heading', text: `${call.title} (${call.confidence})` },
    { kind: 'line', text: call.sentence },
    ...(standing.length > 0 ? [{ kind: 'list', items: standing } as const] : []),
    ...callNumbers(assessment),
    ...shownCautions(assessment),
    { kind: 'line', text: `Understood: ${said.join('; ')}.` },
    { kind: 'line', text: 'Assumed:' },
    { kind: 'list', items: [...assumed, ...more] },
    ...(next
      ? [{ kind: 'line', text: `${next.needed > 0 ? NEEDED : MOST}: ${next.label}` } as const]
      : []),
    { kind: 'line', text: `/call?${link}` },
  ]
}
