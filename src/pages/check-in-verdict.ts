import type { MainReport } from '../check-in/check-in.ts'
import type { Verdict } from '../check-in/judge.ts'
import { STANDS } from '../check-in/stands.ts'
import type { Suspect } from '../check-in/suspects.ts'
import { say } from '../rulebook/places.ts'
import { type Measured, measuredQuery } from '../shop-sheet/link-code.ts'
import type { CheckInView } from './check-in.ts'
import { mainsDrawing } from './check-in-drawing.ts'
import { each, type Html, html, NOTHING } from './html.ts'
import { fieldId } from './measured-fields.ts'
import { pageHref } from './page-href.ts'

const TONE: Readonly<Record<Verdict, string>> = {
  pass: 'good',
  'too-near': 'caution',
  'look-again': 'caution',
  'send-back': 'danger',
}

/** A verdict as a badge: told apart by word and outline, not by colour alone. */
export function verdictBadge({ verdict, words, sizeOpen = false }: VerdictShown): Html {
  const tone = verdict === null || (verdict === 'pass' && sizeOpen) ? 'plain' : TONE[verdict]
  return html`<span class="badge ${tone}">${words}</span>`
}

type VerdictShown = Pick<MainReport, 'verdict' | 'words'> & Partial<Pick<MainReport, 'sizeOpen'>>

/** The verdict on the block, why, a picture of the mains, and what has to be cleared up first. */
export function verdictPanel(view: CheckInView): Html {
  const { report } = view
  const { overall, mains } = report
  const isBlank =
    overall.verdict === null &&
    report.suspects.length + report.wrong.length + report.notes.length === 0 &&
    [...mains, ...report.whole].every(({ judged }) => judged.length === 0)
  if (isBlank)
    return html`<p class="soft" id="verdict">${overall.title}. The verdict appears here.</p>`
  return html`<section class="verdict" aria-labelledby="verdict">
<div class="notice ${overall.verdict === null ? 'plain' : TONE[overall.verdict]}"><h2 id="verdict">${overall.title}</h2>
${overall.reasons.length === 0 ? NOTHING : html`<ul>${each(overall.reasons, (reason) => html`<li>${reason}</li>`)}</ul>`}
${overall.advice.length === 0 ? NOTHING : html`<details><summary>What to do about it</summary><ul>${each(overall.advice, (one) => html`<li>${one}</li>`)}</ul></details>`}
${openMains(view)}</div>
${questions(view)}
${measureAgain(view)}
${keptAsMeasured(view)}
${wrongReadings(view)}
${mainsDrawing(report, view.units)}
${report.notes.length === 0 ? NOTHING : html`<ul class="soft">${each(report.notes, (note) => html`<li>${note}</li>`)}</ul>`}
</section>`
}

function openMains({ report: { mains }, rules }: CheckInView): Html {
  const open = mains.filter(({ missing }) => missing.includes('housing'))
  if (open.length === 0 || open.length === mains.length) return NOTHING
  const numbers = open.map(({ main }) => main).join(', ')
  return html`<p class="soft">${say(rules.checkIn.overall.open, { mains: numbers })}</p>`
}

/** Each likely slip as a question, with one press to take what was meant. */
function questions(view: CheckInView): Html {
  const { suspects } = view.report
  const { leftOut } = view.rules.checkIn.slips
  if (suspects.length === 0) return NOTHING
  return html`<div class="notice caution"><h3>Is this what the gauge said?</h3><ul class="suspects">${each(
    suspects,
    (one) =>
      html`<li><p><a href="#${fieldId(one.fields[0] ?? '')}">${one.label}</a>: <span class="figure-text">${one.typed}</span>. ${one.question} ${leftOut}</p>${instead(one, view)}</li>`,
  )}</ul></div>`
}

/** Mains that stand apart, each with what to measure again and one press that says it stands. */
function measureAgain(view: CheckInView): Html {
  const open = view.report.odd.filter(({ confirmed }) => !confirmed)
  if (open.length === 0) return NOTHING
  return html`<div class="notice caution"><h3>Measure again first</h3><ul class="suspects">${each(
    open,
    ({ main, name, cells, judged, confirm }) =>
      html`<li><p><a href="#${fieldId(cells[0] ?? '')}">Main ${main}, ${name}</a>: <span class="figure-text">${judged.text}</span> the middle of the mains. ${judged.advice}</p><p><a class="button screen-only" data-instead href="${withFields(view, { [STANDS]: confirm })}">It was measured again, or is made so: it stands</a></p></li>`,
  )}</ul></div>`
}

/** What was confirmed stays visible, with a way back. */
function keptAsMeasured(view: CheckInView): Html {
  const { odd, kept } = view.report
  const names = [
    ...odd.filter(({ confirmed }) => confirmed).map(({ main, name }) => `main ${main}, ${name}`),
    ...kept.map(
      ({ label, typed }) => `${label.charAt(0).toLowerCase()}${label.slice(1)}, ${typed}`,
    ),
  ]
  if (names.length === 0) return NOTHING
  return html`<p class="soft">Measured again and kept: ${names.join('; ')}. <a class="screen-only" data-instead href="${withFields(view, { [STANDS]: '' })}">Ask again</a></p>`
}

/** One press that takes what was meant, where that is known, and one that keeps what was typed. */
function instead({ instead: other, confirm }: Suspect, view: CheckInView): Html {
  return html`<p>${other ? html`<a class="button screen-only" data-instead href="${withFields(view, other.fields ?? {}, other.unit)}">${meant(other, view)}</a> ` : NOTHING}<a class="button quiet screen-only" data-instead href="${withFields(view, { [STANDS]: confirm })}">It was measured again: it stands</a></p>`
}

function meant(
  { fields = {}, unit }: NonNullable<Suspect['instead']>,
  { rules }: CheckInView,
): string {
  return unit
    ? `Yes, all figures are in ${rules.checkIn.slips.units[unit]}`
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
