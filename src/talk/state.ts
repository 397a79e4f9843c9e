import { type Answers, readAnswer } from '../../shared/answers.ts'
import { isFactKey } from '../../shared/fact-keys.ts'
import type { Problem } from '../../shared/problem.ts'
import { answerText, fromQuery, toQuery } from '../../shared/share-link.ts'
import type { Before } from './undo.ts'

/** A conversation: what counts, what is parked, what the last turn changed. All of it is in the link. */
export interface TalkState {
  readonly answers: Answers
  readonly parked: Answers
  readonly before: Before
}

/** A conversation in which nothing was said yet. */
export const EMPTY_TALK: TalkState = { answers: {}, parked: {}, before: new Map() }

/** Parameter that remembers what a fact was before the last turn: `was.boost=10psi`, empty for nothing. */
const WAS = 'was.'

/** The conversation in a link; broken parts are named and the rest is kept. */
export function talkFromQuery(query: string): {
  state: TalkState
  problems: readonly Problem[]
  other: ReadonlyMap<string, string>
  version: string | undefined
} {
  const link = fromQuery(query)
  const before: [keyof Answers, Answers[keyof Answers]][] = []
  const other = new Map(link.other)
  for (const [name, text] of link.other) {
    if (!name.startsWith(WAS)) continue
    other.delete(name)
    const key = name.slice(WAS.length)
    if (!isFactKey(key)) continue
    const read = text === '' ? { ok: undefined } : readAnswer(key, text)
    if ('ok' in read) before.push([key, read.ok])
  }
  const { answers, parked, problems, version } = link
  return { state: { answers, parked, before: new Map(before) }, problems, other, version }
}

/** The link of a conversation. */
export function talkToQuery({ answers, parked, before }: TalkState, version: string): string {
  const was = [...before].map(([key, answer]) => {
    const text = answer === undefined ? '' : encodeURIComponent(answerText(answer))
    return `${WAS}${key}=${text}`
  })
  const bare = Object.keys(answers).length + Object.keys(parked).length + was.length === 0
  return bare ? '' : [toQuery(answers, version, parked), ...was].join('&')
}
