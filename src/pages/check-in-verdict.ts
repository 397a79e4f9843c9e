import type { MainReport } from '../check-in/check-in.ts'
import { type VerdictCase, verdictWords } from '../check-in/goes-back.ts'
import type { Verdict } from '../check-in/judge.ts'
import type { OddMeasure } from '../check-in/odd-mains.ts'
import { STANDS } from '../check-in/stands.ts'
import { type Suspect, UNIT_WORDS } from '../check-in/suspects.ts'
import { type Measured, measuredQuery } from '../shop-sheet/link-code.ts'
import type { CheckInView } from './check-in.ts'
import { mainsDrawing } from './check-in-drawing.ts'
import { each, type Html, html, NOTHING } from './html.ts'
import { fieldId } from './measured-fields.ts'
import { pageHref } from './page-href.ts'

const TONE: Readonly<Record<Verdict, string>> = {
  pass: 'good',
  'look-again': 'caution',
  'send-back': 'danger',
}

const MEASURE_WORDS: Readonly<Record<OddMeasure, string>> = {
  housing: 'housing bore',
  journal: 'journal',
  shell: 'shell wall',
  clearance: 'clearance',
}

/** A verdict as a badge: told apart by word and outline, not by colour alone. */
export function verdictBadge(one: Pick<VerdictCase, 'verdict'> & Partial<VerdictCase>): Html {
  return html`<span class="badge ${toneOf(one)}">${verdictWords(one)}</span>`
}

function toneOf({ verdict, sizeOpen }: Parameters<typeof verdictBadge>[0]): string {
  return verdict === null || (verdict === 'pass' && sizeOpen) ? 'plain' : TONE[verdict]
}

/** The verdict on the block, why, a picture of the mains, and what has to be cleared up first. */
export function verdictPanel(view: CheckInView): Html {
  const { report } = view
  const { overall, mains } = report
  const isBlank =
    overall.verdict === null &&
    report.suspects.length + report.wrong.length === 0 &&
    [...mains, ...report.whole].every(({ judged }) => judged.length === 0)
  if (isBlank)
    return html`<p class="soft" id="verdict">Nothing is measured yet. The verdict appears here.</p>`
  return html`<section class="verdict" aria-labelledby="verdict">
<div class="notice ${overall.verdict === null ? 'plain' : TONE[overall.verdict]}"><h2 id="verdict">${overall.title}</h2>
${overall.reasons.length === 0 ? NOTHING : html`<ul>${each(overall.reasons, (reason) => html`<li>${reason}</li>`)}</ul>`}
${overall.advice.length === 0 ? NOTHING : html`<details><summary>What to do about it</summary><ul>${each(overall.advice, (one) => html`<li>${one}</li>`)}</ul></details>`}
${openMains(mains)}</div>
${questions(view)}
${measureAgain(view)}
${keptAsMeasured(view)}
${wrongReadings(view)}
${mainsDrawing(report, view.units)}
${report.notes.length === 0 ? NOTHING : html`<ul class="soft">${each(report.notes, (note) => html`<li>${note}</li>`)}</ul>`}
</section>`
}

function openMains(mains: readonly MainReport[]): Html {
  const open = mains.filter(({ missing }) => missing.includes('housing bore'))
  if (open.length === 0 || open.length === mains.length) return NOTHING
  return html`<p class="soft">Housing not measured, or in question: main ${open.map(({ main }) => main).join(', ')}.</p>`
}

/** Each likely slip as a question, with one press to take what was meant. */
function questions(view: CheckInView): Html {
  const { suspects } = view.report
  if (suspects.length === 0) return NOTHING
  return html`<div class="notice caution"><h3>Is this what the gauge said?</h3><ul class="suspects">${each(
    suspects,
    (one) =>
      html`<li><p><a href="#${fieldId(one.fields[0] ?? '')}">${one.label}</a>: <span class="figure-text">${one.typed}</span>. ${one.question} It is left out until then.</p>${instead(one, view)}</li>`,
  )}</ul></div>`
}

/** Mains that stand apart, each with what to measure again and one press that says it stands. */
function measureAgain(view: CheckInView): Html {
  const open = view.report.odd.filter(({ confirmed }) => !confirmed)
  if (open.length === 0) return NOTHING
  return html`<div class="notice caution"><h3>Measure again first</h3><ul class="suspects">${each(
    open,
    ({ main, measure, cells, judged, confirm }) =>
      html`<li><p><a href="#${fieldId(cells[0] ?? '')}">Main ${main}, ${MEASURE_WORDS[measure]}</a>: <span class="figure-text">${judged.text}</span> the middle of the mains. ${judged.advice}</p><p><a class="button screen-only" data-instead href="${withFields(view, { [STANDS]: confirm })}">It was measured again, or is made so: it stands</a></p></li>`,
  )}</ul></div>`
}

/** What was confirmed stays visible, with a way back. */
function keptAsMeasured(view: CheckInView): Html {
  const { odd, kept } = view.report
  const names = [
    ...odd
      .filter(({ confirmed }) => confirmed)
      .map(({ main, measure }) => `main ${main}, ${MEASURE_WORDS[measure]}`),
    ...kept.map(
      ({ label, typed }) => `${label.charAt(0).toLowerCase()}${label.slice(1)}, ${typed}`,
    ),
  ]
  if (names.length === 0) return NOTHING
  return html`<p class="soft">Measured again and kept: ${names.join('; ')}. <a class="screen-only" data-instead href="${withFields(view, { [STANDS]: '' })}">Ask again</a></p>`
}

/** One press that takes what was meant, where that is known, and one that keeps what was typed. */
function instead({ instead: other, confirm }: Suspect, view: CheckInView): Html {
  return html`<p>${other ? html`<a class="button screen-only" data-instead href="${withFields(view, other.fields ?? {}, other.unit)}">${meant(other)}</a> ` : NOTHING}<a class="button quiet screen-only" data-instead href="${withFields(view, { [STANDS]: confirm })}">It was measured again: it stands</a></p>`
}

function meant({ fields = {}, unit }: NonNullable<Suspect['instead']>): string {
  return unit
    ? `Yes, all figures are in ${UNIT_WORDS[unit]}`
    : `Yes, take ${Object.values(fields).join(', ')}`
}

/** This check-in with some fields changed. */
function withFields(
  { measured, link, units }: CheckInView,
  fields: Readonly<Record<string, string>>,
  unit: Measured['unit'] = measured.unit,
): string {
  const changed = { unit, fields: { ...measured.fields, ...fields } }
  const full = [link, measuredQuery(changed)].filter((part) => part !== '').join('&')
  return pageHref('/check-in', full, units)
}

function wrongReadings({ report }: CheckInView): Html {
  if (report.wrong.length === 0) return NOTHING
  return html`<div class="notice danger"><h3>Not read</h3><ul>${each(report.wrong, ({ field, label, text }) => html`<li><a href="#${fieldId(field)}">${label}</a>: ${text}.</li>`)}</ul></div>`
}
