import { measuredAxisShift } from '../mechanics/axis-shift.ts'
import type { HousingBore } from '../mechanics/housing-bores.ts'
import { say } from '../rulebook/places.ts'
import { gaugeFor } from '../shop-sheet/limits.ts'
import { rowOf } from '../shop-sheet/readings.ts'
import { type Judged, judge } from './judge.ts'
import { attempt, type MeasureCase, showLength } from './measure-case.ts'

/** How far the crank axis moved up at one end, m, with its expanded uncertainty. */
export interface Shift {
  readonly shift: number
  readonly uncertainty: number
  readonly end: 'front' | 'rear'
}

/** How far the crank axis moved at both ends, and what is judged of it. */
export interface ShiftCheck {
  /** At the timing drive and at the gearbox; one stands for the other where only it is known. */
  readonly front: Shift
  readonly rear: Shift
  readonly judged: readonly Judged[]
}

const ENDS = ['front', 'rear'] as const

/** Axis shift at both ends, from depths before and after or as the shop told it. */
export function shiftCheck(
  measuring: MeasureCase,
  bores: readonly (HousingBore | undefined)[],
): ShiftCheck | undefined {
  const found = ENDS.map((end, place) =>
    shiftAt(measuring, end, place === 0 ? bores[0] : bores.at(-1)),
  )
  const [front = found[1], rear = found[0]] = found
  if (!front || !rear) return undefined
  const show = showLength(measuring)
  return {
    front,
    rear,
    judged: found.flatMap((one) =>
      one
        ? [
            judge(measuring, 'axis-shift', {
              value: one.shift,
              uncertainty: one.uncertainty,
              show,
              where: say(measuring.rules.checkIn.judged.where.end, { end: one.end }),
            }),
          ]
        : [],
    ),
  }
}

function shiftAt(
  measuring: MeasureCase,
  end: Shift['end'],
  bore: HousingBore | undefined,
): Shift | undefined {
  const { readings, rules } = measuring
  const row = rowOf(readings, 'axis', ENDS.indexOf(end) + 1)
  const [crownBefore, crownAfter, diameterBefore, after, told] = row
  const depth = gaugeFor('depth', measuring).size
  const diameterAfter = after ?? bore?.vertical
  if (
    crownBefore === undefined ||
    crownAfter === undefined ||
    diameterBefore === undefined ||
    diameterAfter === undefined
  ) {
    return told === undefined ? undefined : { shift: told, uncertainty: depth, end }
  }
  const from = readings.text('axisFrom') === 'sump-rail' ? 'sump-rail' : 'deck'
  const diameter = gaugeFor('bore', measuring).size
  const measured = attempt(measuring, say(rules.checkIn.beyond.parts.axis, { end }), () =>
    measuredAxisShift(
      { crownBefore, crownAfter, diameterBefore, diameterAfter, from },
      { depth, diameter },
    ),
  )
  return measured && { ...measured, end }
}
