import type { Problem } from '../../shared/problem.ts'
import type { Control, Field } from '../worksheets/fields.ts'
import { KINDS, type Kind, type KindId, unitOf } from '../worksheets/kinds.ts'
import { each, type Html, html, NOTHING } from './html.ts'
import type { UnitSystem } from './page-href.ts'
import { fieldProblemWords } from './problem-words.ts'

/** One field of a worksheet's form, with what stands in it. */
export interface FieldView {
  /** Place of the input, such as `bore` or `items.0.low`. */
  readonly path: string
  readonly field: Field<unknown>
  readonly text: string
  readonly problem: Problem | undefined
  readonly units: UnitSystem
}

/** Id of a field, for labels and for the links of the error summary. */
export function fieldId(path: string): string {
  return `in-${path.replaceAll('.', '-')}`
}

/** Label, hint, error and control. */
export function worksheetField(view: FieldView): Html {
  const { path, field, problem } = view
  const id = fieldId(path)
  const optional = field.required ? NOTHING : html` <span class="tag">optional</span>`
  return html`<div class="field">
<label for="${id}">${field.label}${optional}</label>
${field.help ? html`<p class="hint" id="${id}-hint">${field.help}</p>` : NOTHING}
${problem ? html`<p class="error" id="${id}-error"><span class="unseen">Error: </span>${fieldProblemWords(problem)}</p>` : NOTHING}
<div class="control">${control(view, field.control, id)}</div>
</div>
`
}

function control(view: FieldView, kind: Control, id: string): Html {
  if (kind.type === 'choice') return select(view, kind.choices, id)
  if (kind.type === 'money') return money(view, id)
  if (kind.type !== 'quantity') return input(view, id, view.text, kind.type === 'number')
  const { figure, unit } = splitText(view.text, kind.kind, view.units)
  return html`${input(view, id, figure, true)}${unitSelect(view, kind.kind, unit, id)}`
}

function input(
  { path, field, problem }: FieldView,
  id: string,
  text: string,
  decimal: boolean,
): Html {
  const mode = decimal ? html` inputmode="decimal"` : NOTHING
  return html`<input class="${decimal ? 'short' : ''}" id="${id}" name="in.${path}" type="text"${mode} autocomplete="off" spellcheck="false" maxlength="80" value="${text}"${describedBy(id, field, problem)}>`
}

function describedBy(id: string, { help }: Field<unknown>, problem: Problem | undefined): Html {
  const ids = [problem ? `${id}-error` : '', help ? `${id}-hint` : ''].filter((one) => one !== '')
  const invalid = problem ? html` aria-invalid="true"` : NOTHING
  return ids.length > 0 ? html` aria-describedby="${ids.join(' ')}"${invalid}` : invalid
}

function select(
  { path, field, text, problem }: FieldView,
  choices: Readonly<Record<string, string>>,
  id: string,
): Html {
  const none = field.required ? NOTHING : html`<option value="">–</option>`
  return html`<select id="${id}" name="in.${path}"${describedBy(id, field, problem)}>${none}${each(
    Object.entries(choices),
    ([value, words]) =>
      html`<option value="${value}"${value === text ? html` selected` : NOTHING}>${words}</option>`,
  )}</select>`
}

/** A figure and its unit, as two controls show them; a text that is neither stays whole. */
function splitText(
  text: string,
  kind: KindId,
  units: UnitSystem,
): { figure: string; unit: string } {
  const usual = (KINDS[kind] as Kind)[units]
  const match = /^([-−+]?[\d.,]+(?:e[-+]?\d+)?)\s*(.*)$/i.exec(text.trim())
  const unit = match && unitOf(kind, match[2] as string)
  return unit ? { figure: match[1] as string, unit } : { figure: text, unit: usual }
}

function unitSelect(
  { path, field, units }: FieldView,
  kind: KindId,
  unit: string,
  id: string,
): Html {
  const { us, metric, units: all } = KINDS[kind] as Kind
  const first = units === 'us' ? us : metric
  const ordered = [first, ...all.filter((one) => one !== first)]
  if (ordered.length === 1) {
    return html`<span class="suffix">${unit}</span><input type="hidden" name="in.${path}.unit" value="${unit}">`
  }
  return html`<label class="unseen" for="${id}-unit">Unit of ${field.label}</label><select class="unit" id="${id}-unit" name="in.${path}.unit">${each(
    ordered,
    (one) => html`<option${one === unit ? html` selected` : NOTHING}>${one}</option>`,
  )}</select>`
}

/** An amount and its currency by its three letters. */
function money(view: FieldView, id: string): Html {
  const match = /^([\d.,]+)\s*([A-Za-z]{3})$/.exec(view.text.trim())
  const [figure, currency] = match ? [match[1] ?? '', match[2] ?? ''] : [view.text, 'USD']
  return html`${input(view, id, figure, true)}<label class="unseen" for="${id}-unit">Currency of ${view.field.label}, as its three letters</label><input class="currency" id="${id}-unit" name="in.${view.path}.unit" value="${currency}" maxlength="3" autocomplete="off" autocapitalize="characters" spellcheck="false">`
}
