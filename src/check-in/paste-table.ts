import { type GridTable, MOST_ROWS } from '../shop-sheet/fields.ts'
import { keptText } from '../shop-sheet/link-code.ts'

/**
 * A block copied from a spreadsheet into one table: rows by line, cells by tab, semicolon or runs
 * of spaces (a comma is a decimal point). A first row or column of words is left out.
 *
 * @returns field name → text; cells beyond the table are dropped
 */
export function pasteTable(table: GridTable, text: string): Record<string, string> {
  const rows = text
    .replaceAll('\r\n', '\n')
    .split('\n')
    .map((line) => line.trimEnd())
    .filter((line) => line.trim() !== '')
    .map((line) => line.split(/\t|;|\s{2,}|(?<=[\d"]) +(?=[-+−.\d])/).map((cell) => cell.trim()))
  const figures = rows.filter((cells) => cells.some(isFigure))
  const hasNames = figures.length > 0 && figures.every((cells) => isName(cells, table))
  const fields: Record<string, string> = {}
  figures.slice(0, MOST_ROWS).forEach((cells, place) => {
    const values = hasNames ? cells.slice(1) : cells
    const row = (hasNames && rowNamed(cells[0] ?? '')) || place + 1
    table.columns.forEach(({ id }, at) => {
      const name = `${table.id}.${row}.${id}`
      const kept = keptText(name, values[at] ?? '')
      if (kept !== '') fields[name] = kept
    })
  })
  return fields
}

/** "Main 3", or a bare 3 before a full row: the name of a row, not a reading. */
function isName(cells: readonly string[], { columns }: GridTable): boolean {
  const first = cells[0] ?? ''
  if (first !== '' && !isFigure(first)) return true
  return /^[1-9]$/.test(first) && cells.length === columns.length + 1
}

function rowNamed(name: string): number | undefined {
  const digit = /(?:^|\D)([1-9])$/.exec(name)?.[1]
  return digit === undefined ? undefined : Number(digit)
}

/** Nobody's reading is longer. */
const LONGEST_FIGURE = 40
const FIGURE = /^[+\-−]?[\d.,]+\s*(?:in|mm|")?$/

function isFigure(cell: string): boolean {
  // Each part of the pattern takes other characters, so that no cell makes it try twice.
  return cell.length <= LONGEST_FIGURE && /\d/.test(cell) && FIGURE.test(cell)
}
