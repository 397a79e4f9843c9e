import { inputsToQuery } from '../worksheets/form-input.ts'
import { each, type Html, html, NOTHING, raw } from './html.ts'
import { page } from './layout.ts'
import { pageHref } from './page-href.ts'
import { fieldProblemWords } from './problem-words.ts'
import { worksheetAnswer } from './worksheet-answer.ts'
import { fieldId } from './worksheet-field.ts'
import { worksheetForm } from './worksheet-form.ts'
import type { WorksheetView } from './worksheet-view.ts'

/** The page of one worksheet: inputs, then the figures with their working. */
export function worksheetPage(view: WorksheetView): Html {
  const { sheet, units, link, outcome, origin } = view
  const own = origin === 'given' ? inputsToQuery(view.raw) : ''
  return page({
    title: sheet.title,
    description: sheet.summary,
    path: `/worksheets/${sheet.name}`,
    units,
    // The units switch keeps what stands in the form.
    link: [link, own].filter((part) => part !== '').join('&'),
    noindex: origin === 'given',
    wide: true,
    body: html`<div class="page-head"><p class="kicker"><a href="${pageHref('/worksheets', link, units)}">Worksheets</a></p>
<h1>${sheet.title}</h1><p class="lede">${sheet.summary}</p></div>
${errorSummary(view)}
<div class="worksheet">
<section aria-labelledby="inputs" class="worksheet-inputs"><h2 id="inputs">Figures</h2>
${originNote(view)}${'ok' in outcome ? html`<p class="to-result"><a href="#results">To the result</a></p>` : NOTHING}${worksheetForm(view)}</section>
${'ok' in outcome ? worksheetAnswer(outcome.ok, outcome.picture) : NOTHING}
</div>
${explanation(view)}`,
  })
}

function originNote({ origin, hasCase, sheet, link, units }: WorksheetView): Html {
  if (origin === 'example') {
    return html`<p class="note">Filled in with an invented example. Put your own figures in its place.</p>`
  }
  if (origin === 'build') {
    return html`<p class="note">Filled in from your build, its assumptions included. Nothing that you change here changes the build.</p>`
  }
  if (!hasCase) return NOTHING
  return html`<p><a class="button quiet" href="${pageHref(`/worksheets/${sheet.name}`, link, units)}">Start from my build</a></p>`
}

function errorSummary({ outcome, sheet }: WorksheetView): Html {
  if (!('problems' in outcome)) return NOTHING
  return html`<div class="notice danger" role="alert" tabindex="-1" id="errors"><h2>Some figures cannot be used</h2><ul>${each(
    outcome.problems,
    (problem) =>
      html`<li>${labelLink(sheet.fields, problem.field)}: ${fieldProblemWords(problem)}</li>`,
  )}</ul></div>`
}

/** A link to the field; a name that is none of the worksheet's stands as it is. */
function labelLink(fields: WorksheetView['sheet']['fields'], path: string): Html {
  if (!Object.hasOwn(fields, path.split('.')[0] ?? '')) return html`${path}`
  return html`<a href="#${fieldId(path)}">${labelOf(fields, path)}</a>`
}

/** The label of an input by its place, such as `items.0.low`. */
function labelOf(fields: WorksheetView['sheet']['fields'], path: string): string {
  const [key = '', index, ...rest] = path.split('.')
  const field = fields[key]
  if (!field) return path
  if (field.control.type !== 'list' || index === undefined) return field.label
  const inner = rest.length > 0 ? `, ${labelOf(field.control.fields, rest.join('.'))}` : ''
  return `${field.control.row} ${Number(index) + 1}${inner}`
}

function explanation({ content, sheet, link, units }: WorksheetView): Html {
  const document = content.document(`worksheets/${sheet.name}.md`)
  if (!document) return NOTHING
  const localHref = (href: string): string => pageHref(href, link, units)
  return html`<div class="prose worksheet-words">${raw(document.render({ localHref }))}</div>`
}
