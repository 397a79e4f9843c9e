import type { ShopSheet } from '../shop-sheet/blocks.ts'
import type { Measured } from '../shop-sheet/link-code.ts'
import { type Html, html, NOTHING } from './html.ts'
import { page } from './layout.ts'
import { serviceFields, unitChoice, type Wrong } from './measured-fields.ts'
import { pageHref, type UnitSystem } from './page-href.ts'
import { caseFields } from './question-form.ts'
import { sectionView } from './sheet-blocks.ts'
import { qrDrawing } from './sheet-qr.ts'

export interface SheetView {
  readonly sheet: ShopSheet
  readonly units: UnitSystem
  /** The case, without measurements. */
  readonly link: string
  /** The case with the person's service data. */
  readonly fullLink: string
  readonly measured: Measured
  readonly wrong: Wrong
  /** This sheet's own address, with its origin. */
  readonly address: string
  /** Where the call is only likely, in a sentence. */
  readonly hedge: string | undefined
  /** Where nothing can draw a PDF. */
  readonly withoutPdf?: boolean
}

/** The machine-shop sheet as a page that prints as it stands. */
export function sheetPage(view: SheetView): Html {
  const { sheet, units, fullLink, address, hedge } = view
  return page({
    title: sheet.title,
    description: sheet.sentence,
    path: '/sheet',
    units,
    link: fullLink,
    wide: true,
    noindex: true,
    scripts: ['check-in.js'],
    body: html`<article class="shop-sheet">
<header class="sheet-head"><div><span class="kicker">For the machine shop</span>
<h1>${sheet.title}</h1><p class="lede">${sheet.sentence}</p>
${sheet.nothingToDo === undefined ? NOTHING : html`<p>${sheet.nothingToDo}</p>`}${hedge === undefined ? NOTHING : html`<p class="sheet-note">${hedge}</p>`}
${actions(view)}</div>
<div class="back-to">${qrDrawing(address)}<p class="tag"><a href="${pageHref('/sheet', fullLink, units)}">Back to this very case</a><span class="print-only address">${address}</span></p></div></header>
${serviceForm(view)}
${sheet.sections.map(sectionView)}
<p class="tag">Rulebook ${sheet.rulebook}. An estimate by handbook methods; a blank is a blank because nobody has said it yet.</p>
</article>`,
  })
}

function actions({ link, fullLink, units, withoutPdf }: SheetView): Html {
  const pdf = html`<a class="button primary" href="${pageHref('/sheet.pdf', fullLink, units)}">Sheet as PDF</a>
`
  return html`<nav class="actions" aria-label="With this sheet">
${withoutPdf ? NOTHING : pdf}<button type="button" class="button" data-print hidden>Print</button>
<a class="button" href="${pageHref('/check-in', fullLink, units)}">Check in the block when it is back</a>
<a class="button quiet" href="${pageHref('/call', link, units)}">Back to the call</a>
</nav>`
}

function serviceForm({ fullLink, units, measured, wrong }: SheetView): Html {
  return html`<details class="service screen-only"${wrong.length > 0 ? html` open` : NOTHING}><summary>Fill in the blanks you know: service data, supplier’s torque, stamps</summary>
<form method="post" action="/sheet" class="stack">
${caseFields({ link: fullLink, units })}
<p class="hint">Everything is optional and stays in the link. What you leave out stays a blank on the sheet.</p>
${unitChoice(measured.unit)}
${serviceFields(measured, wrong)}
<div class="actions"><button type="submit" class="primary">Put them on the sheet</button></div>
</form></details>`
}
