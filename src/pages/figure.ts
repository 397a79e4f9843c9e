import { evenDecimals } from '../../shared/even-decimals.ts'
import { type Html, html } from './html.ts'

/** A table of texts: caption, heads, rows. */
export interface DataTable {
  /** What the rows are. */
  caption: string
  head: readonly string[]
  /** The first cell of a row names it. */
  rows: readonly (readonly string[])[]
}

/** A picture with its caption and its figures as a table, folded away until wanted. */
export function figure(view: {
  id: string
  picture: Html | readonly Html[]
  caption: string | Html
  table: DataTable
  classes?: string
}): Html {
  const { id, picture, caption, table, classes = '' } = view
  return html`<figure class="figure ${classes}" id="${id}">
${picture}
<figcaption>${caption}</figcaption>
<details class="figures"><summary>The figures as a table<span class="unseen">: ${table.caption}</span></summary>
${dataTable(table)}</details>
</figure>`
}

/** A table that scrolls sideways on a narrow screen; each column's figures have equal decimals. */
export function dataTable({ caption, head, rows }: DataTable): Html {
  const [corner = '', ...columns] = head
  const even = head.map((_, at) => evenDecimals(rows.map((row) => row[at] ?? '')))
  return html`<div class="table-scroll" role="region" aria-label="${caption}" tabindex="0"><table>
<caption>${caption}</caption>
<thead><tr><th scope="col">${corner}</th>${columns.map((name) => html`<th scope="col">${name}</th>`)}</tr></thead>
<tbody>${rows.map((row, index) => tableRow(row.map((cell, at) => even[at]?.[index] ?? cell)))}</tbody></table></div>`
}

function tableRow([name = '', ...cells]: readonly string[]): Html {
  return html`<tr><th scope="row">${name}</th>${cells.map((cell) => html`<td>${cell}</td>`)}</tr>
`
}
