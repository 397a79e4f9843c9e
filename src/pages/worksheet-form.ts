import type { Problem } from '../../shared/problem.ts'
import type { Control, Field } from '../worksheets/fields.ts'
import { textsOf } from '../worksheets/form-input.ts'
import type { InputGroup } from '../worksheets/worksheet.ts'
import { each, type Html, html, NOTHING } from './html.ts'
import { fieldId, worksheetField } from './worksheet-field.ts'
import type { WorksheetView } from './worksheet-view.ts'

/** The form: it sends its figures as a link, so it needs no script and can be shared. */
export function worksheetForm(view: WorksheetView): Html {
  const { sheet, link, units } = view
  const kept = [...new URLSearchParams(link)]
  return html`<form class="worksheet-form" method="get" action="/worksheets/${sheet.name}#results" novalidate>
${each(kept, ([name, value]) => html`<input type="hidden" name="${name}" value="${value}">`)}
${units === 'metric' ? html`<input type="hidden" name="units" value="metric">` : NOTHING}
${each(sheet.groups, (group) => inputGroup(view, group))}
<div class="actions"><button class="button primary" type="submit">Work it out</button></div>
</form>`
}

function problemsOf({ outcome }: WorksheetView): readonly Problem[] {
  return 'problems' in outcome ? outcome.problems : []
}

function inputGroup(view: WorksheetView, { title, fields, folded }: InputGroup): Html {
  const texts = textsOf(view.raw)
  const inside = fields.flatMap((key) => {
    const field = view.sheet.fields[key]
    return field ? [oneField(view, key, field, texts)] : []
  })
  if (!folded) return html`<fieldset class="inputs"><legend>${title}</legend>${inside}</fieldset>`
  const used = fields.some((key) => [...texts.keys()].some((path) => path.split('.')[0] === key))
  const wrong = problemsOf(view).some(({ field }) => fields.includes(field.split('.')[0] ?? ''))
  const open = used || wrong ? html` open` : NOTHING
  return html`<details class="inputs"${open}><summary>${title}</summary><fieldset><legend class="unseen">${title}</legend>${inside}</fieldset></details>`
}

function oneField(
  view: WorksheetView,
  path: string,
  field: Field<unknown>,
  texts: ReadonlyMap<string, string>,
): Html {
  const { control } = field
  if (control.type === 'list') return listField(view, path, field, texts, control)
  const problem = problemsOf(view).find(
    (one) => one.field === path || (one.field.startsWith(`${path}.`) && control.type === 'thread'),
  )
  return worksheetField({ path, field, problem, text: texts.get(path) ?? '', units: view.units })
}

type ListControl = Extract<Control, { type: 'list' }>

/** The rows that are filled and one more, up to the most there may be. */
function listField(
  view: WorksheetView,
  path: string,
  field: Field<unknown>,
  texts: ReadonlyMap<string, string>,
  control: ListControl,
): Html {
  const { rows, row } = control
  const given = view.raw[path]
  const filled = Array.isArray(given) ? given.length : 0
  const problem = problemsOf(view).find((one) => one.field === path)
  const shown = Math.min(rows, Math.max(1, filled + 1))
  const numbers = Array.from({ length: shown }, (_, index) => index)
  return html`<div class="list-field" id="${fieldId(path)}" tabindex="-1">
${field.help ? html`<p class="hint">${field.help}</p>` : NOTHING}
${problem ? html`<p class="error"><span class="unseen">Error: </span>${field.label}: ${problem.fits}.</p>` : NOTHING}
${each(numbers, (index) => listRow(view, `${path}.${index}`, `${row} ${index + 1}`, control, texts, index >= filled && filled > 0))}</div>`
}

function listRow(
  view: WorksheetView,
  path: string,
  title: string,
  { fields, open }: ListControl,
  texts: ReadonlyMap<string, string>,
  spare: boolean,
): Html {
  const inside = Object.entries(fields).map(([key, field]): [boolean, Html] => [
    open.includes(key),
    oneField(view, `${path}.${key}`, field, texts),
  ])
  const wrong = problemsOf(view).some(({ field }) => field.startsWith(`${path}.`))
  const needed = inside.filter(([shown]) => shown).map(([, one]) => one)
  const more = inside.filter(([shown]) => !shown).map(([, one]) => one)
  const rest =
    more.length > 0
      ? html`<details${wrong ? html` open` : NOTHING}><summary>More of it<span class="unseen">: ${title}</span></summary>${more}</details>`
      : NOTHING
  const body = html`<fieldset class="list-row"><legend>${title}</legend>${needed}${rest}</fieldset>`
  return spare ? html`<details><summary>Add: ${title}</summary>${body}</details>` : body
}
