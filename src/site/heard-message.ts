import type { Answers } from '../../shared/answers.ts'
import { type FactKey, fact } from '../../shared/fact-keys.ts'
import { printAnswer } from '../../shared/print.ts'
import { assessOnce } from '../api/assess-once.ts'
import type { Client } from '../api/client.ts'
import type { AppDeps } from '../api/deps.ts'
import { ofCase } from '../api/no-engine-error.ts'
import type { Heard } from '../pages/conversation-view.ts'
import { glossaryEntry } from '../pages/glossary.ts'
import { renderMarkdown } from '../pages/markdown.ts'
import { pageHref } from '../pages/page-href.ts'
import { replyTo } from '../talk/reply.ts'
import type { TalkState } from '../talk/state.ts'
import { messageTurn, type Turn } from '../talk/turn.ts'
import { undone } from '../talk/undo.ts'
import { withinBounds } from '../talk/within-bounds.ts'
import { canUse } from './can-use.ts'
import type { GuideExtras } from './guide-view.ts'
import type { RequestView } from './request-view.ts'
import { comparison } from './what-if-view.ts'

/**
 * Parameter with the message that led to a link, so that reload, back and a copied
 * address read it back again. It changes nothing: the answers in the link count.
 */
export const SAID = 'said'
/** Percent-encoded; a longer message would make an address that servers refuse. */
const LONGEST_SAID = 6000
const CHANGES = new Set<Turn['intent']>(['tell', 'change', 'dont-know'])

/** The message that a link carries, if it does. */
export function saidIn({ other }: RequestView): string | undefined {
  return other.get(SAID) || undefined
}

/** The parameters that carry a message and the question it answered. */
export function saidParameters(text: string, asking: FactKey | undefined): Record<string, string> {
  if (new URLSearchParams({ [SAID]: text }).toString().length > LONGEST_SAID) return {}
  return { ...(asking ? { ask: asking } : {}), [SAID]: text }
}

/** What a message did, from the link it led to. */
export function turnSaid(
  deps: AppDeps,
  state: TalkState,
  text: string,
  asking: FactKey | undefined,
): Turn {
  const before = { ...state, answers: undone(state.answers, state.before) }
  const turn = messageTurn(deps, before, text, asking)
  return CHANGES.has(turn.intent) ? turn : messageTurn(deps, state, text, asking)
}

/** Whether a message gave or asked anything that the guide understands. */
export function isAnswered(
  deps: AppDeps,
  request: RequestView,
  turn: Turn,
  asking: FactKey | undefined,
): boolean {
  const { understanding } = turn
  if (Object.keys(understanding?.facts ?? {}).length > 0) return true
  return replyHtml(deps, turn, asking, request) !== undefined
}

/** A message, what it did, the question it answered, and who waits for the answer. */
interface Message {
  readonly turn: Turn
  readonly text: string
  readonly asking: FactKey | undefined
  readonly client: Client
}

/** What the page says back to a message: facts taken, words left, the reply, a what-if. */
export async function heardFrom(
  deps: AppDeps,
  request: RequestView,
  { turn: taken, text, asking, client }: Message,
): Promise<GuideExtras> {
  const turn = taken.understanding?.atMost
    ? withinBounds(taken, await assessed(deps, request, request.answers, client))
    : taken
  const { intent, understanding, supposed } = turn
  if (leavesAll(deps, turn, text)) {
    return { heard: { accepted: [], unclear: [], reply: LEFT }, asking }
  }
  const unclear = understanding?.unclear ?? []
  const hasFacts = supposed !== undefined && Object.keys(understanding?.facts ?? {}).length > 0
  const compare = hasFacts ? await beside(deps, request, supposed, client) : undefined
  const same = hasFacts && !compare ? '<p>That is how it stands already.</p>' : undefined
  const heard: Heard = {
    accepted: accepted(turn, request, text),
    unclear,
    reply: replyHtml(deps, turn, asking, request) ?? same,
  }
  const nothing = heard.accepted.length === 0 && heard.reply === undefined && !compare
  // A what-if answers for itself; only what is left out of it needs saying beside it.
  const whole = compare !== undefined && unclear.length === 0 && !turn.alreadyWithin
  return {
    ...(whole
      ? {}
      : { heard: nothing ? { ...heard, canUse: canUse(deps.rulebook, asking) } : heard }),
    compare,
    ...(intent === 'why' || intent === 'explain' || supposed ? { asking } : {}),
  }
}

const LEFT = '<p>Left as it stands: nothing is changed.</p>'

/** "Leave it as it stands": told, and nothing told with it. */
function leavesAll({ reader }: AppDeps, { understanding }: Turn, text: string): boolean {
  return Object.keys(understanding?.facts ?? {}).length === 0 && reader.leavesSupposed(text)
}

function replyHtml(
  { rulebook, content }: AppDeps,
  turn: Turn,
  asking: FactKey | undefined,
  { link, units }: RequestView,
): string | undefined {
  const explain = (words: string) => glossaryEntry(content, words)
  const reply = replyTo({ ...rulebook, explain }, turn, asking)
  const localHref = (href: string): string => pageHref(href, link, units)
  return reply === undefined ? undefined : renderMarkdown(reply, { localHref })
}

/** Only what the link does hold: its answers count, not the words beside them. */
function accepted(
  { understanding, supposed }: Turn,
  { answers }: RequestView,
  text: string,
): Heard['accepted'] {
  if (!understanding || supposed) return []
  return understanding.spans.flatMap(({ key, start, end }) => {
    const answer = understanding.facts[key]
    if (answer === undefined || JSON.stringify(answers[key]) !== JSON.stringify(answer)) return []
    const words = text.slice(start, end)
    return [{ key, short: fact(key).short, text: printAnswer(key, answer), words }]
  })
}

/** A case as a comparison needs it; the present one is assessed once. */
function assessed({ rulebook }: AppDeps, { units }: RequestView, answers: Answers, client: Client) {
  return assessOnce(rulebook, answers, { system: units, withoutWhatIf: true }, client)
}

async function beside(
  deps: AppDeps,
  request: RequestView,
  supposed: NonNullable<Turn['supposed']>,
  client: Client,
) {
  const present = await assessed(deps, request, request.answers, client)
  const then = assessed(deps, request, supposed, client)
  const other = await ofCase('supposed', then, request.answers)
  return comparison(deps.rulebook, request, present, { answers: supposed, assessment: other })
}
