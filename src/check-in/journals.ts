import { combinedUncertainty } from '../mechanics/guard-band.ts'
import { gaugeFor } from '../shop-sheet/limits.ts'
import { rowOf } from '../shop-sheet/readings.ts'
import { type Judged, judge } from './judge.ts'
import { type MeasureCase, meanOf, showLength } from './measure-case.ts'

/** One journal: its mean diameter, m, and what is judged of it. */
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
  const given = read.filter((value) => value !== undefined)
  const size = judge(measuring, 'journal-size', {
    value: mean,
    least: Math.min(...given),
    greatest: Math.max(...given),
    uncertainty: gaugeFor('micrometer', measuring).size,
    show: showLength(measuring),
  })
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
      size,
      ...greatestOf(measuring, 'journal-out-of-round', rounds),
      ...greatestOf(measuring, 'journal-taper', tapers),
    ],
  }
}

/** The greatest of some differences against its limit; nothing where there is none. */
function greatestOf(
  measuring: MeasureCase,
  id: 'journal-out-of-round' | 'journal-taper',
  differences: readonly number[],
): Judged[] {
  if (differences.length === 0) return []
  const { repeat } = gaugeFor('micrometer', measuring)
  const uncertainty = combinedUncertainty([{ uncertainty: repeat }, { uncertainty: repeat }])
  const value = Math.max(...differences)
  return [judge(measuring, id, { value, uncertainty, show: showLength(measuring) })]
}

function spans(pairs: readonly (readonly [number | undefined, number | undefined])[]): number[] {
  return pairs.flatMap(([one, other]) =>
    one === undefined || other === undefined ? [] : [Math.abs(one - other)],
  )
}
