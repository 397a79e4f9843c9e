import { fromSi } from '../../shared/units.ts'
import { type Build, choiceOf, siOf } from '../build/build.ts'
import { STRIDE } from '../mechanics/coarse-look.ts'
import { CRANK_LAYOUTS, type LayoutId } from '../mechanics/crank-layouts.ts'
import { type LoadCase, type LoadSweep, loadSweep } from '../mechanics/load-sweep.ts'
import { type LoadAt, loadsBetween } from '../mechanics/main-load-at.ts'
import { type MainLoads, type MainLoadsInput, mainLoads } from '../mechanics/main-loads.ts'
import {
  emptyMainLoads,
  type MainLoadsWorkspace,
  mainLoadsWorkspace,
} from '../mechanics/main-loads-workspace.ts'
import type { Rulebook } from '../rulebook/load.ts'
import { type CapCases, capCases } from './cap-cases.ts'
import { type Calibration, type EngineGas, engineGas, gasKey, rodOf } from './engine-gas.ts'
import { type LoadScales, loadScales } from './load-scales.ts'
import { type Memory, newMemory, once, remembered } from './memory.ts'

/** Loads of an engine at every few degrees, one for each speed, and at any degree between. */
export interface SampledLoads {
  readonly loads: readonly MainLoads[]
  readonly loadAt: LoadAt
}

/** Everything that the crank train does to the mains, SI. */
export interface EngineLoads extends EngineGas {
  readonly layout: (typeof CRANK_LAYOUTS)[LayoutId]
  /**
   * Worked out when they are read, and written over when those of another engine of the layout
   * are, so that none may be kept.
   */
  readonly sampled: SampledLoads
  /** Of each main and of all; found when it is first read. */
  readonly sweep: LoadSweep
  /** Greatest load on any main bearing, N; found when it is read. */
  readonly peakForce: number
  /** Worked out when they are first read, and so are the cases: a rule may decide without them. */
  readonly scales: LoadScales
  readonly cases: CapCases
}

/** Facts that the inertia loads rest on besides those of the gas. */
const MASS_FACTS = ['reciprocatingMass', 'bigEndMass'] as const
/** Facts whose doubt the sampled loads rest on. */
const DOUBTED = [
  'bore',
  'stroke',
  'peakRpm',
  'reciprocatingMass',
  'bigEndMass',
  'compressionRatio',
  'boost',
  'nitrousPower',
] as const

function loadsKey(build: Build, gas: string): string {
  const masses = MASS_FACTS.map((key) => build.facts[key].value)
  const ends = DOUBTED.map((key) => `${build.facts[key].low}/${build.facts[key].high}`)
  return `${gas}|${build.facts.layout.value}|${masses.join('|')}|${ends.join('|')}`
}

/**
 * Gas cycle at every full-load speed, load on every main, the worst of all, and what falls on the
 * caps in every sampled case.
 *
 * @param build - whole build
 * @param rulebook - its load cases, scatter and cooler effectiveness
 * @param memory - of what was worked out already
 * @param calibration - when the engine is known already; target power and measured pressure are
 *   then not looked at again
 * @throws {DomainError} if a figure is outside the range of the mechanics
 */
export function engineLoads(
  build: Build,
  rulebook: Rulebook,
  memory: Memory = newMemory(),
  calibration?: Calibration,
): EngineLoads {
  const key = gasKey(build, calibration)
  return remembered(memory.loads, loadsKey(build, key), () => {
    const gas = remembered(memory.gas, key, () => engineGas(build, rulebook, calibration))
    return onMains(withBoost(build, gas), gas, rulebook)
  })
}

/** The build with the boost that its target power asks for, if that was worked out. */
export function withBoost(build: Build, { boostFromTarget, boost: gauge }: EngineGas): Build {
  if (!boostFromTarget) return build
  const boost = {
    key: 'boost' as const,
    state: 'derived' as const,
    value: fromSi(gauge, 'psi'),
    because: 'From the target power.',
    source: { kind: 'computed' as const, cite: '' },
  }
  return { ...build, facts: { ...build.facts, boost } }
}

/** Cylinders, throws and mains of a build. */
export function layoutOf(build: Build): EngineLoads['layout'] {
  return CRANK_LAYOUTS[choiceOf(build, 'layout') as LayoutId]
}

function onMains(build: Build, gas: EngineGas, rulebook: Rulebook): EngineLoads {
  const scales = once(() => loadScales(build, gas.peakExponents(), rulebook))
  const cases = once(() => {
    const { loads: few, loadAt } = loads.sampled
    return capCases(few, scales(), loadAt)
  })
  const sweep = once(() => loadSweep({ ...loads.sampled, cases: casesOf(gas) }))
  const loads: EngineLoads = {
    ...gas,
    layout: layoutOf(build),
    get scales() {
      return scales()
    },
    get cases() {
      return cases()
    },
    get sampled() {
      return sampledLoads(loads, (room) => inputsOf(build, gas, room))
    },
    get peakForce() {
      return Math.max(...sweep().mains.map(({ peakLoad }) => peakLoad.force))
    },
    get sweep() {
      return sweep()
    },
  }
  return loads
}

function casesOf({ speeds, fullLoads }: EngineGas): LoadCase[] {
  return speeds.map((_, index) => (index < fullLoads.length ? 'full-load' : 'closed-throttle'))
}

/** Scratch and results of one layout's main loads, and the engine that they were filled for last. */
interface Room {
  readonly workspace: MainLoadsWorkspace
  readonly results: readonly MainLoads[]
  filled?: { readonly of: object; readonly sampled: SampledLoads } | undefined
}

const rooms = new Map<LayoutId, Room>()

function roomFor({ layout, speeds }: Pick<EngineLoads, 'layout' | 'speeds'>): Room {
  let room = rooms.get(layout.id)
  if (!room || room.results.length < speeds.length) {
    const results = speeds.map(() => emptyMainLoads(layout, STRIDE))
    room = { workspace: mainLoadsWorkspace(layout, STRIDE), results }
    rooms.set(layout.id, room)
  }
  return room
}

/** Loads of an engine, from what `inputs` gives, unless they are those that its room was filled with last. */
function sampledLoads(
  engine: Pick<EngineLoads, 'layout' | 'speeds'>,
  inputs: (room: Room) => MainLoadsInput[],
): SampledLoads {
  const room = roomFor(engine)
  if (room.filled?.of === engine) return room.filled.sampled
  // Nobody's, should it stop half way.
  room.filled = undefined
  const of = inputs(room)
  const sampled = { loads: of.map(mainLoads), loadAt: loadsBetween(of, room.workspace) }
  room.filled = { of: engine, sampled }
  return sampled
}

/** What the load on every main is worked out from, at every speed. */
function inputsOf(build: Build, gas: EngineGas, { workspace, results }: Room): MainLoadsInput[] {
  const engine = { ...masses(build), layout: workspace.layout, workspace }
  return gas.speeds.map((speed, index) => {
    const pressure = gas.fullLoads[index]?.cycle.pressure ?? gas.motored()
    return { ...engine, speed, pressure, result: results[index] as MainLoads }
  })
}

function masses(build: Build) {
  return {
    bore: siOf(build, 'bore'),
    stroke: siOf(build, 'stroke'),
    rodLength: rodOf(build),
    reciprocatingMass: siOf(build, 'reciprocatingMass'),
    bigEndMass: siOf(build, 'bigEndMass'),
  }
}
