import { toSi } from '../../shared/units.ts'
import { say } from '../rulebook/places.ts'
import { fieldLabel, rowLabel } from '../shop-sheet/field-labels.ts'
import {
  type FieldGroup,
  type GridTable,
  MEASURED_FIELDS,
  SERVICE_FIELDS,
  TABLES,
} from '../shop-sheet/fields.ts'
import { lengthText } from '../shop-sheet/workshop-figures.ts'
import type { CheckInView } from './check-in.ts'
import { each, type Html, html, NOTHING } from './html.ts'
import { fieldGroup, fieldId, serviceFields, unitChoice } from './measured-fields.ts'
import { caseFields } from './question-form.ts'

/** Every field, fullest first: bores, journals, shells, line; then what moved with the axis. */
export function checkInForm(view: CheckInView): Html {
  const { fullLink, units, measured, report } = view
  const singles = (group: FieldGroup, legend: string): Html =>
    fieldGroup(
      legend,
      MEASURED_FIELDS.filter((field) => field.group === group),
      measured,
      report.wrong,
    )
  const hasService = SERVICE_FIELDS.some(({ id }) => measured.fields[id] !== undefined)
  return html`<form method="post" action="/check-in" class="measured stack" data-measured>
${caseFields({ link: fullLink, units })}
<div class="kept notice plain" data-kept hidden></div>
${unitChoice(measured.unit)}
<p class="hint">A figure may carry its own unit (67.09 mm). Paste a block of cells from a spreadsheet into any cell. Enter and the arrows go from cell to cell; Ctrl and Enter judges. Readings are kept in the link, and in this browser until you clear them.</p>
${TABLES.filter(({ rows }) => rows === 'mains').map((table) => grid(table, view))}
${folded('The crank’s ends: axis shift', hasAny(view, 'axis.') || hasAny(view, 'axisFrom'), html`${TABLES.filter(({ rows }) => rows === 'ends').map((table) => grid(table, view))}${singles('axis', 'Which face')}`)}
${folded('Camshaft drive', hasGroup(view, 'drive'), singles('drive', 'Chain or gears'))}
${folded(
  'Deck, gearbox and thrust',
  ['deck', 'gearbox', 'thrust'].some((group) => hasGroup(view, group as FieldGroup)),
  html`${singles('thrust', 'Thrust')}${singles('deck', 'Deck')}${singles('gearbox', 'Gearbox bore: indicator turned with the crank')}`,
)}
${folded('Service data: sizes and limits of your own', hasService, html`${serviceFields(measured, report.wrong, ['fasteners', 'cut'])}`)}
${folded('Your gauges: how far off each may be', hasGroup(view, 'gauges'), html`<p class="hint">${say(view.rules.checkIn.gaugesUnsaid, { gauges: gaugeWords(view) })}</p>${singles('gauges', 'Uncertainty of a size')}`)}
${folded('Paste a whole table', false, pasteBox())}
<div class="actions"><button type="submit" class="primary">Judge the block</button>
<button type="button" class="quiet" data-clear hidden>Clear all readings</button>
<span role="status" class="hint" data-status></span></div>
</form>`
}

function gaugeWords({ rules, measured }: CheckInView): string {
  const units = measured.unit === 'in' ? 'us' : 'metric'
  return Object.values(rules.gauges)
    .map(
      ({ title, size, unit }) =>
        `${title.charAt(0).toLowerCase()}${title.slice(1)} ±${lengthText(toSi(size, unit), units)}`,
    )
    .join('; ')
}

function hasAny({ measured }: CheckInView, start: string): boolean {
  return Object.keys(measured.fields).some((name) => name.startsWith(start))
}

function hasGroup({ measured }: CheckInView, group: FieldGroup): boolean {
  return MEASURED_FIELDS.some(
    (field) => field.group === group && measured.fields[field.id] !== undefined,
  )
}

function folded(title: string, isOpen: boolean, body: Html): Html {
  return html`<details class="more-fields"${isOpen ? html` open` : NOTHING}><summary>${title}</summary>${body}</details>`
}

function grid({ id, title, rows, columns }: GridTable, view: CheckInView): Html {
  const { measured, engine } = view
  const count = rows === 'mains' ? engine.mains : 2
  const places = Array.from({ length: count }, (_, place) => place + 1)
  return html`<fieldset class="grid-entry"><legend class="label">${title} <span class="tag" data-unit>${measured.unit}</span></legend>
<p class="hint">${view.rules.checkIn.how[id].text}</p>
<div class="table-scroll" role="region" aria-label="${title}" tabindex="0"><table data-grid="${id}">
<thead><tr><th scope="col">${rows === 'mains' ? 'Main' : 'End'}</th>${each(columns, ({ label }) => html`<th scope="col">${label}</th>`)}</tr></thead>
<tbody>${each(
    places,
    (row) =>
      html`<tr><th scope="row">${rows === 'mains' ? row : rowLabel(rows, row)}</th>${each(columns, (column) => gridCell(`${id}.${row}.${column.id}`, view))}</tr>
`,
  )}</tbody></table></div></fieldset>`
}

function gridCell(name: string, { measured, report }: CheckInView): Html {
  const isWrong = report.wrong.some(({ field }) => field === name)
  const isAsked =
    report.suspects.some(({ fields }) => fields.includes(name)) ||
    report.odd.some(({ confirmed, cells }) => !confirmed && cells.includes(name))
  return html`<td><input id="${fieldId(name)}" name="${name}" value="${measured.fields[name] ?? ''}" aria-label="${fieldLabel(name)}" inputmode="decimal" maxlength="16" autocomplete="off"${isWrong ? html` aria-invalid="true"` : NOTHING}${isAsked ? html` class="in-question"` : NOTHING}></td>`
}

/** The way to paste without script. */
function pasteBox(): Html {
  return html`<div class="field"><label for="paste-into">Into</label><select id="paste-into" name="paste-into">${each(TABLES, ({ id, title }) => html`<option value="${id}">${title}</option>`)}</select></div>
<div class="field"><label for="paste">Cells: one main a line, cells parted by tabs or semicolons</label><textarea id="paste" name="paste" rows="5" spellcheck="false"></textarea></div>`
}
