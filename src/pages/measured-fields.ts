import { type FieldGroup, SERVICE_FIELDS, type SingleField } from '../shop-sheet/fields.ts'
import type { Measured } from '../shop-sheet/link-code.ts'
import { each, type Html, html, NOTHING } from './html.ts'

export type Wrong = readonly { readonly field: string; readonly text: string }[]

/** A field's id in the page. */
export function fieldId(name: string): string {
  return `f-${name.replaceAll('.', '-')}`
}

/** Single fields of some groups as a grid of labelled inputs. */
export function fieldGroup(
  legend: string,
  fields: readonly SingleField[],
  measured: Measured,
  wrong: Wrong,
): Html {
  return html`<fieldset class="field-group"><legend class="label">${legend}</legend>
<div class="field-grid">${each(fields, (field) => fieldView(field, measured, wrong))}</div></fieldset>`
}

function fieldView(field: SingleField, { unit, fields }: Measured, wrong: Wrong): Html {
  const { id, label, kind, choices } = field
  const value = fields[id] ?? ''
  if (choices) {
    return html`<div class="small-field"><label for="${fieldId(id)}">${label}</label>
<select id="${fieldId(id)}" name="${id}"><option value="">Not said</option>${each(Object.entries(choices), ([key, words]) => html`<option value="${key}"${key === value ? html` selected` : NOTHING}>${words}</option>`)}</select></div>`
  }
  const problem = wrong.find((one) => one.field === id)
  const suffix = kind === 'length' ? html` <span class="tag" data-unit>${unit}</span>` : NOTHING
  return html`<div class="small-field"><label for="${fieldId(id)}">${label}${suffix}</label>
<input id="${fieldId(id)}" name="${id}" value="${value}" placeholder=" " ${kind === 'text' ? html`maxlength="80"` : html`inputmode="decimal" maxlength="16"`} autocomplete="off"${problem ? html` aria-invalid="true" aria-describedby="${fieldId(id)}-wrong"` : NOTHING}>
${problem ? html`<p class="error" id="${fieldId(id)}-wrong">${problem.text}</p>` : NOTHING}</div>`
}

/** The unit of all figures that carry none of their own. */
export function unitChoice(unit: Measured['unit']): Html {
  return html`<fieldset class="field"><legend class="label">Figures are in</legend>
<div class="segments">${each(
    ['in', 'mm'] as const,
    (one) =>
      html`<label><input type="radio" name="m-unit" value="${one}"${one === unit ? html` checked` : NOTHING}>${one}</label>`,
  )}</div></fieldset>`
}

const SERVICE_GROUPS: readonly (readonly [FieldGroup, string])[] = [
  ['block', 'The block'],
  ['fasteners', 'The fasteners that stay'],
  ['sizes', 'Sizes from the service data'],
  ['cut', 'For boring and honing'],
  ['limits', 'Limits, where yours differ from common practice'],
]

/** Every field of the person's service data, but for groups that are left out. */
export function serviceFields(
  measured: Measured,
  wrong: Wrong,
  without: readonly FieldGroup[] = [],
): Html[] {
  return SERVICE_GROUPS.filter(([group]) => !without.includes(group)).map(([group, legend]) =>
    fieldGroup(
      legend,
      SERVICE_FIELDS.filter((field) => field.group === group),
      measured,
      wrong,
    ),
  )
}
