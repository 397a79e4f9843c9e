import type { GaugeId } from './limit-rules.ts'

/**
 * Every field of the check-in: five tables with a row for each main (or each end of the crank),
 * and single fields. A field's name is `table.row.column` or its own id; rows count from 1 at the
 * front.
 */
export interface Column {
  readonly id: string
  readonly label: string
  readonly gauge: GaugeId
}

/** A table of readings with a row for each main or each end. */
export interface GridTable {
  readonly id: TableId
  readonly title: string
  readonly rows: 'mains' | 'ends'
  readonly columns: readonly Column[]
}

/** Id of a table of readings. */
export type TableId = 'housing' | 'journal' | 'shell' | 'line' | 'axis'

const column = (gauge: GaugeId, id: string, label: string): Column => ({ id, label, gauge })

/** The tables of readings, in the order of the form. */
export const TABLES: readonly GridTable[] = [
  {
    id: 'housing',
    title: 'Housing bores, caps torqued, no shells',
    rows: 'mains',
    columns: [
      column('bore', 'fv', 'Front, up and down'),
      column('bore', 'fl', 'Front, 60° left'),
      column('bore', 'fr', 'Front, 60° right'),
      column('bore', 'rv', 'Rear, up and down'),
      column('bore', 'rl', 'Rear, 60° left'),
      column('bore', 'rr', 'Rear, 60° right'),
    ],
  },
  {
    id: 'journal',
    title: 'Journals',
    rows: 'mains',
    columns: [
      column('micrometer', 'fv', 'Front, one way'),
      column('micrometer', 'fh', 'Front, a quarter turn on'),
      column('micrometer', 'rv', 'Rear, one way'),
      column('micrometer', 'rh', 'Rear, a quarter turn on'),
    ],
  },
  {
    id: 'shell',
    title: 'Shells: wall, crush height, clearance',
    rows: 'mains',
    columns: [
      column('shell', 'uc', 'Upper, at its middle'),
      column('shell', 'lc', 'Lower, at its middle'),
      column('shell', 'up', 'Upper, near the edge'),
      column('shell', 'lp', 'Lower, near the edge'),
      column('depth', 'uo', 'Upper, crush height'),
      column('depth', 'lo', 'Lower, crush height'),
      column('bore', 'c', 'Clearance read with shells in'),
    ],
  },
  {
    id: 'line',
    title: 'Alignment: bore centres, or feeler gauges under a straightedge',
    rows: 'mains',
    columns: [
      column('offset', 'z', 'Distance from main 1'),
      column('offset', 'x', 'Centre, to the right'),
      column('offset', 'y', 'Centre, up'),
      column('feeler', 'p', 'Thickest leaf that passes'),
      column('feeler', 'r', 'Thinnest leaf that does not'),
    ],
  },
  {
    id: 'axis',
    title: 'Axis shift: untouched face to the crown of the bore, before and after',
    rows: 'ends',
    columns: [
      column('depth', 'cb', 'Face to crown, before'),
      column('depth', 'ca', 'Face to crown, after'),
      column('bore', 'db', 'Bore up and down, before'),
      column('bore', 'da', 'Bore up and down, after'),
      column('depth', 'told', 'Or: shift as the shop told it'),
    ],
  },
]

/** What a single field holds. */
export type FieldKind = 'length' | 'count' | 'degrees' | 'text' | 'choice'

/** A field of its own: what it holds, and under which heading it stands. */
export interface SingleField {
  readonly id: string
  readonly label: string
  readonly kind: FieldKind
  readonly group: FieldGroup
  readonly choices?: Readonly<Record<string, string>>
  readonly gauge?: GaugeId
  /** May be below nought. */
  readonly signed?: boolean
  /** Most characters of a text, where it may be longer than others. */
  readonly longest?: number
}

/** Headings that single fields stand under. */
export type FieldGroup =
  | 'block'
  | 'fasteners'
  | 'sizes'
  | 'limits'
  | 'cut'
  | 'thrust'
  | 'axis'
  | 'drive'
  | 'deck'
  | 'gearbox'
  | 'gauges'
  | 'again'

const single = (
  group: FieldGroup,
  kind: FieldKind,
  id: string,
  label: string,
  more: Partial<SingleField> = {},
): SingleField => ({ id, label, kind, group, ...more })

