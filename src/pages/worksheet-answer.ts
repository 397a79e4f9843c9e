import type { Source } from '../../shared/assessment.ts'
import { printFixed, printNumber } from '../../shared/print.ts'
import type { WorksheetAnswer } from '../worksheets/input.ts'
import type { Picture } from '../worksheets/picture.ts'
import type { Result, Step } from '../worksheets/worksheet.ts'
import { dataTable } from './figure.ts'
import { each, type Html, html, NOTHING } from './html.ts'
import { worksheetPicture } from './worksheet-picture.ts'

/** Figures, what to mind of them, picture, and the working step by step. */
export function worksheetAnswer(answer: WorksheetAnswer, picture: Picture): Html {
  return html`<section aria-labelledby="results" class="worksheet-answer">
<h2 id="results" tabindex="-1">Result</h2>
<dl class="key-figures">${each(answer.results, keyFigure)}</dl>
${answer.notes.length > 0 ? html`<h2>Mind</h2><ul>${each(answer.notes, (note) => html`<li>${note}</li>`)}</ul>` : NOTHING}
${worksheetPicture(picture)}
<h2 id="working">Working</h2>
<ol class="working">${each(answer.steps, workingStep)}</ol>
${answer.series && answer.series.length <= MOST_CURVES ? html`<details class="figures"><summary>The curves as tables</summary>${each(answer.series, seriesTable)}</details>` : NOTHING}
</section>`
}

function keyFigure({ label, text }: Result): Html {
  return html`<div><dt class="tag">${label}</dt><dd><span class="value">${text}</span></dd></div>
`
}

function workingStep({ title, formula, withNumbers, result, source }: Step): Html {
  return html`<li><h3>${title}</h3>
<p class="formula">${formula}</p>
<p class="formula with-numbers"><span class="unseen">With the numbers: </span>${withNumbers}</p>
<p class="formula outcome"><span class="unseen">Result: </span>${result}</p>
<p class="hint">${sourceWords(source)}</p></li>
`
}

function sourceWords({ kind, cite }: Source): string {
  const words = {
    published: cite,
    practice: `Common practice: ${cite}`,
    memory: `${cite} (from memory)`,
    computed: cite,
    said: 'As given',
  }[kind]
  return /memory.*memory/i.test(words) ? cite : words
}

/** More curves than this are the API's alone: the picture has its own table. */
const MOST_CURVES = 2

/** Most rows of a curve that a person is shown; the API gives all. */
const MOST_ROWS = 37

function seriesTable({ label, x, y }: NonNullable<WorksheetAnswer['series']>[number]): Html {
  const every = Math.max(1, Math.ceil(x.values.length / MOST_ROWS))
  const decimals = decimalsFor(y.values)
  const rows = x.values
    .map((at, index) => [printNumber(at, 2), printFixed(y.values[index] ?? 0, decimals)])
    .filter((_, index) => index % every === 0)
  return dataTable({
    caption: label,
    head: [`${x.label}, ${x.unit}`, `${y.label}, ${y.unit}`],
    rows,
  })
}

/** Decimals that give the greatest value of a curve four figures; the others line up with it. */
function decimalsFor(values: readonly number[]): number {
  const most = Math.max(...values.map(Math.abs), 1e-6)
  return Math.min(6, Math.max(0, 3 - Math.floor(Math.log10(most))))
}
