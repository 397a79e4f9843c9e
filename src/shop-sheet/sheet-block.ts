import { say } from '../rulebook/places.ts'
import type { Block, CapMap, Pair, SheetSection } from './blocks.ts'
import type { SheetCase } from './sheet-case.ts'

/** Which block and which caps: what is stamped where, and what the engine is. */
export function identification(sheet: SheetCase): SheetSection {
  const { readings, engine, rules } = sheet
  const { splitCase, mains } = engine
  const words = rules.sheet.identification
  const blocks: Block[] = [
    {
      kind: 'pairs',
      rows: [
        { label: 'Block: casting number and stamp', value: readings.text('blockMark') ?? null },
        ...engineRows(sheet),
        { label: 'Main that carries the thrust', value: readings.text('thrustMain') ?? null },
        { label: 'Whose, and how to reach', value: null },
        { label: 'Handed over on', value: null },
      ],
    },
    { kind: 'cap-map', map: capMap(sheet) },
    {
      kind: 'text',
      tone: 'note',
      text: splitCase ? say(words.splitCase.text, { mains: `${mains}` }) : words.caps.text,
    },
  ]
  return { id: 'identification', title: 'Which block, which caps', blocks }
}

const ENGINE_FACTS = [
  'layout',
  'bore',
  'stroke',
  'blockMaterial',
  'capMaterial',
  'capFastening',
  'use',
] as const

/** What was said about the engine; what was not is a blank, with what the estimate took beside it. */
function engineRows({ assessment }: SheetCase): Pair[] {
  return ENGINE_FACTS.flatMap((key): Pair[] => {
    const entry = assessment.build[key]
    if (!entry || entry.state === 'not-needed') return []
    const label = LABELS[key]
    if (entry.state !== 'assumed') return [{ label, value: entry.text }]
    return [{ label, value: null, note: `not said; the estimate took ${inSentence(entry.text)}` }]
  })
}

const LABELS: Readonly<Record<(typeof ENGINE_FACTS)[number], string>> = {
  layout: 'Layout',
  bore: 'Bore',
  stroke: 'Stroke',
  blockMaterial: 'Block material',
  capMaterial: 'Caps as they came',
  capFastening: 'Fastened as it came',
  use: 'Use',
}

function capMap({ readings, engine }: SheetCase): CapMap {
  const stamps = (readings.text('capMark') ?? '').split(/[\s,;/]+/).filter((word) => word !== '')
  return {
    mains: engine.mains,
    fasteners: engine.upright ?? 2,
    splitCase: engine.splitCase,
    stamps: Array.from({ length: engine.mains }, (_, place) => stamps[place] ?? null),
  }
}

/** "Gray cast iron" stands as "gray cast iron" within a sentence; "V8" stays. */
function inSentence(text: string): string {
  return /^[A-Z][a-z]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text
}
