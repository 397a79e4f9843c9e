import type { Context } from 'hono'
import type { Rulebook } from '../rulebook/load.ts'
import type { TalkState } from '../talk/state.ts'
import { answerTurn, messageTurn, type Turn } from '../talk/turn.ts'
import { withinBounds } from '../talk/within-bounds.ts'
import { without } from './accept-answers.ts'
import { assessOrRefuse } from './assess-safely.ts'
import { currencyProblems } from './currency.ts'
import type { AppDeps } from './deps.ts'
import { type Example, postOperation } from './operation.ts'
import { problemResponse } from './problem-response.ts'
import { steadyFigures } from './steady-figures.ts'
import { turnAnswer } from './turn.ts'
import { readAnswered, readState, type TurnBody, turnBody } from './turn-body.ts'
import { turnResponse } from './turn-response.ts'

const SO_FAR = {
  induction: 'turbocharged',
  boost: '12 psi',
  use: 'street',
  capFastening: 'two-bolt',
  compressionRatio: 9,
  peakRpm: '6000 rpm',
}

const EXAMPLES: readonly Example[] = [
  {
    name: 'message',
    title: 'A message in plain words',
    body: { text: 'two bolt iron block, turbo, about 12 psi, spin it to 6500' },
  },
  {
    name: 'answer',
    title: 'An answer to the question that was asked',
    body: { answers: SO_FAR, asking: 'stroke', answer: '3.48 in' },
  },
  {
    name: 'what-if',
    title: 'A what-if beside the present call',
    body: { answers: SO_FAR, text: 'what if I ran 18 psi?' },
  },
]

/** `POST /api/turn`: one turn of the conversation. */
export const turnOperation = postOperation({
  path: '/turn',
  id: 'turn',
  title: 'Take a turn of the conversation',
  text: 'The conversation so far and one message or one answer in; the new state, what the guide says, the next question and the call so far out. Send `answers`, `parked` and `before` back with the next turn; nothing is kept here. A what-if commits nothing: `supposed` holds its answers.',
  body: turnBody,
  response: turnResponse,
  examples: EXAMPLES,
  answer,
})

async function answer(deps: AppDeps, c: Context, body: TurnBody): Promise<Response> {
  const { rulebook } = deps
  const { state, problems } = readState(rulebook, body)
  const taken = take(deps, state, body)
  const all = 'problem' in taken ? [...problems, taken.problem] : problems
  const kept = { answers: state.answers, ...(body.parked ? { parked: state.parked } : {}) }
  if ('problem' in taken || all.length > 0) {
    return problemResponse(c, 400, 'invalid-answers', all, { kept })
  }
  let { turn } = taken
  // The last turn is lost if the new answers fit no engine, so the refusal keeps those before it.
  const talking = turn.intent !== 'result'
  const options = { system: body.units, withoutTurningPoints: true, talking }
  const present = await assessOrRefuse(c, rulebook, turn.state.answers, options, {
    kept,
    earlier: state.answers,
  })
  if ('refusal' in present) return present.refusal
  turn = withinBounds(turn, present.ok)
  const supposed =
    turn.supposed &&
    (await assessOrRefuse(c, rulebook, turn.supposed, options, {
      kept,
      place: 'supposed',
      earlier: turn.state.answers,
    }))
  if (supposed && 'refusal' in supposed) return supposed.refusal
  const made = { body, before: state, turn, present: present.ok, supposed: supposed?.ok }
  return c.json(steadyFigures(turnAnswer(deps, made)))
}

function take(deps: AppDeps, state: TalkState, { text, answer: raw, asking }: TurnBody) {
  const { rulebook } = deps
  if (text !== undefined) return { turn: payable(rulebook, messageTurn(deps, state, text, asking)) }
  if (asking === undefined) throw new TypeError('an answer has no question')
  const read = readAnswered(rulebook, asking, raw)
  return 'problem' in read ? read : { turn: answerTurn(rulebook, state, asking, read.ok) }
}

/** The turn without amounts in a currency that has no rate; a message must not be refused for one. */
function payable(rulebook: Rulebook, turn: Turn): Turn {
  const { understanding, state, supposed } = turn
  if (!understanding) return turn
  const problems = currencyProblems(rulebook, understanding.facts)
  if (problems.length === 0) return turn
  const unclear = problems.map(({ found, fits }) => ({ text: found, why: fits }))
  return {
    ...turn,
    understanding: {
      ...understanding,
      facts: without(understanding.facts, problems),
      spans: understanding.spans.filter(({ key }) => !problems.some(({ field }) => field === key)),
      unclear: [...understanding.unclear, ...unclear],
    },
    state: { ...state, answers: without(state.answers, problems) },
    ...(supposed ? { supposed: without(supposed, problems) } : {}),
  }
}
