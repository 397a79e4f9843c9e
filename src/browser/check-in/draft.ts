/** Readings as this browser keeps them, under the case that they belong to. */
export interface Kept {
  readonly fields: Readonly<Record<string, string>>
  /** The address's query when they were kept. */
  readonly at: string
}

const NOT_KEPT = new Set(['state', 'units', 'paste', 'paste-into'])

/** The case as the server writes it, without measurements: what the readings are kept under. */
function place(form: HTMLFormElement): string {
  const state = String(new FormData(form).get('state') ?? '')
  const own = [...new URLSearchParams(state)].filter(([name]) => !/^(?:m\.|v$)/.test(name))
  return `check-in?${new URLSearchParams(own)}`
}

/** Keep every reading of the form in this browser, under its case. */
export function keep(form: HTMLFormElement): void {
  const fields: Record<string, string> = {}
  for (const [name, value] of new FormData(form)) {
    if (!NOT_KEPT.has(name) && String(value) !== '') fields[name] = String(value)
  }
  const kept: Kept = { fields, at: location.search }
  attempt(() => localStorage.setItem(place(form), JSON.stringify(kept)))
}

/** Forget what this browser keeps of the case. */
export function forget(form: HTMLFormElement): void {
  attempt(() => localStorage.removeItem(place(form)))
}

/** Kept readings that differ from what the form shows; undefined when there are none. */
export function draftOf(form: HTMLFormElement): Kept | undefined {
  const text = attempt(() => localStorage.getItem(place(form)))
  const kept = text ? (attempt(() => JSON.parse(text)) as Kept | undefined) : undefined
  if (!kept || typeof kept.fields !== 'object' || kept.fields === null) return undefined
  const shown = new FormData(form)
  const figures = Object.entries(kept.fields).filter(([name]) => name !== 'm-unit')
  const differs = figures.some(([name, value]) => shown.get(name) !== value)
  return figures.length > 0 && differs ? kept : undefined
}

/** Storage may be full, or forbidden; the link still holds the readings then. */
function attempt<T>(act: () => T): T | undefined {
  try {
    return act()
  } catch {
    return undefined
  }
}
