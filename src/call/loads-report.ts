import type { LoadReport, WorstLoad } from '../../shared/load-report.ts'
import { most, unitLoadOf } from '../facts/build-facts.ts'
import type { EngineLoads } from '../facts/engine-loads.ts'
import type { Trials } from '../facts/trials.ts'
import { capShare } from '../mechanics/cap-share.ts'
import type { WorstLoad as SweptLoad } from '../mechanics/load-sweep.ts'
import type { MainLoads } from '../mechanics/main-loads.ts'

/** Degrees between the points of the pressure curve; a polar diagram has the samples of the loads. */
const TRACE_STEP = 4

/** The loads as the API and the pictures show them: kN, bar, degrees, rounded. */
export function loadsReport({ loads, build }: Pick<Trials, 'loads' | 'build'>): LoadReport {
  const { fullLoads, speeds, sweep, sampled } = loads
  const hardest = most(fullLoads, (load) => load.cycle.peakPressure)
  const strongest = most(fullLoads, (load) => load.power)
  const pullest = most(fullLoads, (load) => load.torque)
  const rpmOf = (load: (typeof fullLoads)[number]): number =>
    rpm(speeds[fullLoads.indexOf(load)] as number)
  return {
    peakPressure: {
      value: round(hardest.cycle.peakPressure / 1e5, 1),
      unit: 'bar',
      rpm: rpmOf(hardest),
      angle: round((hardest.cycle.peakAngle * 180) / Math.PI, 1),
    },
    power: { value: round(strongest.power / 1000, 1), unit: 'kW', rpm: rpmOf(strongest) },
    torque: { value: round(pullest.torque, 0), unit: 'N m', rpm: rpmOf(pullest) },
    bmep: { value: round(pullest.bmep / 1e5, 2), unit: 'bar' },
    knockLimited: fullLoads.some((load) => load.knockLimited),
    worstPull: worst(loads, sweep.worstPull),
    worstSide: worst(loads, sweep.worstSide),
    curve: curveOf(loads),
    pressureTrace: traceOf(hardest.cycle.pressure),
    mains: sweep.mains.map((main, index) => {
      const at = main.worstPull.speedIndex
      return {
        main: index + 1,
        rpm: rpm(speeds[at] as number),
        polar: polar(sampled.loads[at] as MainLoads, index),
        worstPull: worst(loads, main.worstPull),
        worstSide: worst(loads, main.worstSide),
        unitLoad: round(unitLoadOf(build, main.peakLoad.force) / 1e6, 2),
      }
    }),
  }
}

function curveOf(loads: EngineLoads): LoadReport['curve'] {
  return loads.fullLoads.map((load, index) => ({
    rpm: rpm(loads.speeds[index] as number),
    torque: round(load.torque, 0),
    power: round(load.power / 1000, 1),
    bmep: round(load.bmep / 1e5, 2),
    peakPressure: round(load.cycle.peakPressure / 1e5, 1),
    ...speedWorst(loads, index),
  }))
}

/** From intake to exhaust, with firing dead centre in the middle. */
function traceOf(pressure: ArrayLike<number>): LoadReport['pressureTrace'] {
  return Array.from({ length: 720 / TRACE_STEP }, (_, step) => {
    const angle = step * TRACE_STEP - 360
    return { angle, pressure: round((pressure[(angle + 720) % 720] as number) / 1e5, 2) }
  })
}

function speedWorst(loads: EngineLoads, index: number): { worstPull: number; worstSide: number } {
  const worst = (of: 'pull' | 'side'): number =>
    Math.max(...loads.sweep.mains.map(({ atSpeeds }) => atSpeeds[index]?.[of] ?? 0))
  return { worstPull: round(worst('pull') / 1000, 2), worstSide: round(worst('side') / 1000, 2) }
}

function polar({ gasX, gasY, inertiaX, inertiaY, every }: MainLoads, main: number) {
  const of = (part: readonly Float64Array[]): Float64Array => part[main] as Float64Array
  const [gx, gy, ix, iy] = [of(gasX), of(gasY), of(inertiaX), of(inertiaY)]
  return Array.from(gx, (x, index) => ({
    angle: index * every,
    x: round((x + (ix[index] as number)) / 1000, 2),
    y: round(((gy[index] as number) + (iy[index] as number)) / 1000, 2),
  }))
}

function worst({ sampled }: EngineLoads, swept: SweptLoad): WorstLoad {
  const degrees = Math.round((swept.angle * 180) / Math.PI) % 720
  const load = { gasX: 0, gasY: 0, inertiaX: 0, inertiaY: 0 }
  sampled.loadAt(swept.speedIndex, swept.main, degrees, load)
  const share = capShare(load.gasX + load.inertiaX, swept.half * (load.gasY + load.inertiaY))
  return {
    force: round(swept.force / 1000, 2),
    pull: round(share.pull / 1000, 2),
    side: round(share.side / 1000, 2),
    main: swept.main + 1,
    angle: degrees,
    rpm: rpm(swept.speed),
    loadCase: swept.loadCase,
  }
}

function rpm(speed: number): number {
  return Math.round((speed * 30) / Math.PI)
}

/** Powers of ten, since working one out is dear for some thousand figures. */
const SCALES = [1, 10, 100] as const

function round(value: number, decimals: 0 | 1 | 2): number {
  const scale = SCALES[decimals]
  return Math.round(value * scale) / scale
}
