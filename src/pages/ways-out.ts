import { fact, isFactKey } from '../../shared/fact-keys.ts'
import type { Problem } from '../../shared/problem.ts'
import { each, type Html, html, NOTHING } from './html.ts'
import { pageHref, type UnitSystem } from './page-href.ts'
import { problemWords } from './problem-words.ts'

/** A link that leads on from a page for what could not be done. */
export interface Way {
  readonly text: string
  readonly href: string
  /** Never the one in the foreground. */
  readonly plain?: boolean
}

/** A problem, and links by which a person mends it. */
export interface Mending {
  readonly problem: Problem
  readonly ways: readonly Way[]
}

/**
 * Answers of a link that were left out, each with the way to give it again.
 *
 * @param link - the case without them
 */
export function toAnswerAgain(
  problems: readonly Problem[],
  { link, units }: { readonly link: string; readonly units: UnitSystem },
): Mending[] {
  return problems.map((problem) => {
    const { field } = problem
    if (!isFactKey(field)) return { problem, ways: [] }
    const text = `Answer ${fact(field).short} again`
    return { problem, ways: [{ text, href: pageHref('/', link, units, { ask: field }) }] }
  })
}

/** Problems one below the other, each with its own links. */
export function mendingList(mendings: readonly Mending[]): Html {
  return html`<ul class="mendings">${each(
    mendings,
    ({ problem, ways }) => html`<li><p>${problemWords(problem)}</p>
${ways.length > 0 ? html`<p>${each(ways, ({ text, href }, at) => html`${at > 0 ? ' · ' : ''}<a href="${href}">${text}</a>`)}</p>` : NOTHING}</li>
`,
  )}</ul>`
}

/** One of the ways as a button, the first of them in the foreground. */
export function wayOf({ text, href, plain = false }: Way, at: number): Html {
  return html`<a class="button${at === 0 && !plain ? ' primary' : ''}" href="${href}">${text}</a>
`
}
