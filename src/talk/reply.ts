import { type FactKey, fact, isFactKey } from '../../shared/fact-keys.ts'
import type { AppDeps } from '../api/deps.ts'
import { glossary } from '../pages/glossary.ts'
import { renderMarkdown } from '../pages/markdown.ts'
import { pageHref, type UnitSystem } from '../pages/page-href.ts'
import type { Turn } from './turn.ts'

interface Place {
  readonly link: string
  readonly units: UnitSystem
}

/**
 * What the guide says to a message that asks something: safe HTML from content/
 * and the questions' own words. Undefined when the message only told something.
 */
export function replyTo(
  deps: Pick<AppDeps, 'rulebook' | 'content'>,
  turn: Turn,
  asking: FactKey | undefined,
  place: Place,
): string | undefined {
  const topic = turn.understanding?.topic
  if (turn.intent === 'why') return whyAsked(deps, asNamed(topic) ?? asking)
  if (turn.intent === 'explain') return explained(deps, topic, asking, place)
  if (turn.intent === 'dont-know' && asking) {
    return renderMarkdown(`Then the guide assumes something usual for it and says so in the call.`)
  }
  return undefined
}

function asNamed(topic: string | undefined): FactKey | undefined {
  return topic !== undefined && isFactKey(topic) ? topic : undefined
}

function whyAsked({ rulebook }: Pick<AppDeps, 'rulebook'>, key: FactKey | undefined): string {
  if (!key)
    return renderMarkdown('Every question asked is one whose answer can still change the call.')
  const question = rulebook.questions.find((one) => one.fact === key)
  return renderMarkdown(
    `**${question?.ask ?? fact(key).label}** ${question?.why ?? ''} ${fact(key).help}`,
  )
}

function explained(
  { content }: Pick<AppDeps, 'content'>,
  topic: string | undefined,
  asking: FactKey | undefined,
  { link, units }: Place,
): string {
  const localHref = (href: string): string => pageHref(href, link, units)
  const key = asNamed(topic) ?? (topic === undefined ? asking : undefined)
  if (key) {
    const { label, help, measure } = fact(key)
    return renderMarkdown(
      `**${label}.** ${help}\n\n${measure}\n\n[How to find it, step by step](/learn/measuring#${key})`,
      { localHref },
    )
  }
  const words = (topic ?? '').toLowerCase()
  const document = content.document('glossary.md')
  const entries = document ? glossary(document.text, { localHref }) : []
  const found = entries.find(
    ({ term, also, slug }) =>
      slug === words || [term, ...also].some((name) => name.toLowerCase() === words),
  )
  if (!found) {
    return renderMarkdown('I have no entry for that. [All explanations and the glossary](/learn)', {
      localHref,
    })
  }
  return `<p><strong>${found.term}.</strong></p>${found.html}`
}
