import { type Answer, type Answers, withAnswer } from '../../shared/answers.ts'
import type { FactKey } from '../../shared/fact-keys.ts'
import type { Intent } from '../answers/intents.ts'
import type { MessageReader } from '../answers/read-message.ts'
import type { Understanding } from '../answers/understanding.ts'
import { park } from '../build/relevance.ts'
import type { Rulebook } from '../rulebook/load.ts'
import { EMPTY_TALK, type TalkState } from './state.ts'
import { changedFrom, undone } from './undo.ts'

/** What one message or one answer does to a conversation. */
export interface Turn {
  readonly state: TalkState
  readonly intent: Intent
  /** What a free text was understood to say; undefined for a plain answer. */
  readonly understanding?: Understanding
  /** Answers of a what-if; they are not taken until the person keeps them. */
  readonly supposed?: Answers
  /** What a what-if would bound that keeps to it already, a sentence each, Markdown. */
  readonly alreadyWithin?: readonly string[]
}

/** Take one answer to one fact. */
export function answerTurn(
  { relevance }: Rulebook,
  state: TalkState,
  key: FactKey,
  answer: Answer,
): Turn {
  return {
    state: settled(relevance, state, withAnswer(state.answers, key, answer)),
    intent: 'tell',
  }
}

/**
 * Take one message in a person's own words. Only `tell`, `change`, `dont-know`,
 * `undo` and `restart` change what was said.
 *
 * @param asking - the fact that the last question asked for
 */
export function messageTurn(
  {
    rulebook: { relevance },
    reader,
  }: { readonly rulebook: Rulebook; readonly reader: MessageReader },
  state: TalkState,
  text: string,
  asking: FactKey | undefined,
): Turn {
  const understanding = reader.read(text, {
    answers: state.answers,
    ...(asking === undefined ? {} : { asking }),
  })
  const { intent } = understanding
  const told = merged(state.answers, understanding.facts)
  const same = { state, intent, understanding }
  switch (intent) {
    case 'tell':
    case 'change':
    case 'dont-know':
      return { ...same, state: settled(relevance, state, told) }
    case 'what-if':
      return { ...same, supposed: told }
    case 'undo': {
      const answers = undone(state.answers, state.before)
      return { ...same, state: { ...park(relevance, answers, state.parked), before: new Map() } }
    }
    case 'restart':
      return { ...same, state: EMPTY_TALK }
    default:
      return Object.keys(understanding.facts).length > 0
        ? { ...same, state: settled(relevance, state, told) }
        : same
  }
}

function merged(answers: Answers, facts: Understanding['facts']): Answers {
  return (Object.entries(facts) as [FactKey, Answer][]).reduce(
    (all, [key, answer]) => withAnswer(all, key, answer),
    answers,
  )
}

/** The state after new answers: some park, some come back, and the turn can be undone. */
function settled(relevance: Rulebook['relevance'], state: TalkState, answers: Answers): TalkState {
  const before = changedFrom(state.answers, answers)
  return { ...park(relevance, answers, state.parked, new Set(before.keys())), before }
}
