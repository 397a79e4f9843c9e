import { pullOf } from '../mechanics/cap-share.ts'
import type { LoadAt } from '../mechanics/main-load-at.ts'
import type { MainLoads } from '../mechanics/main-loads.ts'
import { marginPoints } from '../mechanics/margin-points.ts'
import { partNearly } from '../mechanics/moments.ts'
import type { LoadScales } from './load-scales.ts'

/** What the crank does to the caps in every sampled case, the likely one first. */
export interface CapCases {
  readonly count: number
  /** Pull and side push, N: case × points + point. */
  readonly pull: Float64Array
  readonly side: Float64Array
  readonly points: number
  /** Greatest pull of each case, N. */
  readonly worstPull: Float64Array
}

/** Pull and side push at the moments that decide, over the sampled cases; see `marginPoints`. */
export function capCases(
  loads: readonly MainLoads[],
  scales: LoadScales,
  loadAt: LoadAt,
): CapCases {
  const points = marginPoints(loads, scales.range, loadAt)
  const count = scales.gas.length
  // One buffer for both: each of its own is dear to collect.
  const room = new Float64Array(2 * count * points.length)
  const pull = room.subarray(0, count * points.length)
  const side = room.subarray(count * points.length)
  const worstPull = new Float64Array(count)
  points.forEach(({ gasX, gasY, inertiaX, inertiaY }, index) => {
    for (let row = 0, at = index; row < count; row++, at += points.length) {
      const gas = scales.gas[row]!
      const inertia = scales.inertia[row]!
      const across = Math.abs(gas * gasX + inertia * inertiaX)
      const y = gas * gasY + inertia * inertiaY
      const part = partNearly(across, y)
      const down = pullOf(across, y, part)
      pull[at] = down
      side[at] = across * part
      if (down > worstPull[row]!) worstPull[row] = down
    }
  })
  return { count, pull, side, points: points.length, worstPull }
}
