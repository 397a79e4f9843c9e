import { evenDecimals, LENGTHS } from '../../shared/even-decimals.ts'
import type { Block, SheetSection, ShopSheet } from './blocks.ts'
import { identification } from './sheet-block.ts'
import { axisSection, bores } from './sheet-bores.ts'
import { isMachined, type SheetCase } from './sheet-case.ts'
import { cautionsSection } from './sheet-cautions.ts'
import { fasteners } from './sheet-fasteners.ts'
import { metal } from './sheet-metal.ts'
import { partsAndWork } from './sheet-parts.ts'
import { measuring, orderOfWork, questions, signOff } from './sheet-work.ts'

/**
 * The machine-shop sheet of a called route. It says what is known and where from; what is not
 * known is a blank to fill, never an assumption.
 */
export function shopSheet(sheet: SheetCase): ShopSheet {
  const { assessment, route, rules } = sheet
  const cut = metal(sheet)
  return {
    title: `Shop sheet: ${route.title}`,
    sentence: assessment.call.sentence,
    ...(route.work.length + route.parts.length === 0
      ? { nothingToDo: rules.sheet.nothingToDo }
      : {}),
    rulebook: assessment.version,
    sections: [
      orderOfWork(sheet),
      identification(sheet),
      fasteners(sheet),
      bores(sheet),
      ...(cut ? [cut] : []),
      ...(isMachined(route) ? [axisSection(sheet)] : []),
      measuring(sheet),
      cautionsSection(sheet),
      signOff(sheet),
      questions(sheet),
      partsAndWork(sheet),
    ].map(evenLengths),
  }
}

/** Lengths of one list with equal decimals. */
function evenLengths(section: SheetSection): SheetSection {
  const even = (block: Block): Block => {
    if (block.kind !== 'pairs') return block
    const texts = evenDecimals(
      block.rows.map(({ value }) => value ?? ''),
      LENGTHS,
    )
    const rows = block.rows.map((row, at) =>
      row.value === null ? row : { ...row, value: texts[at] ?? row.value },
    )
    return { ...block, rows }
  }
  return { ...section, blocks: section.blocks.map(even) }
}
