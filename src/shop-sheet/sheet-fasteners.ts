import { printFigure } from '../../shared/print.ts'
import { fromSi, preferredUnit, toSi } from '../../shared/units.ts'
import { say } from '../rulebook/places.ts'
import type { Pair, SheetSection } from './blocks.ts'
import type { SheetCase } from './sheet-case.ts'
import { shortSource } from './source-words.ts'

/** The fasteners that stay: the supplier's figures first, ours only as a check. */
export function fasteners(sheet: SheetCase): SheetSection {
  const { readings, route } = sheet
  const { clamp, sequence } = sheet.rules.sheet.fasteners
  const isStud = route.parts.some((id) => id.startsWith('main-studs'))
  const given = (id: string): string | null => readings.text(id) ?? null
  const rows: Pair[] = [
    {
      label: isStud
        ? 'Studs with nuts: size, length, supplier'
        : 'Fasteners: size, length, supplier',
      value: given('fastenerSize'),
      ...threadNote(sheet),
    },
    countRow(sheet),
    { label: 'Lubricant, on thread and under the head or nut', ...lubricantOf(sheet, isStud) },
    ...torqueRows(sheet, isStud),
    {
      label: 'Tightening sequence',
      value: given('supplierSequence'),
      note: `${sequence.text} (${shortSource(sequence.source)})`,
    },
    checkRow(sheet),
  ]
  return {
    id: 'fasteners',
    title: 'The fasteners that stay',
    blocks: [
      {
        kind: 'text',
        text: clamp.text,
      },
      { kind: 'pairs', rows },
    ],
  }
}

/** Counted only where layout and pattern were both said; a blank otherwise. */
function countRow({ engine, assessment, rules }: SheetCase): Pair {
  const label = 'How many'
  const note = rules.sheet.fasteners.count
  const { layout, capFastening } = assessment.build
  const isKnown = layout?.state === 'said' && capFastening?.state === 'said' && !engine.splitCase
  if (!isKnown || engine.upright === undefined) return { label, value: null, note }
  const count = engine.upright * engine.mains
  return {
    label,
    value: `${count} upright, ${engine.upright} in each of ${engine.mains} caps`,
    note,
  }
}

function threadNote({ assessment }: SheetCase): { note?: string } {
  const thread = assessment.build.fastenerThread
  if (!thread || thread.state === 'not-needed') return {}
  return thread.state === 'assumed'
    ? { note: `Thread not said; the estimate took ${thread.text}` }
    : { note: `Thread: ${thread.text}` }
}

/** A new stud brings its own lubricant; a fastener that stays keeps what was said of it. */
function lubricantOf(
  { readings, assessment, rules }: SheetCase,
  isStud: boolean,
): Omit<Pair, 'label'> {
  const own = readings.text('supplierLubricant')
  if (own !== undefined) return { value: own }
  const entry = assessment.build.fastenerLubricant
  if (!isStud && entry?.state === 'said') return { value: entry.text, note: 'As you said' }
  return {
    value: null,
    note: isStud ? rules.sheet.fasteners.studLubricant.text : 'Service manual',
  }
}

/** One row; two where an angle follows the torque, so that no shop stops at the torque. */
function torqueRows({ readings, assessment, rules }: SheetCase, isStud: boolean): Pair[] {
  const label = 'Final torque, or torque and angle'
  const words = rules.sheet.fasteners
  const own = readings.text('supplierTorque')
  if (own !== undefined)
    return [{ label, value: own, note: 'The supplier’s figure, as you gave it' }]
  const said = assessment.build.fastenerTorque
  const from = isStud ? 'Stud supplier’s sheet' : 'Service manual'
  if (isStud || said?.state !== 'said') {
    return [{ label, value: null, note: say(words.torqueUnknown.text, { from }) }]
  }
  if (assessment.build.tightening?.value === 'torque-angle') {
    return [
      { label: 'First torque', value: said.text, note: words.firstTorque },
      { label: 'Then turned by', value: null, note: words.turn },
    ]
  }
  if (assessment.build.tightening?.value === 'stretch') {
    return [
      { label: 'Torque to begin with', value: said.text, note: words.stretchTorque },
      { label: 'Then stretched by', value: null, note: words.stretch },
    ]
  }
  return [{ label, value: said.text, note: words.torqueSaid }]
}

/** Our own estimate, plainly no more than a check. */
function checkRow({ route, units, rules }: SheetCase): Pair {
  const { torque, preload, shareOfProof } = route.joint
  const show = (value: number, unit: string, decimals: number): string => {
    const own = preferredUnit(unit, units)
    return printFigure(fromSi(toSi(value, unit), own), own, decimals)
  }
  const words = rules.sheet.fasteners
  const label = words.check
  const share = `${Math.round(100 * shareOfProof)}% of its proof load`
  if (!torque) {
    return {
      label,
      value: `about ${force(preload, units)} in each`,
      note: say(words.checkTurned, { share }),
    }
  }
  return {
    label,
    value: `about ${show(torque.value, torque.unit, 0)}`,
    note: say(words.checkWould, { preload: force(preload, units), share }),
  }
}

/** A force to the hundred pounds or the kilonewton: it is an estimate. */
function force(kilonewtons: number, units: SheetCase['units']): string {
  if (units === 'metric') return printFigure(kilonewtons, 'kN', 0)
  return printFigure(Math.round(fromSi(toSi(kilonewtons, 'kN'), 'lbf') / 100) * 100, 'lbf', 0)
}
