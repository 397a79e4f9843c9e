import { compressionChange } from '../mechanics/compression-change.ts'
import { gearboxAlignment } from '../mechanics/gearbox-alignment.ts'
import type { BoreMachiningInputs } from './bore-machining-fields.ts'
import { InputError } from './input.ts'
import type { Print } from './print.ts'
import { timing } from './timing.ts'
import { geometry, present, type Result, type Step } from './worksheet.ts'

export interface Followers {
  readonly results: readonly Result[]
  readonly steps: readonly Step[]
}

const NONE: Followers = { results: [], steps: [] }

/** What a moved crank axis does to timing, deck and gearbox, as far as their figures are given. */
export function axisFollowers(input: BoreMachiningInputs, shift: number, print: Print): Followers {
  const parts = [
    timing(input, shift, print),
    deck(input, shift, print),
    gearbox(input, shift, print),
  ]
  return {
    results: parts.flatMap(({ results }) => results),
    steps: parts.flatMap(({ steps }) => steps),
  }
}

const DECK = ['bore', 'stroke', 'rodLength', 'compressionRatio'] as const

function deck(input: BoreMachiningInputs, axisShift: number, print: Print): Followers {
  const given = DECK.filter((key) => input[key] !== undefined)
  if (given.length === 0) return NONE
  const { bore, stroke, rodLength, compressionRatio } = input
  if (!bore || !stroke || !rodLength || !compressionRatio) {
    const missing = DECK.find((key) => !input[key]) ?? 'bore'
    throw new InputError(missing, `give all of ${DECK.join(', ')} for the deck`)
  }
  const { bankAngle, deckCut, deckClearance = 0 } = input
  const change = compressionChange({
    bore,
    stroke,
    rodLength,
    compressionRatio,
    deckClearance,
    axisShift,
    ...present({ bankAngle, deckCut }),
  })
  const fine = (one: number): string => print.figure(one, 'fine')
  return {
    results: [
      print.result('pistonRise', 'Piston rises at dead centre by', change.rise, 'fine'),
      print.result('deckClearance', 'Piston below the deck', change.deckClearance, 'fine'),
      print.ratio('compressionRatio', 'Compression ratio after', change.compressionRatio),
    ],
    steps: [
      {
        title: 'Deck height and compression',
        formula: 'rise = y cos β + √((l + r)² − e²) − (l + r); r′ = 1 + Vd / (Vc − A (rise + cut))',
        withNumbers: `y = ${fine(axisShift)}, β = ${print.figure(bankAngle ?? 0, 'angle')}, cut ${fine(deckCut ?? 0)}`,
        result: `rise ${fine(change.rise)}, piston ${fine(change.deckClearance)} below the deck, ratio ${print.number(change.compressionRatio)}`,
        source: geometry('Offset slider-crank, exact'),
      },
    ],
  }
}

function gearbox(input: BoreMachiningInputs, shift: number, print: Print): Followers {
  const { inputShaft, gearboxX = 0, gearboxY = 0 } = input
  if (inputShaft === undefined) return NONE
  const found = gearboxAlignment(shift, { x: gearboxX, y: gearboxY }, inputShaft)
  const fine = (one: number): string => print.figure(one, 'fine')
  return {
    results: [
      print.result('gearboxOffset', 'Gearbox bore off the crank axis by', found.offset, 'fine'),
      print.result('indicatorReading', 'Dial indicator reads', found.indicatorReading, 'fine'),
      print.result('shaftAngle', 'Bend in the input shaft', found.shaftAngle, 'angle'),
    ],
    steps: [
      {
        title: 'Gearbox alignment',
        formula: 'offset = √(x² + (y − shift)²); reading = 2 × offset',
        withNumbers: `offset = √((${fine(gearboxX)})² + (${fine(gearboxY)} − ${fine(shift)})²)`,
        result: `offset ${fine(found.offset)}, reading ${fine(found.indicatorReading)}`,
        source: geometry('A turned indicator reads twice the offset'),
      },
    ],
  }
}
