import { fromSi } from '../../shared/units.ts'
import { type Build, choiceOf, siOf } from '../build/build.ts'
import { STRIDE } from '../mechanics/coarse-look.ts'
import { CRANK_LAYOUTS, type LayoutId } from '../mechanics/crank-layouts.ts'
import { type LoadCase, type LoadSweep, loadSweep } from '../mechanics/load-sweep.ts'
import { loadsBetween, loadsRead } from '../mechanics/main-load-at.ts'
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

/** Everything that the crank train does to the mains, SI. */
export interface EngineLoads extends EngineGas {
  readonly layout: (typeof CRANK_LAYOUTS)[LayoutId]
  /**
   * One for each speed, worked out when they are read: only reports need them. They are written
   * over when those of another engine are read, so that none may be kept.
   */
  readonly loads: readonly MainLoads[]
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
  const id = choiceOf(build, 'layout') as LayoutId
  const scales = once(() => loadScales(build, gas.peakExponents(), rulebook))
  const cases = once(() => {
    // A report has looked at every degree already; a first look is enough where nobody has.
    if (whole?.of === loads) return capCases(whole.loads, scales(), loadsRead(whole.loads))
    const room = roomFor(id, gas.speeds.length)
    const inputs = inputsOf(build, gas, room)
    return capCases(inputs.map(mainLoads), scales(), loadsBetween(inputs, room.workspace))
  })
  const sweep = once(() => loadSweep({ loads: loads.loads, cases: casesOf(gas) }))
  const loads: EngineLoads = {
    ...gas,
    layout: CRANK_LAYOUTS[id],
    get scales() {
      return scales()
    },
    get cases() {
      return cases()
    },
    get loads() {
      return wholeLoads(loads, (room) => inputsOf(build, gas, room).map(mainLoads))
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

/** Scratch and results of one layout's main loads. */
interface Room {
  readonly workspace: MainLoadsWorkspace
  readonly results: MainLoads[]
}

/** One for each layout, at the degrees of a first look, filled anew by every engine and read only until the next. */
const rooms = new Map<LayoutId, Room>()

function roomFor(id: LayoutId, speeds: number): Room {
  let room = rooms.get(id)
  if (!room || room.results.length < speeds) {
    room = makeRoom(CRANK_LAYOUTS[id], speeds, STRIDE)
    rooms.set(id, room)
  }
  return room
}

function makeRoom(layout: EngineLoads['layout'], speeds: number, every: number): Room {
  const results = Array.from({ length: speeds }, () => emptyMainLoads(layout, every))
  return { workspace: mainLoadsWorkspace(layout, every), results }
}

/** The engine whose loads at every degree were read last, and these; 1 MB, so there is but one. */
let whole: { of: object; loads: readonly MainLoads[]; readonly room: Room } | undefined

/** Loads at every degree of an engine: filled by `fill`, unless they were the last that were read. */
function wholeLoads(
  engine: Pick<EngineLoads, 'layout' | 'speeds'>,
  fill: (room: Room) => readonly MainLoads[],
): readonly MainLoads[] {
  if (whole?.of === engine) return whole.loads
  const before = whole?.room
  const fits =
    before?.workspace.layout === engine.layout && before.results.length >= engine.speeds.length
  const room = before && fits ? before : makeRoom(engine.layout, engine.speeds.length, 1)
  // Nobody's, should it stop half way.
  whole = undefined
  whole = { of: engine, loads: fill(room), room }
  return whole.loads
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
