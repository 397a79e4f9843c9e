import { fieldLabel } from '../shop-sheet/field-labels.ts'
import { singleField } from '../shop-sheet/fields.ts'
import type { Measured } from '../shop-sheet/link-code.ts'
import type { CheckInReport } from './check-in.ts'
import type { Judged } from './judge.ts'

/**
 * One cell of a comma-separated file. A text that a spreadsheet would take for a formula gets an
 * apostrophe before it; a plain number, negative or not, stays a number.
 *
 * @see RFC 4180 for the quoting; OWASP, CSV injection, for the characters
 */
export function csvCell(text: string): string {
  const plain = text.replaceAll('\u00a0', ' ')
  const isNumber = /^[-−+]?\d+(?:\.\d+)?$/.test(plain)
  // Some readers part cells at semicolons or tabs: what stands after one begins a cell, too.
  const marked = plain.replace(/(^|[;\t])(?=[\s\p{C}"]*[=+\-−@\t\r\n|%＝＋－＠])/gu, "$1'")
  const safe = isNumber ? plain.replace(/^−/, '-') : marked
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe
}

/** Rows as a comma-separated file: UTF-8 with its mark, lines ended as RFC 4180 has them. */
export function csvText(rows: readonly (readonly string[])[]): string {
  // The mark tells a spreadsheet that the text is UTF-8.
  return `\ufeff${rows.map((row) => row.map(csvCell).join(',')).join('\r\n')}\r\n`
}

/** The whole check-in as rows: readings as typed, then every measure with limit and verdict. */
export function checkInCsv(measured: Measured, report: CheckInReport): string {
  const { verdict, words } = report.overall
  return csvText([
    ['Check-in of the main bores', report.overall.title],
    ['Verdict', verdict === null ? 'none' : words],
    [],
    ['Reading', 'As typed', 'Unit'],
    ...Object.entries(measured.fields).map(([name, text]) => [
      fieldLabel(name),
      text,
      (singleField(name)?.kind ?? 'length') === 'length' ? measured.unit : '',
    ]),
    [],
    ['Where', 'Measure', 'Value', 'Limit', 'Uncertainty', 'Verdict', 'Limit from', 'Reason'],
    ...report.mains.flatMap(({ main, judged }) => judged.map((one) => row(`Main ${main}`, one))),
    ...report.whole.flatMap(({ title, judged }) => judged.map((one) => row(title, one))),
    [],
    ['Where', 'Worked out', 'Value'],
    ...report.mains.flatMap(({ main, worked }) =>
      worked.map(({ label, text }) => [`Main ${main}`, label, text]),
    ),
    ...report.whole.flatMap(({ title, worked }) =>
      worked.map(({ label, text }) => [title, label, text]),
    ),
    ...(report.suspects.length === 0 ? [] : [[], ['Reading in question', 'As typed', 'Why']]),
    ...report.suspects.map(({ label, typed, question }) => [label, typed, question]),
    ...(report.wrong.length === 0 ? [] : [[], ['Not read', 'As typed', 'Why']]),
    ...report.wrong.map(({ field, label, text }) => [label, measured.fields[field] ?? '', text]),
  ])
}

function row(where: string, one: Judged): string[] {
  const { title, text, limit, uncertainty, verdict, words, source, reason, advice } = one
  const from = source.cite === '' ? source.kind : source.cite
  return [
    where,
    title,
    text,
    limit,
    uncertainty,
    verdict === null ? '' : words,
    limit === '' ? '' : from,
    `${reason} ${advice}`.trim(),
  ]
}
