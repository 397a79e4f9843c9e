import { isField, tableOf } from '../shop-sheet/fields.ts'
import { keptText, type Measured } from '../shop-sheet/link-code.ts'
import { pasteTable } from './paste-table.ts'

/**
 * Measurements out of a form post. Fields that the form has go before what was there; fields that
 * it has not (the sheet asks for fewer) stay.
 */
export function measuredFromForm(form: URLSearchParams, before: Measured): Measured {
  const fields: Record<string, string> = { ...before.fields }
  for (const [name, text] of form) {
    if (!isField(name)) continue
    const kept = keptText(name, text)
    if (kept === '') delete fields[name]
    else fields[name] = kept
  }
  const table = tableOf(form.get('paste-into') ?? '')
  const pasted = form.get('paste') ?? ''
  if (table && pasted.trim() !== '') Object.assign(fields, pasteTable(table, pasted))
  const unit = form.get('m-unit')
  return { unit: unit === 'mm' || unit === 'in' ? unit : before.unit, fields }
}
