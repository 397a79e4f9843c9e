import { fromSi } from '../../shared/units.ts'
import { type Build, figureOf, has, siOf } from '../build/build.ts'
import { defaultMasses } from '../mechanics/masses.ts'
import type { FactValue, FlatFacts } from '../rulebook/evaluate.ts'
import { late, layered } from '../rulebook/layered-facts.ts'
import type { Rulebook } from '../rulebook/load.ts'
import type { EngineLoads } from './engine-loads.ts'
import type { JointModel } from './joint-model.ts'

/** One standard atmosphere, psi. */
const ATMOSPHERE = 14.696

/** The full load with the most of something. */
export function most<T>(items: readonly T[], of: (item: T) => number): T {
  return items.reduce((best, item) => (of(item) > of(best) ? item : best))
}

/**
 * What follows from a build before any route is tried, in the units of
 * rules/computed-facts.json.
 */
export function buildFacts(
  build: Build,
  loads: EngineLoads,
  present: JointModel,
  rulebook: Rulebook,
): FlatFacts {
  const strongest = most(loads.fullLoads, (load) => load.power)
  const pullest = most(loads.fullLoads, (load) => load.torque)
  const hardest = most(loads.fullLoads, (load) => load.cycle.peakPressure)
  const facts = new Map<string, FactValue>([
    ['cylinders', loads.layout.cylinders.length],
    ['splitCase', loads.layout.splitCase],
    ...sizes(build, loads, rulebook),
    ['peakPressure', hardest.cycle.peakPressure / 1e5],
    ['computedPower', fromSi(strongest.power, 'hp')],
    ['computedTorque', fromSi(pullest.torque, 'lb ft')],
    ['bmep', pullest.bmep / 1e5],
    ['knockLimited', loads.fullLoads.some((load) => load.knockLimited)],
    ['sparkRetard', (Math.max(...loads.fullLoads.map((l) => l.sparkRetard)) * 180) / Math.PI],
    ['peakPressureReached', loads.peakReached],
    ['presentShareOfProof', present.shareOfProof * 100],
    ['stake', figureOf(build, 'invested')],
    // Rules compare money with the price list, whatever currency a person counts in.
    [
      'stakeInListCurrency',
      figureOf(build, 'invested') / (rulebook.cost.rates[build.currency] ?? 1),
    ],
    [
      'pressedCompression',
      figureOf(build, 'compressionRatio') * (1 + figureOf(build, 'boost') / ATMOSPHERE),
    ],
  ])
  if (has(build, 'targetPower') && loads.reachable !== undefined) {
    facts.set('powerReachable', fromSi(loads.reachable, 'hp'))
    facts.set('powerShortfall', siOf(build, 'targetPower') / loads.reachable)
  }
  return layered(worstFacts(build, loads), facts)
}

/** What only a full sweep tells; sentences and cautions ask for it, what-ifs do not. */
function worstFacts(build: Build, loads: EngineLoads): FlatFacts {
  return late({
    unitLoad: () => unitLoadOf(build, loads.peakForce) / 1e5,
    worstPull: () => loads.sweep.worstPull.force / 1000,
    worstPullMain: () => loads.sweep.worstPull.main + 1,
    worstSide: () => loads.sweep.worstSide.force / 1000,
    worstSideMain: () => loads.sweep.worstSide.main + 1,
  })
}

/** Load over the projected area of a main bearing of the build, Pa. */
export function unitLoadOf(build: Build, force: number): number {
  return force / (siOf(build, 'mainJournalDiameter') * siOf(build, 'mainBearingWidth'))
}

function sizes(build: Build, loads: EngineLoads, { joint }: Rulebook): [string, FactValue][] {
  const inches = (key: Parameters<typeof figureOf>[1]): number => figureOf(build, key)
  const swept =
    (Math.PI / 4) * inches('bore') ** 2 * inches('stroke') * loads.layout.cylinders.length
  const usual = defaultMasses(siOf(build, 'bore'), 'forged').reciprocating.likely
  const housing = inches('mainJournalDiameter') + fromSi(2 * joint.shellThickness.value, 'in')
  return [
    ['sweptVolume', swept],
    ['displacementError', (100 * Math.abs(inches('displacement') - swept)) / swept],
    ['boreOverStroke', inches('bore') / inches('stroke')],
    ['rodOverStroke', inches('rodLength') / inches('stroke')],
    ['meanPistonSpeed', (2 * siOf(build, 'stroke') * figureOf(build, 'peakRpm')) / 60],
    ['reciprocatingMassRatio', siOf(build, 'reciprocatingMass') / usual],
    ['crownThickness', inches('capHeight') - housing / 2],
    ['spanClearance', inches('capBoltSpan') - housing],
  ]
}
