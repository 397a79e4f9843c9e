import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'

export interface PdfRead {
  readonly pages: readonly {
    readonly text: string
    readonly width: number
    readonly height: number
  }[]
  readonly title: string
  readonly language: string
  /** Addresses that can be pressed. */
  readonly links: readonly string[]
  /** Roles of the document's structure, such as H1 and LI. */
  readonly roles: readonly string[]
}

/** What a reader of PDFs finds in one, by a library that had no part in making it. */
export async function readPdf(bytes: Uint8Array): Promise<PdfRead> {
  // The reader takes its buffer for itself, so it gets a copy.
  const loading = getDocument({ data: new Uint8Array(bytes), verbosity: 0 })
  const pdf = await loading.promise
  const { info } = await pdf.getMetadata()
  const pages: { text: string; width: number; height: number }[] = []
  const links: string[] = []
  const roles = new Set<string>()
  for (let number = 1; number <= pdf.numPages; number++) {
    const page = await pdf.getPage(number)
    const { width, height } = page.getViewport({ scale: 1 })
    const { items } = await page.getTextContent()
    const text = items.map((item) => ('str' in item ? item.str + (item.hasEOL ? ' ' : '') : ''))
    pages.push({ text: text.join('').replaceAll(/\s+/g, ' '), width, height })
    for (const { url } of await page.getAnnotations()) if (url) links.push(url)
    collect(await page.getStructTree(), roles)
  }
  const said = info as { Title?: string; Language?: string }
  await loading.destroy()
  return { pages, links, roles: [...roles], title: said.Title ?? '', language: said.Language ?? '' }
}

function collect(node: unknown, roles: Set<string>): void {
  if (typeof node !== 'object' || node === null) return
  const { role, children } = node as { role?: string; children?: unknown[] }
  if (role) roles.add(role)
  for (const child of children ?? []) collect(child, roles)
}
