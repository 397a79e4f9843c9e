import { combinedUncertainty } from '../mechanics/guard-band.ts'
import { type HousingBore, housingBore } from '../mechanics/housing-bores.ts'
import { say } from '../rulebook/places.ts'
import { gaugeFor } from '../shop-sheet/limits.ts'
import { rowOf } from '../shop-sheet/readings.ts'
import { type Judged, judge } from './judge.ts'
import {
  allOf,
  attempt,
  type MeasureCase,
  showLength,
  type Worked,
  worked,
} from './measure-case.ts'

/** One main's housing: the bore that fits its readings, and what is judged of it. */
export interface HousingCheck {
  readonly bore: HousingBore
  readonly judged: readonly Judged[]
  readonly worked: readonly Worked[]
}

/** Size, roundness and taper of one main's housing; undefined until all six are read. */
export function housingCheck(measuring: MeasureCase, main: number): HousingCheck | undefined {
  const read = allOf(rowOf(measuring.readings, 'housing', main))
  if (!read) return undefined
  const { parts } = measuring.rules.checkIn.beyond
  const bore = attempt(measuring, say(parts.housing, { main: `${main}` }), () =>
    housingBore({ front: read.slice(0, 3), rear: read.slice(3) }),
  )
  if (!bore) return undefined
  return { bore, judged: shapeJudged(measuring, bore), worked: workedOf(measuring, bore) }
}

function shapeJudged(
  measuring: MeasureCase,
  { mean, least, greatest, outOfRound, directionalTaper }: HousingBore,
): Judged[] {
  const show = showLength(measuring)
  const gauge = gaugeFor('bore', measuring)
  // A difference of two readings with one gauge: its setting drops out, its repeat counts twice.
  const difference = combinedUncertainty([
    { uncertainty: gauge.repeat },
    { uncertainty: gauge.repeat },
  ])
  const size = { value: mean, least, greatest, uncertainty: gauge.size, show }
  const round = { value: outOfRound, uncertainty: difference, show }
  const taper = { value: directionalTaper, uncertainty: difference, show }
  return [
    judge(measuring, 'housing-size', size),
    judge(measuring, 'housing-out-of-round', round),
    judge(measuring, 'housing-taper', taper),
  ]
}

function workedOf(measuring: MeasureCase, bore: HousingBore): Worked[] {
  const show = showLength(measuring)
  const { mean, front, rear, vertical, horizontal, taper } = bore
  return [
    worked(measuring, 'housing', show(mean)),
    worked(measuring, 'housingOval', `${show(front.ovality)}, ${show(rear.ovality)}`),
    worked(measuring, 'housingFitted', `${show(vertical)}, ${show(horizontal)}`),
    worked(measuring, 'housingTaper', show(taper)),
  ]
}
