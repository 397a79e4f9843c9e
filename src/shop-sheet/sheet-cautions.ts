import type { SheetSection } from './blocks.ts'
import type { SheetCase } from './sheet-case.ts'

/** The case's cautions, and who comes before this sheet. */
export function cautionsSection({ assessment }: SheetCase): SheetSection {
  return {
    id: 'cautions',
    title: 'Cautions',
    blocks: [
      {
        kind: 'text',
        tone: 'caution',
        text: 'The engine’s service manual, the fastener supplier’s figures, local codes and the judgement of the machinist with the block in hand come before this sheet. Where they differ from it, they are right.',
      },
      {
        kind: 'text',
        tone: 'caution',
        text: 'Lift the block with rated gear and keep from under it. High-strength fasteners break without warning when over-tightened: eye protection on, and never more than the supplier’s torque.',
      },
      ...assessment.cautions.map(({ title, text }) => ({
        kind: 'text' as const,
        tone: 'caution' as const,
        text: `${title}. ${plain(text)}`,
      })),
    ],
  }
}

/** A rule's Markdown without its marks: paper has no links. */
function plain(markdown: string): string {
  return markdown.replaceAll(/\[([^\]]*)\]\([^)]*\)/g, '$1').replaceAll(/[*_`]/g, '')
}
