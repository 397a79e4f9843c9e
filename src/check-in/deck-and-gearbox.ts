import { type CompressionChange, compressionChange } from '../mechanics/compression-change.ts'
import { centreFromIndicator, gearboxAlignment } from '../mechanics/gearbox-alignment.ts'
import { combinedUncertainty } from '../mechanics/guard-band.ts'
import { gaugeFor } from '../shop-sheet/limits.ts'
import { plainText } from '../shop-sheet/workshop-figures.ts'
import type { ShiftCheck } from './axis-shift.ts'
import { type Judged, judge } from './judge.ts'
import {
  allOf,
  attempt,
  type MeasureCase,
  showDegrees,
  showLength,
  type Worked,
  worked,
} from './measure-case.ts'

/** What follows from a moved axis: what is judged, and what is only worked out. */
export interface FollowCheck {
  readonly judged: readonly Judged[]
  readonly worked: readonly Worked[]
}

/** Deck height and compression after the axis moved by the mean of both ends. */
export function deckCheck(measuring: MeasureCase, shifts: ShiftCheck): FollowCheck | undefined {
  const { parts } = measuring.rules.checkIn.beyond
  return attempt(measuring, parts.deck, () => deckFound(measuring, shifts))
}

function deckFound(measuring: MeasureCase, { front, rear }: ShiftCheck): FollowCheck {
  const { compressionRatio } = measuring.engine
  const shift = (front.shift + rear.shift) / 2
  const uncertainty = combinedUncertainty([
    { uncertainty: front.uncertainty, sensitivity: 0.5 },
    { uncertainty: rear.uncertainty, sensitivity: 0.5 },
  ])
  const now = changeAt(measuring, shift)
  const farther = changeAt(measuring, shift + uncertainty)
  return {
    judged: [
      judge(measuring, 'compression-change', {
        value: Math.abs(now.compressionRatio - compressionRatio),
        uncertainty: Math.abs(farther.compressionRatio - now.compressionRatio),
        show: (value, finer = 0) => plainText(value, 3 + finer),
      }),
      ...deckJudged(measuring, now.deckClearance, uncertainty),
    ],
    worked: [
      worked(measuring, 'rise', showLength(measuring)(now.rise)),
      worked(
        measuring,
        'compression',
        `${plainText(compressionRatio, 2)}:1, ${plainText(now.compressionRatio, 2)}:1`,
      ),
    ],
  }
}

/** What an axis moved up by so much, m, does to deck and compression. */
function changeAt({ engine, readings }: MeasureCase, axisShift: number): CompressionChange {
  const { bore, stroke, rodLength, compressionRatio, bankAngle } = engine
  return compressionChange({
    bore,
    stroke,
    rodLength,
    compressionRatio,
    bankAngle,
    axisShift,
    deckClearance: readings.length('deckBefore') ?? 0,
    deckCut: readings.length('deckCut') ?? 0,
  })
}

/** The piston below its deck; only where it was measured before. */
function deckJudged(measuring: MeasureCase, value: number, shift: number): Judged[] {
  if (measuring.readings.length('deckBefore') === undefined) return []
  const uncertainty = combinedUncertainty([
    { uncertainty: gaugeFor('depth', measuring).size },
    { uncertainty: shift },
  ])
  const show = showLength(measuring)
  return [judge(measuring, 'deck-clearance', { value, uncertainty, show })]
}

/** How the gearbox bore stands to the crank, from four indicator readings. */
export function gearboxCheck(
  measuring: MeasureCase,
  shifts: ShiftCheck | undefined,
): FollowCheck | undefined {
  const { readings, rules } = measuring
  const sides = ['boxTop', 'boxRight', 'boxBottom', 'boxLeft'].map((id) => readings.length(id))
  const read = allOf(sides)
  if (!read) return undefined
  return attempt(measuring, rules.checkIn.beyond.parts.gearbox, () =>
    gearboxFound(measuring, shifts, read),
  )
}

function gearboxFound(
  measuring: MeasureCase,
  shifts: ShiftCheck | undefined,
  [top = 0, right = 0, bottom = 0, left = 0]: readonly number[],
): FollowCheck {
  const { readings, rules } = measuring
  const isAfter = readings.text('boxTaken') === 'after'
  // Read after the cut, the shift is in the readings already.
  const rear = isAfter ? undefined : shifts?.rear
  const centre = centreFromIndicator({ top, right, bottom, left })
  const shaft = readings.length('boxShaft')
  // Any length will do where none is said: only the bend rests on it, and is not shown then.
  const now = gearboxAlignment(rear?.shift ?? 0, centre, shaft ?? 0.2)
  const show = showLength(measuring)
  const uncertainty = combinedUncertainty([
    { uncertainty: gaugeFor('indicator', measuring).repeat, sensitivity: Math.SQRT2 },
    { uncertainty: rear?.uncertainty ?? 0, sensitivity: 2 },
  ])
  const bend = worked(measuring, 'angle', showDegrees(now.shaftAngle))
  const unknown = worked(measuring, 'shift', rules.checkIn.values.shiftUnknown)
  return {
    judged: [judge(measuring, 'gearbox', { value: now.indicatorReading, uncertainty, show })],
    worked: [
      worked(measuring, 'boxOff', `${show(now.x)}, ${show(now.y)}`),
      worked(measuring, 'boxMisread', show(Math.abs(centre.misread))),
      ...(shaft === undefined ? [] : [bend]),
      ...(isAfter || rear ? [] : [unknown]),
    ],
  }
}

/** End float against its limits. */
export function thrustCheck(measuring: MeasureCase): FollowCheck | undefined {
  const value = measuring.readings.length('endFloat')
  if (value === undefined) return undefined
  return {
    judged: [
      judge(measuring, 'end-float', {
        value,
        uncertainty: gaugeFor('indicator', measuring).size,
        show: showLength(measuring),
      }),
    ],
    worked: [],
  }
}
