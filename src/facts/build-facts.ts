import { fromSi } from '../../shared/units.ts'
import { type Build, figureOf, siOf } from '../build/build.ts'
import { defaultMasses } from '../mechanics/masses.ts'
import type { FactValue, FlatFacts } from '../rulebook/evaluate.ts'
import { layered, type Readers, readOff } from '../rulebook/layered-facts.ts'
import type { Rulebook } from '../rulebook/load.ts'
import { type EngineLoads, layoutOf } from './engine-loads.ts'
import type { JointModel } from './joint-model.ts'

/** One standard atmosphere, psi. */
export const ATMOSPHERE = 14.696

/** The full load with the most of something. */
export function most<T>(items: readonly T[], of: (item: T) => number): T {
  return items.reduce((best, item) => (of(item) > of(best) ? item : best))
}

/** A build and what was worked out of it; the loads when they are first read. */
export interface Worked {
  readonly build: Build
  readonly loads: EngineLoads
  /** The joint as it stands. */
  readonly present: JointModel
  readonly rulebook: Rulebook
}

/**
 * What follows from a build before any route is tried, in the units of
 * rules/computed-facts.json.
 *
 * @param reachable - power that the figures can make at most, W, where a target set the loads
 */
export function buildFacts(worked: Worked, reachable: number | undefined): FlatFacts {
  const facts = readOff(FACTS, worked)
  if (reachable === undefined) return facts
  const ofTarget = new Map([
    ['powerReachable', fromSi(reachable, 'hp')],
    ['powerShortfall', siOf(worked.build, 'targetPower') / reachable],
  ])
  return layered(ofTarget, facts)
}

const FACTS: Readers<Worked> = new Map<string, (worked: Worked) => FactValue>([
  ['cylinders', ({ build }) => layoutOf(build).cylinders.length],
  ['splitCase', ({ build }) => layoutOf(build).splitCase],
  ['sweptVolume', ({ build }) => sweptVolume(build)],
  [
    'displacementError',
    ({ build }) =>
      (100 * Math.abs(figureOf(build, 'displacement') - sweptVolume(build))) / sweptVolume(build),
  ],
  ['boreOverStroke', ({ build }) => figureOf(build, 'bore') / figureOf(build, 'stroke')],
  ['rodOverStroke', ({ build }) => figureOf(build, 'rodLength') / figureOf(build, 'stroke')],
  ['meanPistonSpeed', ({ build }) => (2 * siOf(build, 'stroke') * figureOf(build, 'peakRpm')) / 60],
  [
    'reciprocatingMassRatio',
    ({ build }) =>
      siOf(build, 'reciprocatingMass') /
      defaultMasses(siOf(build, 'bore'), 'forged').reciprocating.likely,
  ],
  ['crownThickness', (worked) => figureOf(worked.build, 'capHeight') - housing(worked) / 2],
  ['spanClearance', (worked) => figureOf(worked.build, 'capBoltSpan') - housing(worked)],
  [
    'peakPressure',
    ({ loads }) =>
      most(loads.fullLoads, (load) => load.cycle.peakPressure).cycle.peakPressure / 1e5,
  ],
  ['computedPower', ({ loads }) => fromSi(most(loads.fullLoads, (load) => load.power).power, 'hp')],
  ['computedTorque', ({ loads }) => fromSi(pullest(loads).torque, 'lb ft')],
  ['bmep', ({ loads }) => pullest(loads).bmep / 1e5],
  ['knockLimited', ({ loads }) => loads.fullLoads.some((load) => load.knockLimited)],
  [
    'sparkRetard',
    ({ loads }) => (Math.max(...loads.fullLoads.map((load) => load.sparkRetard)) * 180) / Math.PI,
  ],
  ['peakPressureReached', ({ loads }) => loads.peakReached],
  ['presentShareOfProof', ({ present }) => present.shareOfProof * 100],
  ['stake', ({ build }) => figureOf(build, 'invested')],
  // Rules compare money with the price list, whatever currency a person counts in.
  [
    'stakeInListCurrency',
    ({ build, rulebook }) =>
      figureOf(build, 'invested') / (rulebook.cost.rates[build.currency] ?? 1),
  ],
  [
    'pressedCompression',
    ({ build }) =>
      figureOf(build, 'compressionRatio') * (1 + figureOf(build, 'boost') / ATMOSPHERE),
  ],
  // What only a full sweep tells; sentences and cautions ask for it, what-ifs do not.
  ['unitLoad', ({ build, loads }) => unitLoadOf(build, loads.peakForce) / 1e5],
  ['worstPull', ({ loads }) => loads.sweep.worstPull.force / 1000],
  ['worstPullMain', ({ loads }) => loads.sweep.worstPull.main + 1],
  ['worstSide', ({ loads }) => loads.sweep.worstSide.force / 1000],
  ['worstSideMain', ({ loads }) => loads.sweep.worstSide.main + 1],
])

function pullest({ fullLoads }: EngineLoads): EngineLoads['fullLoads'][number] {
  return most(fullLoads, (load) => load.torque)
}

/** Load over the projected area of a main bearing of the build, Pa. */
export function unitLoadOf(build: Build, force: number): number {
  return force / (siOf(build, 'mainJournalDiameter') * siOf(build, 'mainBearingWidth'))
}

/** cu in */
function sweptVolume(build: Build): number {
  const { length } = layoutOf(build).cylinders
  return (Math.PI / 4) * figureOf(build, 'bore') ** 2 * figureOf(build, 'stroke') * length
}

/** Diameter of the housing bore, in. */
function housing({ build, rulebook }: Worked): number {
  const shells = fromSi(2 * rulebook.joint.shellThickness.value, 'in')
  return figureOf(build, 'mainJournalDiameter') + shells
}
