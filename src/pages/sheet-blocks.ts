import type { Block, Pair, SheetSection, SheetTable, Tick } from '../shop-sheet/blocks.ts'
import { each, type Html, html, NOTHING } from './html.ts'
import { capMapDrawing } from './sheet-cap-map.ts'

/** One section of the sheet as a page. */
export function sectionView({ id, title, blocks }: SheetSection): Html {
  return html`<section class="sheet-section sheet-${id}" aria-labelledby="${id}"><h2 id="${id}">${title}</h2>
${blocks.map(blockView)}</section>
`
}

function blockView(block: Block): Html {
  switch (block.kind) {
    case 'text':
      return html`<p class="${block.tone === 'note' ? 'sheet-note' : block.tone === 'caution' ? 'sheet-caution' : ''}">${block.text}</p>`
    case 'ticks':
      return block.numbered
        ? html`<ol class="ticks numbered">${each(block.items, tick)}</ol>`
        : html`<ul class="ticks">${each(block.items, tick)}</ul>`
    case 'pairs':
      return html`<dl class="sheet-pairs">${each(block.rows, pair)}</dl>`
    case 'table':
      return table(block.table)
    case 'cap-map':
      return capMapDrawing(block.map)
    case 'sign-off':
      return html`<ul class="sign-off">${each(block.lines, (words) => html`<li><span>${words}</span><span class="write wide"><span class="tag">Name</span></span><span class="write"><span class="tag">Date</span></span></li>`)}</ul>`
  }
}

function tick({ text, note, fill }: Tick): Html {
  return html`<li><span class="tick-box" aria-hidden="true"></span><div><span class="tick-text">${text}</span>${note === undefined ? NOTHING : html`<span class="tick-note">${note}</span>`}${fill === undefined ? NOTHING : html`<span class="write wide"><span class="unseen">to be answered</span></span>`}</div></li>
`
}

function pair({ label, value, unit = '', note }: Pair): Html {
  const said = value === null ? blank(unit) : html`<span class="figure-text">${value}</span>`
  return html`<div><dt>${label}</dt><dd>${said}${note === undefined ? NOTHING : html`<span class="tick-note">${note}</span>`}</dd></div>
`
}

/** A line to write on; a screen reader hears that it is blank. */
function blank(unit: string): Html {
  return html`<span class="write"><span class="unseen">blank to fill</span></span>${unit === '' ? NOTHING : html` <span class="tag">${unit}</span>`}`
}

function table({ caption, head, rows, numbers }: SheetTable): Html {
  const isNumber = (at: number) => numbers === true && at > 1 && at < head.length - 1
  const blanks = rows.some((row) => row.includes(null))
  return html`<div class="table-scroll" role="region" aria-label="${caption}" tabindex="0"><table class="sheet-table${blanks ? ' to-fill' : ''}">
<caption>${caption}</caption>
<thead><tr>${each(head, (name, at) => html`<th scope="col"${isNumber(at) ? html` class="number"` : NOTHING}>${name}</th>`)}</tr></thead>
<tbody>${each(
    rows,
    (row) => html`<tr>${each(row, (cell, at) => tableCell(cell, at, isNumber(at)))}</tr>
`,
  )}</tbody></table></div>`
}

function tableCell(cell: string | null, at: number, isNumber: boolean): Html {
  if (at === 0) return html`<th scope="row">${cell ?? ''}</th>`
  if (cell === null) return html`<td><span class="unseen">blank</span></td>`
  return html`<td${isNumber ? html` class="number"` : NOTHING}>${cell}</td>`
}
