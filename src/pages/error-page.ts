import type { Problem } from '../../shared/problem.ts'
import { each, type Html, html, NOTHING } from './html.ts'
import { page } from './layout.ts'
import { pageHref, type UnitSystem } from './page-href.ts'
import { problemWords } from './problem-words.ts'

export interface ErrorView {
  readonly units: UnitSystem
  /** The case, so that nothing the person said is lost. */
  readonly link: string
  readonly path: string
  readonly title: string
  /** What happened and what helps, in a sentence or two. */
  readonly text: string
  readonly problems?: readonly Problem[]
}

/** A page for what could not be done; it never shows more of the cause than `text` says. */
export function errorPage({ units, link, path, title, text, problems = [] }: ErrorView): Html {
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
${problems.length > 0 ? html`<ul>${each(problems, (problem) => html`<li>${problemWords(problem)}</li>`)}</ul>` : NOTHING}
<div class="actions">
<a class="button primary" href="${pageHref('/', link, units)}">${link === '' ? 'Go to the guide' : 'Back to the guide, with your answers'}</a>
</div>
</div>`,
  })
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
