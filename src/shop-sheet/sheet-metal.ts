import { toSi } from '../../shared/units.ts'
import { type BoreMachining, boreMachining } from '../mechanics/bore-machining.ts'
import { DomainError } from '../mechanics/domain-error.ts'
import type { Block, Pair, SheetSection } from './blocks.ts'
import { ruleLength, unitOf } from './sheet-bores.ts'
import { isMachined, type SheetCase } from './sheet-case.ts'
import { shortSource } from './source-words.ts'
import { lengthText } from './workshop-figures.ts'

/** What is bored, what is honed, and how much metal: worked out where the halves were measured. */
export function metal(sheet: SheetCase): SheetSection | undefined {
  const { route, rules } = sheet
  if (!isMachined(route)) return undefined
  const isBored = route.work.includes('line-bore')
  const isAsked = route.work.includes('line-hone-if-needed')
  const { honingStock, honeLimit, unit, because, source } = rules.machining
  const stock = `${ruleLength(honingStock.low, unit, sheet)} to ${ruleLength(honingStock.high, unit, sheet)}`
  const blocks: Block[] = [
    { kind: 'text', text: whatIsCut(sheet, isBored, isAsked) },
    { kind: 'pairs', rows: metalRows(sheet, isBored, stock) },
    {
      kind: 'text',
      tone: 'note',
      text: `${because} Usual for the hone on the diameter: ${isBored ? stock : `at most ${ruleLength(honeLimit, unit, sheet)}`} (${shortSource(source)}).`,
    },
  ]
  return { id: 'metal', title: 'What to bore, what to hone, how much', blocks }
}

function whatIsCut({ rules }: SheetCase, isBored: boolean, isAsked: boolean): string {
  const { bored, honed, honedIfNeeded } = rules.sheet.metal
  if (isBored) return bored.text
  return (isAsked ? honedIfNeeded : honed).text
}

function metalRows(sheet: SheetCase, isBored: boolean, usual: string): Pair[] {
  const show = (metres: number) => lengthText(metres, sheet.units)
  const unit = unitOf(sheet)
  const given = (label: string, id: string, note: string): Pair => {
    const value = sheet.readings.length(id)
    return { label, value: value === undefined ? null : show(value), unit, note }
  }
  const rows: Pair[] = [
    given('Block’s half bore now', 'blockBore', 'As a diameter'),
    given('Caps’ half bore now', 'capBore', sheet.rules.sheet.metal.newCaps.text),
    given('Off the caps’ faces', 'capFaceCut', 'Nought if none'),
    ...(isBored
      ? [given('Left for the hone', 'honingStock', `On the diameter; usual ${usual}`)]
      : []),
  ]
  const found = workedOut(sheet, isBored)
  if (!found) return rows
  const { finished, boring, honeAlone, axisShift } = found
  const made = 'Worked out from the sizes above'
  return [
    ...rows,
    { label: 'Finished bore, middle of its limits', value: show(finished.diameter), note: made },
    ...(isBored ? [{ label: 'Bore to', value: show(boring.diameter), note: made }] : []),
    { label: 'Metal off the block’s crown, in all', value: show(finished.block.crown), note: made },
    { label: 'Metal off the cap’s crown, in all', value: show(finished.cap.crown), note: made },
    { label: 'Axis rises by, at least', value: show(axisShift), note: made },
    {
      label: 'If it were only honed',
      value:
        honeAlone.beyond > 1e-9
          ? `${show(honeAlone.beyond)} more than a hone should take`
          : `${show(Math.max(0, honeAlone.stock))}, within what a hone takes`,
      note: made,
    },
  ]
}

/** The bore's geometry; nothing where a size is missing or the halves cannot meet. */
function workedOut({ readings, rules }: SheetCase, isBored: boolean): BoreMachining | undefined {
  const [blockBore, capBore, low, high] = ['blockBore', 'capBore', 'housingLow', 'housingHigh'].map(
    (id) => readings.length(id),
  )
  if (blockBore === undefined || capBore === undefined || !low || !high) return undefined
  const { honingStock, honeLimit, unit } = rules.machining
  const usual = toSi((honingStock.low + honingStock.high) / 2, unit)
  try {
    return boreMachining({
      blockBore,
      capBore,
      capFaceCut: readings.length('capFaceCut') ?? 0,
      finished: { low, high },
      honingStock: isBored ? (readings.length('honingStock') ?? usual) : 0,
      honeLimit: toSi(honeLimit, unit),
    })
  } catch (error) {
    if (error instanceof DomainError) return undefined
    throw error
  }
}
