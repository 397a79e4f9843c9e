import { singleField, tableOf } from './fields.ts'

const ENDS = ['Front main', 'Rear main']

/** What a row of a table is called: "Main 3", or an end of the crank. */
export function rowLabel(rows: 'mains' | 'ends', row: number): string {
  return rows === 'mains' ? `Main ${row}` : (ENDS[row - 1] ?? `Place ${row}`)
}

/** A field in words: "Main 3, front, up and down". */
export function fieldLabel(name: string): string {
  const single = singleField(name)
  if (single) return single.label
  const [table, row, column] = name.split('.')
  const found = tableOf(table ?? '')
  const label = found?.columns.find(({ id }) => id === column)?.label ?? name
  return `${rowLabel(found?.rows ?? 'mains', Number(row))}, ${label.charAt(0).toLowerCase()}${label.slice(1)}`
}
