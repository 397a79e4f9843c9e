import { type BoreAlignment, boreAlignment } from '../mechanics/bore-alignment.ts'
import { combinedUncertainty } from '../mechanics/guard-band.ts'
import type { HousingBore } from '../mechanics/housing-bores.ts'
import { feelerGap } from '../mechanics/straightness.ts'
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

/** How straight the row of mains is; lengths in m. */
export interface AlignmentCheck {
  /** The whole row. */
  readonly whole: readonly Judged[]
  /** Steps, each under the main of the two that stands farther off. */
  readonly byMain: ReadonlyMap<number, readonly Judged[]>
  readonly worked: readonly Worked[]
  /** Distance of each centre from the best straight axis, m. */
  readonly offAxis: readonly number[]
}

interface Centres {
  readonly places: readonly { x: number; y: number }[]
  /** Expanded uncertainty of one centre. */
  readonly uncertainty: number
  readonly how: string
}

/** Alignment of neighbours and of the whole row; undefined until every main has a reading. */
export function alignmentCheck(
  measuring: MeasureCase,
  bores: readonly (HousingBore | undefined)[],
): AlignmentCheck | undefined {
  const rows = bores.map((_, place) => rowOf(measuring.readings, 'line', place + 1))
  const centres = fromOffsets(measuring, rows) ?? fromFeelers(measuring, rows, bores)
  if (!centres) return undefined
  const { positions, said } = positionsOf(rows)
  const { beyond, values } = measuring.rules.checkIn
  const found = attempt(measuring, beyond.parts.alignment, () =>
    boreAlignment(positions, centres.places),
  )
  if (!found) return undefined
  const show = showLength(measuring)
  const uncertainty = combinedUncertainty([
    { uncertainty: centres.uncertainty },
    { uncertainty: centres.uncertainty },
  ])
  return {
    whole: [
      judge(measuring, 'bore-straightness', {
        value: Math.max(found.upright.range, found.sideways.range),
        uncertainty,
        show,
      }),
    ],
    byMain: stepsByMain(measuring, found, uncertainty),
    offAxis: found.offAxis,
    worked: [
      worked(measuring, 'measuredBy', centres.how),
      worked(measuring, 'spacing', said ? values.spacingGiven : values.spacingEven),
      ...workedOf(measuring, found),
    ],
  }
}

function workedOf(measuring: MeasureCase, found: BoreAlignment): Worked[] {
  const { upright, sideways, greatestBow, offAxis } = found
  const show = showLength(measuring)
  return [
    worked(measuring, 'straightness', `${show(upright.range)}, ${show(sideways.range)}`),
    worked(measuring, 'pairOfLines', show(upright.leastZone)),
    worked(measuring, 'bow', show(greatestBow)),
    ...offAxis.map((off, place) => ({
      label: say(measuring.rules.checkIn.figures.offAxis, { main: `${place + 1}` }),
      text: show(off),
    })),
  ]
}

function stepsByMain(
  measuring: MeasureCase,
  { steps, bows, offAxis }: BoreAlignment,
  uncertainty: number,
): Map<number, Judged[]> {
  const byMain = new Map<number, Judged[]>()
  const show = showLength(measuring)
  const words = measuring.rules.checkIn.judged.where.step
  steps.forEach((value, place) => {
    const where = say(words, { main: `${place + 1}`, next: `${place + 2}` })
    const judged = judge(measuring, 'bore-step', { value, uncertainty, show, where })
    // A lone main that is out bows most; at the ends the distance from the axis tells.
    const stands = (at: number) => (bows[at] ?? 0) + (offAxis[at] ?? 0)
    const main = stands(place) > stands(place + 1) ? place + 1 : place + 2
    byMain.set(main, [...(byMain.get(main) ?? []), judged])
  })
  return byMain
}

type Rows = readonly (readonly (number | undefined)[])[]

function fromOffsets(measuring: MeasureCase, rows: Rows): Centres | undefined {
  const upright = allOf(rows.map(([, , y]) => y))
  if (!upright) return undefined
  const sideways = allOf(rows.map(([, x]) => x))
  const { size } = gaugeFor('offset', measuring)
  const { values } = measuring.rules.checkIn
  return {
    places: upright.map((y, place) => ({ x: sideways?.[place] ?? 0, y })),
    uncertainty: size,
    how: sideways ? values.centres : values.centresUpright,
  }
}

/**
 * Gaps under a straightedge in the half bores. A larger bore lies deeper under it though its
 * centre is where it should be, so half of the difference of diameters is given back.
 */
function fromFeelers(
  measuring: MeasureCase,
  rows: Rows,
  bores: readonly (HousingBore | undefined)[],
): Centres | undefined {
  const { size } = gaugeFor('feeler', measuring)
  const { beyond, values } = measuring.rules.checkIn
  const gaps = attempt(measuring, beyond.parts.straightedge, () =>
    allGaps(rows.map(([, , , passes, refused]) => [passes, refused] as const)),
  )
  if (!gaps) return undefined
  const radii = allOf(bores.map((bore) => bore && bore.vertical / 2))
  const mean = radii ? radii.reduce((sum, radius) => sum + radius, 0) / radii.length : 0
  const halfWidths = gaps.map(({ low, high }) => (high - low) / 2)
  return {
    places: gaps.map(({ middle }, place) => ({
      x: 0,
      y: (radii?.[place] ?? mean) - mean - middle,
    })),
    uncertainty: combinedUncertainty([
      { uncertainty: size },
      { uncertainty: Math.max(...halfWidths) },
    ]),
    how: values.feelers,
  }
}

function allGaps(
  leaves: readonly (readonly [number | undefined, number | undefined])[],
): ReturnType<typeof feelerGap>[] | undefined {
  const gaps = leaves.map(([passes, refused]) =>
    passes === undefined && refused === undefined
      ? undefined
      : feelerGap(passes ?? 0, refused ?? passes ?? 0),
  )
  return gaps.every((gap) => gap !== undefined) ? gaps : undefined
}

/** Places along the crank; the scale drops out of straightness, so even spacing will do. */
function positionsOf(rows: Rows): { positions: number[]; said: boolean } {
  const given = rows.map(([z], place) => (place === 0 ? (z ?? 0) : z))
  const all = allOf(given)
  const rising = all?.every((z, place) => place === 0 || z > (all[place - 1] as number))
  return all && rising
    ? { positions: all, said: true }
    : { positions: rows.map((_, place) => place / 10), said: false }
}
