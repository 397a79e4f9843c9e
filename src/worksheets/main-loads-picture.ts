import type { LoadSweep } from '../mechanics/load-sweep.ts'
import { CYCLE, type MainLoads } from '../mechanics/main-loads.ts'
import { polarLoad } from '../mechanics/polar-load.ts'
import type { PolarPicture } from './picture.ts'
import type { Print } from './print.ts'
import type { Series } from './worksheet.ts'

/** Degrees between the points of the API's curves and of the picture. */
const SERIES_STEP = 2
const PICTURE_STEP = 4

/** Load on each main across (x, to the right) and up (y, away from the cap). */
export function loadsSeries(loads: MainLoads, print: Print): Series[] {
  const angles = Array.from({ length: CYCLE / SERIES_STEP }, (_, index) => index * SERIES_STEP)
  const x = { label: 'Crank angle after firing dead centre', unit: '°', values: angles }
  return Array.from({ length: loads.mains }, (_, main) => main).flatMap((main) => {
    const points = polarLoad(loads, main, SERIES_STEP)
    return (['x', 'y'] as const).map((axis, offset) => ({
      id: `main${main + 1}${axis.toUpperCase()}`,
      label: `Load on main ${main + 1}, ${axis === 'x' ? 'to the right' : 'away from the cap'}`,
      x,
      y: {
        label: 'Load',
        unit: print.unit('force'),
        values: print.values(
          angles.map((_, index) => points[2 * index + offset] ?? 0),
          'force',
        ),
      },
    }))
  })
}

/** Load on each main over two turns, all to one scale. */
export function loadsPicture(loads: MainLoads, sweep: LoadSweep, print: Print): PolarPicture {
  const force = (one: number): string => print.figure(one, 'force')
  const { worstPull, worstSide } = sweep
  const mains = sweep.mains.map((main, index) => {
    const flat = print.values(polarLoad(loads, index, PICTURE_STEP), 'force')
    const points = Array.from({ length: flat.length / 2 }, (_, at): [number, number] => [
      flat[2 * at] ?? 0,
      flat[2 * at + 1] ?? 0,
    ])
    const lines = [`pull ${force(main.worstPull.force)}`, `side ${force(main.worstSide.force)}`]
    return { label: `main ${index + 1}`, points, lines }
  })
  return {
    kind: 'polar',
    title: 'Load on each main over two turns',
    text: `Main ${worstPull.main + 1} is pulled hardest, ${force(worstPull.force)}; main ${worstSide.main + 1} is pushed sideways hardest, ${force(worstSide.force)}.`,
    caption:
      'Force of the crank on each main through two turns, all to one scale. The shaded half is the cap. Crank angles count from firing top dead centre of cylinder 1, the foremost.',
    unit: print.unit('force'),
    mains,
    table: {
      caption: 'Worst loads of each main',
      head: ['Main', 'Pull', 'at crank angle', 'Side push', 'at crank angle', 'Greatest load'],
      rows: sweep.mains.map((main) => [
        `Main ${main.main + 1}`,
        force(main.worstPull.force),
        print.figure(main.worstPull.angle, 'angle'),
        force(main.worstSide.force),
        print.figure(main.worstSide.angle, 'angle'),
        force(main.peakLoad.force),
      ]),
    },
  }
}
