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
  // "Main 3" or "3" before a full row names it.
  const hasNames =
    figures.every((cells) => !isFigure(cells[0] ?? '') || cells.length > table.columns.length) &&
    figures.length > 0
  const fields: Record<string, string> = {}
  figures.slice(0, MOST_ROWS).forEach((cells, place) => {
    const values = hasNames ? cells.slice(1) : cells
    table.columns.forEach(({ id }, at) => {
      const name = `${table.id}.${place + 1}.${id}`
      const kept = keptText(name, values[at] ?? '')
      if (kept !== '') fields[name] = kept
    })
  })
  return fields
}

function isFigure(cell: string): boolean {
  return /^[+\-−]?[\d.,]*\d[\d.,]*\s*(?:in|mm|")?$/.test(cell)
}
