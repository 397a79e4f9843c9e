import {
  type Clearance,
  type ClearanceInput,
  clearance,
  warmClearance,
} from '../mechanics/clearance.ts'
import { type Crush, crush, overstandInBore } from '../mechanics/crush.ts'
import { combinedUncertainty, meanUncertainty } from '../mechanics/guard-band.ts'
import type { HousingBore } from '../mechanics/housing-bores.ts'
import { say } from '../rulebook/places.ts'
import { gaugeFor } from '../shop-sheet/limits.ts'
import { rowOf } from '../shop-sheet/readings.ts'
import { plainText } from '../shop-sheet/workshop-figures.ts'
import { type Judged, judge } from './judge.ts'
import {
  attempt,
  type MeasureCase,
  meanOf,
  showLength,
  type Worked,
  worked,
} from './measure-case.ts'

/** Crush and clearance of one main: what is judged, and what is only worked out. */
export interface ClearanceCheck {
  readonly judged: readonly Judged[]
  readonly worked: readonly Worked[]
}

/** Crush of the shells and the running clearance of one main, cold and warm. */
export function clearanceCheck(
  measuring: MeasureCase,
  main: number,
  bore: HousingBore,
  journal: number | undefined,
): ClearanceCheck {
  const { readings, rules } = measuring
  const row = rowOf(readings, 'shell', main)
  const [upper, lower, upperEdge, lowerEdge, upperStand, lowerStand, direct] = row
  const read = meanOf([upper, lower])
  const crown = read ?? readings.length('shellWall')
  const squeezed = crushCheck(measuring, main, bore, crown, [upperStand, lowerStand])
  if (journal === undefined || (crown === undefined && direct === undefined)) return squeezed
  const edge = meanOf([upperEdge, lowerEdge])
  // Read straight, the wall is what is left between: only its growth with warmth rests on it.
  const wall = crown ?? (bore.vertical - journal - (direct ?? 0)) / 2
  const input: ClearanceInput = {
    housing: { vertical: bore.vertical, horizontal: bore.horizontal },
    shell: { crown: wall, parting: edge ?? wall },
    journal,
    crushGrowth: Math.min(squeezed.growth, 0.0005),
  }
  const { beyond, values } = rules.checkIn
  const counts = {
    walls: [upper, lower].filter((wall) => wall !== undefined).length,
    journal: rowOf(readings, 'journal', main).filter((one) => one !== undefined).length,
  }
  const running = attempt(measuring, say(beyond.parts.clearance, { main: `${main}` }), () =>
    runningCheck(measuring, input, { direct, hasEdge: edge !== undefined, counts }),
  )
  const isTold = read === undefined && direct === undefined
  return {
    judged: [...(running?.judged ?? []), ...squeezed.judged],
    worked: [
      ...(running?.worked ?? []),
      ...squeezed.worked,
      ...(isTold ? [worked(measuring, 'wall', values.wallTold)] : []),
    ],
  }
}

interface Given {
  readonly direct: number | undefined
  readonly hasEdge: boolean
  readonly counts: Counts
}

function runningCheck(
  measuring: MeasureCase,
  input: ClearanceInput,
  { direct, hasEdge, counts }: Given,
): ClearanceCheck {
  const show = showLength(measuring)
  const { warmth } = measuring.rules
  const { block, cap } = measuring.engine
  const cold = clearance(input)
  const run = { block, cap, blockRise: warmth.blockRise, journalRise: warmth.journalRise }
  const warm = warmClearance(input, run)
  const vertical = direct ?? cold.vertical
  const change = warm.vertical - cold.vertical
  const directly = directUncertainty(measuring)
  const uncertainty = direct === undefined ? clearanceUncertainty(measuring, counts) : directly
  const { directClearance } = measuring.rules.checkIn.judged.near
  const found = {
    uncertainty,
    show,
    ...(direct === undefined && {
      directly: say(directClearance.text, { uncertainty: show(directly) }),
    }),
  }
  const scaled = { ...measuring, journal: input.journal }
  const judged = [
    judge(scaled, 'clearance', { ...found, value: vertical }),
    judge(scaled, 'clearance-warm', { ...found, value: vertical + change }),
  ]
  if (hasEdge) {
    const pinch = eccentricityUncertainty(measuring)
    const measure = { value: cold.eccentricity, uncertainty: pinch, show }
    judged.push(judge(measuring, 'eccentricity', measure))
  }
  return { judged, worked: workedOf(measuring, cold, warm, { direct, hasEdge }) }
}

