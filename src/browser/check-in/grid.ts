/** Enter and arrows go from cell to cell; Ctrl and Enter sends. */
export function moveByKey(event: KeyboardEvent, form: HTMLFormElement): void {
  const cell = event.target
  if (!(cell instanceof HTMLInputElement) || event.isComposing) return
  if (event.key === 'Enter') {
    event.preventDefault()
    if (event.ctrlKey || event.metaKey) form.requestSubmit()
    else focusOn(next(form, cell))
    return
  }
  if (event.shiftKey || event.ctrlKey || event.altKey || event.metaKey) return
  const target = beside(cell, event.key)
  if (!target) return
  event.preventDefault()
  focusOn(target)
}

/** The field after this one, over the edge of a table too. */
function next(form: HTMLFormElement, cell: HTMLInputElement): Element | undefined {
  const fields = [...form.querySelectorAll<HTMLElement>('input[inputmode], input[maxlength]')]
  const seen = fields.filter((field) => field.offsetParent !== null)
  return seen[seen.indexOf(cell) + 1] ?? form.querySelector('button[type="submit"]') ?? undefined
}

function beside(cell: HTMLInputElement, key: string): Element | undefined {
  const place = placeOf(cell)
  if (!place) return undefined
  const { rows, row, column } = place
  const atStart = cell.selectionStart === 0 && cell.selectionEnd === 0
  const all = cell.selectionStart === 0 && cell.selectionEnd === cell.value.length
  const atEnd = cell.selectionStart === cell.value.length
  if (key === 'ArrowUp') return rows[row - 1]?.[column]
  if (key === 'ArrowDown') return rows[row + 1]?.[column]
  if (key === 'ArrowLeft' && (atStart || all)) return rows[row]?.[column - 1]
  return key === 'ArrowRight' && (atEnd || all) ? rows[row]?.[column + 1] : undefined
}

interface Place {
  readonly rows: readonly (readonly HTMLInputElement[])[]
  readonly row: number
  readonly column: number
}

function placeOf(cell: HTMLInputElement): Place | undefined {
  const table = cell.closest('table[data-grid]')
  if (!table) return undefined
  const rows = [...table.querySelectorAll('tbody tr')].map((row) => [
    ...row.querySelectorAll('input'),
  ])
  const row = rows.findIndex((cells) => cells.includes(cell))
  return { rows, row, column: rows[row]?.indexOf(cell) ?? -1 }
}

function focusOn(target: Element | undefined): void {
  if (!(target instanceof HTMLElement)) return
  target.focus()
  if (target instanceof HTMLInputElement) target.select()
}

/** A block of cells copied from a spreadsheet goes in from the cell that it is pasted into. */
export function pasteBlock(event: ClipboardEvent, form: HTMLFormElement): void {
  const cell = event.target
  const text = event.clipboardData?.getData('text/plain') ?? ''
  if (!(cell instanceof HTMLInputElement) || !/[\t\n]/.test(text.trim())) return
  const place = placeOf(cell)
  if (!place) return
  event.preventDefault()
  const lines = text.replaceAll('\r\n', '\n').replace(/\n$/, '').split('\n')
  lines.forEach((line, down) => {
    line.split('\t').forEach((value, along) => {
      const target = place.rows[place.row + down]?.[place.column + along]
      if (target) target.value = value.trim()
    })
  })
  form.dispatchEvent(new Event('input'))
}