/** The person's service data: the sheet prints them, the check-in judges by them. */
export const SERVICE_FIELDS: readonly SingleField[] = [
  single('block', 'text', 'blockMark', 'Casting number and stamp on the block'),
  single('block', 'text', 'capMark', 'Stamps on the caps, front to rear'),
  single('block', 'text', 'thrustMain', 'Main that carries the thrust'),
  single('fasteners', 'text', 'fastenerSize', 'Fastener: thread, length, part of which supplier'),
  single('fasteners', 'text', 'supplierTorque', 'Supplier’s torque or angle'),
  single('fasteners', 'text', 'supplierLubricant', 'Supplier’s lubricant'),
  single('fasteners', 'text', 'supplierSequence', 'Supplier’s sequence'),
  single('sizes', 'length', 'housingLow', 'Finished housing bore, least'),
  single('sizes', 'length', 'housingHigh', 'Finished housing bore, most'),
  single('sizes', 'length', 'journalLow', 'Journal, least'),
  single('sizes', 'length', 'journalHigh', 'Journal, most'),
  single('sizes', 'length', 'shellWall', 'Shell wall at its middle'),
  single('sizes', 'length', 'clearanceLow', 'Bearing clearance, least'),
  single('sizes', 'length', 'clearanceHigh', 'Bearing clearance, most'),
  single('sizes', 'length', 'endFloatLow', 'End float, least'),
  single('sizes', 'length', 'endFloatHigh', 'End float, most'),
  single('limits', 'length', 'roundMost', 'Housing out of round, most'),
  single('limits', 'length', 'taperMost', 'Housing taper, most'),
  single('limits', 'length', 'stepMost', 'Step to the neighbouring main, most'),
  single('limits', 'length', 'straightMost', 'Straightness of all mains, most'),
  single('limits', 'length', 'journalRoundMost', 'Journal out of round, most'),
  single('limits', 'length', 'journalTaperMost', 'Journal taper, most'),
  single('limits', 'length', 'overstandLow', 'Crush height, least'),
  single('limits', 'length', 'overstandHigh', 'Crush height, most'),
  single('limits', 'length', 'axisMost', 'Axis shift, most'),
  single('limits', 'length', 'chainThrowMost', 'Chain throw at mid-strand, most'),
  single('limits', 'length', 'backlashLow', 'Gear backlash, least'),
  single('limits', 'length', 'backlashHigh', 'Gear backlash, most'),
  single('limits', 'length', 'deckLow', 'Piston below the deck, least', { signed: true }),
  single('limits', 'length', 'deckHigh', 'Piston below the deck, most', { signed: true }),
  single('limits', 'length', 'gearboxMost', 'Gearbox bore, total indicator reading, most'),
  single('cut', 'length', 'blockBore', 'Block’s half bore now, as a diameter'),
  single('cut', 'length', 'capBore', 'Cap’s half bore now, as a diameter'),
  single('cut', 'length', 'capFaceCut', 'To be cut off the caps’ faces'),
  single('cut', 'length', 'honingStock', 'To be left for the hone, on the diameter'),
]

/** What is measured once, and what the drive, deck and gearbox are. */
export const MEASURED_FIELDS: readonly SingleField[] = [
  single('thrust', 'length', 'endFloat', 'End float, measured', { gauge: 'indicator' }),
  single('axis', 'choice', 'axisFrom', 'Measured from', {
    choices: { deck: 'The deck', 'sump-rail': 'The pan rail' },
  }),
  single('drive', 'choice', 'drive', 'Camshaft drive', {
    choices: { chain: 'Chain', gears: 'Gears', other: 'Belt, or none in the block' },
  }),
  single('drive', 'length', 'driveCentres', 'Crank axis to cam axis, before'),
  single('drive', 'degrees', 'camAngle', 'Cam’s direction off the shift, degrees'),
  single('drive', 'length', 'chainPitch', 'Chain pitch'),
  single('drive', 'count', 'crankTeeth', 'Teeth on the crank'),
  single('drive', 'count', 'camTeeth', 'Teeth on the cam'),
  single('drive', 'length', 'chainSlack', 'Slack in the chain’s length, before'),
  single('drive', 'length', 'setShortening', 'Timing set made for centres shorter by'),
  single('drive', 'degrees', 'pressureAngle', 'Gears: pressure angle, degrees'),
  single('drive', 'length', 'gearBacklash', 'Gears: backlash, before'),
  single('deck', 'length', 'deckBefore', 'Piston below the deck, before', {
    gauge: 'depth',
    signed: true,
  }),
  single('deck', 'length', 'deckCut', 'Cut off the decks'),
  single('gearbox', 'choice', 'boxTaken', 'Indicator readings taken', {
    choices: { before: 'Before the bores were cut', after: 'After' },
  }),
  single('gearbox', 'length', 'boxTop', 'Top', { gauge: 'indicator', signed: true }),
  single('gearbox', 'length', 'boxRight', 'Right', { gauge: 'indicator', signed: true }),
  single('gearbox', 'length', 'boxBottom', 'Bottom', { gauge: 'indicator', signed: true }),
  single('gearbox', 'length', 'boxLeft', 'Left', { gauge: 'indicator', signed: true }),
  single('gearbox', 'length', 'boxShaft', 'Pilot bearing to gearbox bearing'),
  single('gauges', 'length', 'gauge-bore', 'Bore gauge, ±'),
  single('gauges', 'length', 'gauge-micrometer', 'Micrometer on the journals, ±'),
  single('gauges', 'length', 'gauge-shell', 'Ball micrometer on the shells, ±'),
  single('gauges', 'length', 'gauge-offset', 'Bore centres, ±'),
  single('gauges', 'length', 'gauge-feeler', 'Feeler gauges, ±'),
  single('gauges', 'length', 'gauge-depth', 'Depths, ±'),
  single('gauges', 'length', 'gauge-indicator', 'Dial indicator, ±'),
  // Written by the check-in's own question, not typed.
  single('again', 'text', 'stands', 'Measured again and found so, mm', { longest: 200 }),
]

/** Every single field: service data first, then what is measured once. */
export const SINGLE_FIELDS: readonly SingleField[] = [...SERVICE_FIELDS, ...MEASURED_FIELDS]

const SINGLE_BY_ID = new Map(SINGLE_FIELDS.map((field) => [field.id, field]))

/** A single field by its id; undefined for a cell of a table and for what is no field. */
export function singleField(id: string): SingleField | undefined {
  return SINGLE_BY_ID.get(id)
}

/** A table by its id; undefined when there is none. */
export function tableOf(id: string): GridTable | undefined {
  return TABLES.find((table) => table.id === id)
}

/** Most mains that any layout has, and more: rows beyond are refused. */
export const MOST_ROWS = 9

/** Whether a name is that of a field of a check-in with so many mains. */
export function isField(name: string): boolean {
  if (SINGLE_BY_ID.has(name)) return true
  const [table, row, column, ...rest] = name.split('.')
  const found = tableOf(table ?? '')
  if (!found || rest.length > 0 || !/^[1-9]$/.test(row ?? '')) return false
  return found.columns.some(({ id }) => id === column)
}
