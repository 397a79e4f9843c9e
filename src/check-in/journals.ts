import { combinedUncertainty } from '../mechanics/guard-band.ts'
import { gaugeFor, limitFor } from '../shop-sheet/limits.ts'
import { rowOf } from '../shop-sheet/readings.ts'
import { type Judged, judge } from './judge.ts'
import { type MeasureCase, meanOf, showLength } from './measure-case.ts'

export interface JournalCheck {
  readonly mean: number
  readonly judged: readonly Judged[]
}

/** Size, roundness and taper of one journal, from whatever of its four readings there is. */
export function journalCheck(measuring: MeasureCase, main: number): JournalCheck | undefined {
  const read = rowOf(measuring.readings, 'journal', main)
  const [frontOne, frontOther, rearOne, rearOther] = read
  const mean = meanOf(read)
  if (mean === undefined) return undefined
  const show = showLength(measuring)
  const gauge = gaugeFor('micrometer', measuring)
  const given = read.filter((value) => value !== undefined)
  const uncertainty = combinedUncertainty([
    { uncertainty: gauge.repeat },
    { uncertainty: gauge.repeat },
  ])
  const rounds = spans([
    [frontOne, frontOther],
    [rearOne, rearOther],
  ])
  const tapers = spans([
    [frontOne, rearOne],
    [frontOther, rearOther],
  ])
  return {
    mean,
    judged: [
      judge(limitFor('journal-size', measuring), {
        value: mean,
        least: Math.min(...given),
        greatest: Math.max(...given),
        uncertainty: gauge.size,
        show,
      }),
      ...(rounds.length === 0
        ? []
        : [
            judge(limitFor('journal-out-of-round', measuring), {
              value: Math.max(...rounds),
              uncertainty,
              show,
            }),
          ]),
      ...(tapers.length === 0
        ? []
        : [
            judge(limitFor('journal-taper', measuring), {
              value: Math.max(...tapers),
              uncertainty,
              show,
            }),
          ]),
    ],
  }
}

function spans(pairs: readonly (readonly [number | undefined, number | undefined])[]): number[] {
  return pairs.flatMap(([one, other]) =>
    one === undefined || other === undefined ? [] : [Math.abs(one - other)],
  )
}
