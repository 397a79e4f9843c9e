import { compressionChange } from '../mechanics/compression-change.ts'
import { centreFromIndicator, gearboxAlignment } from '../mechanics/gearbox-alignment.ts'
import { combinedUncertainty } from '../mechanics/guard-band.ts'
import { gaugeFor, limitFor } from '../shop-sheet/limits.ts'
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
} from './measure-case.ts'

export interface FollowCheck {
  readonly judged: readonly Judged[]
  readonly worked: readonly Worked[]
}

/** Deck height and compression after the axis moved by the mean of both ends. */
export function deckCheck(
  measuring: MeasureCase,
  { front, rear }: ShiftCheck,
  notes: string[],
): FollowCheck | undefined {
  const { engine, readings } = measuring
  const { bore, stroke, rodLength, compressionRatio, bankAngle } = engine
  const before = readings.length('deckBefore')
  const changed = (axisShift: number) =>
    compressionChange({
      bore,
      stroke,
      rodLength,
      compressionRatio,
      bankAngle,
      axisShift,
      deckClearance: before ?? 0,
      deckCut: readings.length('deckCut') ?? 0,
    })
  return attempt(
    'Deck height and compression',
    () => {
      const shift = (front.shift + rear.shift) / 2
      const uncertainty = combinedUncertainty([
        { uncertainty: front.uncertainty, sensitivity: 0.5 },
        { uncertainty: rear.uncertainty, sensitivity: 0.5 },
      ])
      const now = changed(shift)
      const farther = changed(shift + uncertainty)
      const show = showLength(measuring)
      const ratio = (value: number) => plainText(value, 3)
      return {
        judged: [
          judge(limitFor('compression-change', measuring), {
            value: Math.abs(now.compressionRatio - compressionRatio),
            uncertainty: Math.abs(farther.compressionRatio - now.compressionRatio),
            show: ratio,
          }),
          ...(before === undefined
            ? []
            : [
                judge(limitFor('deck-clearance', measuring), {
                  value: now.deckClearance,
                  uncertainty: combinedUncertainty([
                    { uncertainty: gaugeFor('depth', measuring).size },
                    { uncertainty },
                  ]),
                  show,
                }),
              ]),
        ],
        worked: [
          { label: 'Piston comes higher by', text: show(now.rise) },
          {
            label: 'Compression ratio, before and after',
            text: `${plainText(compressionRatio, 2)}:1, ${plainText(now.compressionRatio, 2)}:1`,
          },
        ],
      }
    },
    notes,
  )
}

/** How the gearbox bore stands to the crank, from four indicator readings. */
export function gearboxCheck(
  measuring: MeasureCase,
  shifts: ShiftCheck | undefined,
  notes: string[],
): FollowCheck | undefined {
  const { readings } = measuring
  const sides = ['boxTop', 'boxRight', 'boxBottom', 'boxLeft'].map((id) => readings.length(id))
  const read = allOf(sides)
  if (!read) return undefined
  const takenAfter = readings.text('boxTaken') === 'after'
  const rear = takenAfter ? undefined : shifts?.rear
  return attempt(
    'The gearbox bore',
    () => {
      const [top = 0, right = 0, bottom = 0, left = 0] = read
      const centre = centreFromIndicator({ top, right, bottom, left })
      const shaft = readings.length('boxShaft')
      const now = gearboxAlignment(rear?.shift ?? 0, centre, shaft ?? 0.2)
      const show = showLength(measuring)
      const indicator = gaugeFor('indicator', measuring)
      return {
        judged: [
          judge(limitFor('gearbox', measuring), {
            value: now.indicatorReading,
            uncertainty: combinedUncertainty([
              { uncertainty: indicator.repeat, sensitivity: Math.SQRT2 },
              { uncertainty: rear?.uncertainty ?? 0, sensitivity: 2 },
            ]),
            show,
          }),
        ],
        worked: [
          {
            label: 'Gearbox bore from the crank axis: to the right, up',
            text: `${show(now.x)}, ${show(now.y)}`,
          },
          { label: 'The four readings disagree by', text: show(Math.abs(centre.misread)) },
          ...(shaft === undefined
            ? []
            : [{ label: 'Bend of the input shaft', text: showDegrees(now.shaftAngle) }]),
          ...(takenAfter || rear
            ? []
            : [{ label: 'Axis shift', text: 'not measured; taken as nought here' }]),
        ],
      }
    },
    notes,
  )
}

/** End float against its limits. */
export function thrustCheck(measuring: MeasureCase): FollowCheck | undefined {
  const value = measuring.readings.length('endFloat')
  if (value === undefined) return undefined
  return {
    judged: [
      judge(limitFor('end-float', measuring), {
        value,
        uncertainty: gaugeFor('indicator', measuring).size,
        show: showLength(measuring),
      }),
    ],
    worked: [],
  }
}
