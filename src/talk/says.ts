import { type Answer, UNKNOWN } from '../../shared/answers.ts'
import { FACT_KEYS, type FactKey, fact } from '../../shared/fact-keys.ts'
import { printAnswer } from '../../shared/print.ts'
import { visibleWords } from '../../shared/visible.ts'
import { plainInMarkdown } from './markdown-text.ts'
import type { TalkState } from './state.ts'
import type { Turn } from './turn.ts'

/** What the guide has to say after a turn, beside what the turn itself did. */
export interface ToSay {
  readonly before: TalkState
  readonly turn: Turn
  /** Answer to a why or a what-is, Markdown. */
  readonly reply?: string | undefined
  /** Calls with and without what was supposed, in a sentence each, and whether they may show yet. */
  readonly compared?:
    | { readonly present: string; readonly supposed: string; readonly isCall: boolean }
    | undefined
  readonly call?: string | undefined
  readonly next?: { readonly ask: string; readonly why: string } | undefined
}

/** The guide's part of the conversation after one turn, Markdown: what it heard, the reply, the call so far, the next question. */
export function says({ before, turn, reply, compared, call, next }: ToSay): string {
  return [
    heard(before, turn),
    moved(before, turn),
    unclear(turn),
    reply,
    supposed(turn, compared),
    call === undefined ? undefined : `The call so far: ${call}`,
    next === undefined ? undefined : `**${next.ask}** ${next.why}`,
  ]
    .filter((part) => part !== undefined && part !== '')
    .join('\n\n')
}

function heard(before: TalkState, { intent, state }: Turn): string {
  if (intent === 'restart') return 'All answers are cleared.'
  const changed = changedKeys(before, state)
  if (intent === 'undo') {
    return changed.length === 0
      ? 'There is nothing to take back.'
      : `Taken back: ${changed.map((key) => named(key, state.answers[key])).join('; ')}.`
  }
  const taken = changed.filter((key) => state.answers[key] !== undefined)
  if (taken.length === 0) return ''
  return `Taken: ${taken.map((key) => named(key, state.answers[key])).join('; ')}.`
}

function changedKeys(before: TalkState, after: TalkState): FactKey[] {
  return FACT_KEYS.filter(
    (key) => JSON.stringify(before.answers[key]) !== JSON.stringify(after.answers[key]),
  )
}

function named(key: FactKey, answer: Answer | undefined): string {
  const { short } = fact(key)
  if (answer === undefined) return `${short} open again`
  return answer === UNKNOWN ? `${short} not known` : `**${short}** ${plain(key, answer)}`
}

function plain(key: FactKey, answer: Answer): string {
  return plainInMarkdown(printAnswer(key, answer))
}

/** Answers that stopped counting, so that nobody wonders where they went. */
function moved(before: TalkState, { intent, state }: Turn): string {
  if (intent === 'restart') return ''
  const aside = FACT_KEYS.filter(
    (key) => state.parked[key] !== undefined && before.parked[key] === undefined,
  )
  if (aside.length === 0) return ''
  const names = aside.map((key) => fact(key).short).join(', ')
  return `Kept aside until it counts again: ${names}.`
}

function unclear({ understanding }: Turn): string {
  const words = understanding?.unclear ?? []
  return words
    .map((one) => `Not used: “${quoted(visibleWords(one.text))}”, ${quoted(one.why)}.`)
    .join('\n\n')
}

function quoted(text: string): string {
  return plainInMarkdown(text.replace(/\.$/, ''))
}

function supposed(
  { supposed: answers, state, alreadyWithin }: Turn,
  compared: ToSay['compared'],
): string {
  if (!answers || !compared) return ''
  const changes = FACT_KEYS.flatMap((key) => {
    const answer = answers[key]
    const same = JSON.stringify(answer) === JSON.stringify(state.answers[key])
    return answer === undefined || same ? [] : [named(key, answer)]
  })
  if (changes.length === 0) return alreadyWithin ? '' : 'That is how it stands already.'
  return `With ${changes.join(', ')}: ${compared.supposed}\n\nAs it stands: ${compared.present}\n\n${compared.isCall ? '' : 'There is no call yet: usual figures stand in for answers that it rests on. '}Nothing of it is taken until you keep it.`
}