function workedOf(
  measuring: MeasureCase,
  cold: Clearance,
  warm: Clearance,
  { direct, hasEdge }: Omit<Given, 'counts'>,
): Worked[] {
  const show = showLength(measuring)
  const both = (one: number, other: number) => `${show(one)}, ${show(other)}`
  return [
    worked(measuring, 'clearance', both(cold.vertical, warm.vertical)),
    ...(direct === undefined
      ? []
      : [worked(measuring, 'clearanceReadLess', show(direct - cold.vertical))]),
    ...(hasEdge
      ? [worked(measuring, 'clearanceSideways', both(cold.horizontal, warm.horizontal))]
      : []),
    worked(measuring, 'clearancePerDiameter', plainText(cold.perDiameter, 5)),
  ]
}

/** A gauge set on the journal itself: only how well it repeats is left, twice. */
function directUncertainty(measuring: MeasureCase): number {
  const { repeat } = gaugeFor('bore', measuring)
  return combinedUncertainty([{ uncertainty: repeat }, { uncertainty: repeat }])
}

/** How many readings a clearance that is worked out rests on. */
interface Counts {
  /** Walls read at their middle; none where the service data say the wall. */
  readonly walls: number
  readonly journal: number
}

/**
 * Housing less both walls less journal. Upright the housing is the mean of a reading at each end.
 * Both walls are off by the same setting of one ball micrometer, so that counts twice in full.
 */
function clearanceUncertainty(measuring: MeasureCase, { walls, journal }: Counts): number {
  const bore = meanUncertainty(gaugeFor('bore', measuring), 2)
  // A wall out of the service data is taken as if the gauge had read it once.
  const wall = meanUncertainty(gaugeFor('shell', measuring), Math.max(1, walls))
  const micrometer = meanUncertainty(gaugeFor('micrometer', measuring), Math.max(1, journal))
  return combinedUncertainty([
    { uncertainty: bore },
    { uncertainty: wall, sensitivity: 2 },
    { uncertainty: micrometer },
  ])
}

/** Sideways less upright: the gauges' settings drop out, four walls and two diameters repeat. */
function eccentricityUncertainty(measuring: MeasureCase): number {
  const wall = { uncertainty: gaugeFor('shell', measuring).repeat }
  const bore = { uncertainty: gaugeFor('bore', measuring).repeat }
  return combinedUncertainty([wall, wall, wall, wall, bore, bore])
}

function crushCheck(
  measuring: MeasureCase,
  main: number,
  { mean }: HousingBore,
  crown: number | undefined,
  stands: readonly (number | undefined)[],
): ClearanceCheck & { growth: number } {
  const given = stands.filter((value) => value !== undefined)
  if (given.length === 0) return { judged: [], worked: [], growth: 0 }
  const show = showLength(measuring)
  const checking = middleOf(measuring) ?? mean
  const left = given.map((stand) => overstandInBore(stand, checking, mean))
  const judged = judge(measuring, 'overstand', {
    value: left.reduce((sum, value) => sum + value, 0) / left.length,
    least: Math.min(...left),
    greatest: Math.max(...left),
    uncertainty: gaugeFor('depth', measuring).repeat,
    show,
  })
  const { parts } = measuring.rules.checkIn.beyond
  const pressed = attempt(measuring, say(parts.crush, { main: `${main}` }), () =>
    crushOf(measuring, mean, checking, Math.max(0, meanOf(given) ?? 0), crown),
  )
  if (!pressed) return { judged: [judged], worked: [], growth: 0 }
  return {
    judged: [judged],
    growth: pressed.housingGrowth,
    worked: [
      worked(
        measuring,
        'crush',
        `${plainText(pressed.pressure / 1e6, 1)} MPa, ${plainText(pressed.capForce / 1000, 1)} kN`,
      ),
      worked(measuring, 'crushGrowth', show(pressed.housingGrowth)),
    ],
  }
}

function crushOf(
  { engine }: MeasureCase,
  housingBore: number,
  checkingBore: number,
  overstand: number,
  crown: number | undefined,
): Crush | undefined {
  const { ring, bearingWidth } = engine
  if (!ring || crown === undefined) return undefined
  return crush({
    housingBore,
    checkingBore,
    overstand,
    wall: crown,
    width: bearingWidth,
    housing: ring,
  })
}

/** Middle of the housing's limits in the service data: the bore that crush height is stated for. */
function middleOf({ readings }: MeasureCase): number | undefined {
  const low = readings.length('housingLow')
  const high = readings.length('housingHigh')
  return low === undefined || high === undefined ? undefined : (low + high) / 2
}
