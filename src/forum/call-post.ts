import {
  type Assessment,
  type Assumption,
  type RouteReport,
  toFindOut,
} from '../../shared/assessment.ts'
import { printMoney } from '../../shared/print.ts'
import { surenessText } from '../pages/call-so-far.ts'
import { marginText, spreadText } from '../pages/margin-bars.ts'
import { moneyRange } from '../pages/money-range.ts'
import { weakestMargin } from '../pages/weakest-margin.ts'
import { asBbcode } from './as-bbcode.ts'
import { asMarkdown } from './as-markdown.ts'
import { asPlain } from './as-plain.ts'
import type { Item, Part, Post, PostTexts } from './post.ts'

/** Assumptions that are named; the link has them all. */
const MOST_ASSUMED = 6

/** What a post is made from. */
export interface CallCase {
  readonly assessment: Assessment
  /** Whether the call rests on assumed answers that a call needs. */
  readonly isGuess: boolean
  /** What the person said, in words, such as "bore 4.03 in". */
  readonly said: readonly string[]
  /** Whole address of the call. */
  readonly href: string
  /** Who comes before the guide: the last line. */
  readonly end: string
}

/** A post in the three ways that forums read. */
export function postTexts(post: Post): PostTexts {
  return { plain: asPlain(post), markdown: asMarkdown(post), bbcode: asBbcode(post) }
}

/** The call, how sure it is, the three numbers that decide it, what was assumed, and the link. */
export function callPost({ assessment, isGuess, said, href, end }: CallCase): Post {
  const { call } = assessment
  return [
    { kind: 'heading', text: `Main caps: ${call.title}` },
    { kind: 'line', text: call.sentence },
    { kind: 'line', text: surenessText({ ...call, isGuess }) },
    ...(call.confidence === 'withheld' ? contradictions(assessment) : callNumbers(assessment)),
    ...shownCautions(assessment),
    { kind: 'line', text: `Build: ${said.join('; ')}.` },
    ...assumed(assessment),
    { kind: 'link', text: 'The whole call, with every answer to change', href },
    { kind: 'line', text: end },
  ]
}

/** The three numbers that decide: the weakest margin as it is, how often it holds, what it costs. */
export function callNumbers({ routes, call, cost }: Assessment): Part[] {
  const keep = routes.find(({ id }) => id === 'keep-caps-and-bolts')
  const called = routes.find(({ id }) => id === call.route)
  if (!keep || !called) return []
  const items: Item[] = [
    marginItem(keep, called),
    { name: 'Holds in', text: holdsText(keep, called) },
    { name: 'Likely cost', text: costText(cost) },
  ]
  return [{ kind: 'list', items }]
}

function marginItem(keep: RouteReport, called: RouteReport): Item {
  const { name, spread } = weakestMargin(keep.margins)
  const then = weakestMargin(called.margins)
  const after =
    called.id === keep.id
      ? ''
      : `; with the called route ${then.name.toLowerCase()} ${marginText(then.spread.likely)}`
  return {
    name: 'Weakest margin as it is',
    text: `${name.toLowerCase()} ${spreadText(spread)}, 1 is just enough${after}`,
  }
}

function holdsText(keep: RouteReport, called: RouteReport): string {
  const needed = `${called.neededHoldsIn} needed`
  if (called.id === keep.id) return `${keep.holdsIn} of 100 sampled cases as it is (${needed})`
  return `${called.holdsIn} of 100 sampled cases with the called route (${needed}), ${keep.holdsIn} as it is`
}

function costText({ low, likely, high, currency, stake, stakeState }: Assessment['cost']): string {
  const money = (amount: number): string => printMoney(amount, currency)
  const how = stakeState === 'said' ? '' : ', assumed'
  const range = low === high ? '' : ` (${moneyRange({ low, high }, currency)})`
  return `${money(likely)}${range}, against ${money(stake)} at stake${how}`
}

function contradictions({ contradictions: found }: Assessment): Part[] {
  return [{ kind: 'list', items: found.map(({ title }) => ({ name: '', text: title })) }]
}

/** Cautions and dangers by their titles; notes stay with the call. */
export function shownCautions({ cautions: all }: Assessment): Part[] {
  const grave = all.filter(({ severity }) => severity !== 'note')
  if (grave.length === 0) return []
  const items = grave.map(({ severity, title }) => ({
    name: severity === 'danger' ? 'Danger' : 'Caution',
    text: title,
  }))
  return [
    { kind: 'line', text: 'Mind this first:' },
    { kind: 'list', items },
  ]
}

/** What to find out first, then all that can still change the call, then the rest. */
export function heaviestFirst(assessment: Assessment): Assumption[] {
  return [...new Set([...toFindOut(assessment), ...assessment.assumptions])]
}

function assumed(assessment: Assessment): Part[] {
  const { assumptions } = assessment
  if (assumptions.length === 0) return [{ kind: 'line', text: 'Nothing had to be assumed.' }]
  const named = heaviestFirst(assessment).slice(0, MOST_ASSUMED)
  const left = assumptions.length - named.length
  return [
    { kind: 'line', text: 'Assumed, because nobody said it:' },
    {
      kind: 'list',
      items: [
        ...named.map(({ label, text, matters }) => ({
          name: label,
          text:
            matters === 'alone' || matters === 'with-others'
              ? `${text}, and it could still change the call`
              : text,
        })),
        ...(left > 0 ? [{ name: '', text: `and ${left} more that weigh less` }] : []),
      ],
    },
  ]
}
