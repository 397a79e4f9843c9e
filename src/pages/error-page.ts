import type { Problem } from '../../shared/problem.ts'
import { each, type Html, html, NOTHING } from './html.ts'
import { page } from './layout.ts'
import { pageHref, shopPart, type UnitSystem } from './page-href.ts'
import { type Mending, mendingList, toAnswerAgain, type Way, wayOf } from './ways-out.ts'

export interface ErrorView {
  readonly units: UnitSystem
  /** The case, so that nothing the person said is lost. */
  readonly link: string
  readonly path: string
  readonly title: string
  /** What happened and what helps, in a sentence or two. */
  readonly text: string
  /** Answers that were left out of the case. */
  readonly problems?: readonly Problem[]
  /** Problems of the case itself, with the ways to mend each. */
  readonly mendings?: readonly Mending[]
  /** Where to go from here, the likeliest first; to the guide with the case when left out. */
  readonly ways?: readonly Way[]
}

/** A page for what could not be done; it never shows more of the cause than `text` says. */
export function errorPage(view: ErrorView): Html {
  const { units, link, path, title, text, problems = [] } = view
  const mendings = view.mendings ?? toAnswerAgain(problems, view)
  return page({
    title,
    description: text,
    path,
    units,
    link,
    noindex: true,
    body: html`<div class="card">
<div class="card-head"><h1>${title}</h1></div>
<p class="lede">${text}</p>
${mendings.length > 0 ? mendingList(mendings) : NOTHING}
<div class="actions">
${each(view.ways ?? usualWays(view), wayOf)}
</div>
</div>`,
  })
}

function usualWays({ units, link, problems = [] }: ErrorView): Way[] {
  const text = link === '' ? 'Go to the guide' : 'Back to the guide, with your answers'
  const back = { text, href: pageHref('/', link, units) }
  const isNew = link === shopPart(link)
  return problems.length === 0 || isNew ? [back] : [back, startAnew(link, units)]
}

/** The guide without an answer, in the frame that the page stands in. */
export function startAnew(link: string, units: UnitSystem): Way {
  return { text: 'Start anew', href: pageHref('/', shopPart(link), units), plain: true }
}

/** For a fault of ours: nothing of the cause is shown, and the answers are kept. */
export function faultPage({
  id,
  ...view
}: Pick<ErrorView, 'units' | 'link' | 'path'> & { readonly id?: string }): Html {
  const name = id === undefined ? '' : ` If you report it, name ${id}.`
  return errorPage({
    ...view,
    title: 'Something broke on our side',
    text: `The guide could not finish this page. Your answers are in the link and are not lost. Try again in a moment; if it happens again, leave out the last answer.${name}`,
  })
}
