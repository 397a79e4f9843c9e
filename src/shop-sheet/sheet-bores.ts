import { toSi } from '../../shared/units.ts'
import { say } from '../rulebook/places.ts'
import type { Block, Pair, SheetSection } from './blocks.ts'
import type { LimitId } from './limit-rules.ts'
import { type Limit, limitFor } from './limits.ts'
import type { SheetCase } from './sheet-case.ts'
import { shortSource } from './source-words.ts'
import { lengthText, plainText, rangeText } from './workshop-figures.ts'

/** Finished size and shape of the housings, running clearance, and the line. */
export function bores(sheet: SheetCase): SheetSection {
  const show = (metres: number) => lengthText(metres, sheet.units)
  const unit = unitOf(sheet)
  const words = sheet.rules.sheet.bores
  const said = (label: string, id: string): Pair => {
    const value = sheet.readings.length(id)
    return value === undefined
      ? { label, value: null, unit, note: 'From the service data' }
      : { label, value: show(value), note: 'Your service data' }
  }
  const rows: Pair[] = [
    said('Finished housing bore, least', 'housingLow'),
    said('Finished housing bore, most', 'housingHigh'),
    { label: 'Oversize outside of the shells, if any', value: null, unit },
    limitRow(sheet, 'housing-out-of-round', 'Out of round'),
    limitRow(sheet, 'housing-taper', 'Taper, front to rear'),
    limitRow(sheet, 'bore-step', 'Step from one main to the next'),
    limitRow(sheet, 'bore-straightness', 'Straightness of all mains'),
    {
      label: 'Finish of the bore',
      value: null,
      note: words.finish.text,
    },
    clearanceRow(sheet, unit),
    limitRow(sheet, 'end-float', 'End float of the crank'),
  ]
  return {
    id: 'bores',
    title: 'Finished bores and clearance',
    blocks: [
      { kind: 'pairs', rows },
      {
        kind: 'text',
        tone: 'note',
        text: words.reading.text,
      },
    ],
  }
}

function limitRow(sheet: SheetCase, id: LimitId, label: string): Pair {
  const limit = limitFor(id, sheet)
  return limit.known
    ? { label, value: limitText(limit, sheet), note: capital(shortSource(limit.source)) }
    : {
        label,
        value: null,
        unit: unitOf(sheet),
        note: 'From the service data',
      }
}

function limitText(limit: Limit, { units }: SheetCase): string {
  return rangeText(limit, (metres) => lengthText(metres, units))
}

/** So much for each inch of journal; worked out only when the journal itself was said. */
function clearanceRow(sheet: SheetCase, unit: string): Pair {
  const label = 'Bearing clearance aimed at, upright, cold'
  const words = sheet.rules.sheet.bores
  const isSaid = sheet.assessment.build.mainJournalDiameter?.state === 'said'
  const limit = limitFor('clearance', {
    ...sheet,
    journal: isSaid ? sheet.engine.journal : undefined,
  })
  if (limit.known) {
    const source = capital(shortSource(limit.source))
    return { label, value: limitText(limit, sheet), note: say(words.clearance, { source }) }
  }
  const rule = sheet.rules.limits.clearance
  const ends = rule.uses?.[sheet.use] ?? rule
  const [low, high] = [ends.low ?? 0, ends.high ?? 0].map((end) => plainText(end, 5))
  const each = `${low} to ${high} ${unit} for each ${unit === 'in' ? 'inch' : 'millimetre'} of journal`
  const more = rule.uses?.[sheet.use] ? `; ${words.harderUse.text}` : ''
  return {
    label,
    value: null,
    unit,
    note: `${each} (${shortSource({ kind: rule.source.kind })}${more})`,
  }
}

/** What the axis may do, and what moves with it. */
export function axisSection(sheet: SheetCase): SheetSection {
  const limit = limitFor('axis-shift', sheet)
  const show = (metres: number) => lengthText(metres, sheet.units)
  const { step: steps, pressureAngle, follows, note } = sheet.rules.sheet.axis
  const unit = unitOf(sheet)
  const step = toSi(steps[unit], unit)
  const along = Math.cos(sheet.engine.bankAngle)
  const blocks: Block[] = [
    {
      kind: 'pairs',
      rows: [
        limitRow(sheet, 'axis-shift', 'Crank axis may move up by'),
        { label: 'Axis moved, front main (shop fills in)', value: null, unit },
        { label: 'Axis moved, rear main (shop fills in)', value: null, unit },
        { label: 'Timing chain, throw at mid-strand', value: null, unit },
        limitRow(sheet, 'gearbox', 'Gearbox bore, total indicator reading'),
      ],
    },
    {
      kind: 'text',
      text: say(follows.text, {
        step: show(step),
        pistons: show(step * along),
        slack: show(2 * step),
        backlash: show(2 * step * Math.tan((pressureAngle * Math.PI) / 180)),
        pressureAngle: `${pressureAngle}°`,
      }),
    },
    {
      kind: 'text',
      tone: 'note',
      text: say(note, { because: limit.because }),
    },
  ]
  return { id: 'axis', title: 'How far the axis may move, and what follows', blocks }
}

/** The unit of lengths on a sheet. */
export function unitOf({ units }: SheetCase): 'in' | 'mm' {
  return units === 'us' ? 'in' : 'mm'
}

function capital(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`
}

/** A figure of a rule in the person's unit. */
export function ruleLength(value: number, unit: 'in' | 'mm', { units }: SheetCase): string {
  return lengthText(unit === 'in' ? value * 0.0254 : value * 0.001, units)
}
