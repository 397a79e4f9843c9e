import type { Block, SheetSection } from './blocks.ts'
import type { SheetCase } from './sheet-case.ts'

/** Who comes before this sheet and what can hurt, then the case's cautions. */
export function cautionsSection({ assessment, safety }: SheetCase): SheetSection {
  return {
    id: 'cautions',
    title: 'Cautions',
    blocks: [
      ...safety.map(caution),
      ...assessment.cautions.map(({ title, text }) => caution(`${title}. ${plain(text)}`)),
    ],
  }
}

function caution(text: string): Block {
  return { kind: 'text', tone: 'caution', text }
}

/** A rule's Markdown without its marks: paper has no links. */
function plain(markdown: string): string {
  return markdown.replaceAll(/\[([^\]]*)\]\([^)]*\)/g, '$1').replaceAll(/[*_`]/g, '')
}
