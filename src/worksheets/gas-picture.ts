import type { GasCycle } from '../mechanics/gas-cycle.ts'
import type { CurvesPicture } from './picture.ts'
import type { Print } from './print.ts'
import type { Series } from './worksheet.ts'

const CYCLE = 720
/** Degrees between the points of the picture. */
const STEP = 3

/** Pressure at every degree from intake to exhaust, firing dead centre in the middle. */
export function pressureSeries({ pressure }: GasCycle, print: Print): Series[] {
  const angles = Array.from({ length: CYCLE }, (_, index) => index - CYCLE / 2)
  return [
    {
      id: 'pressure',
      label: 'Cylinder pressure, absolute',
      x: { label: 'Crank angle after firing dead centre', unit: '°', values: angles },
      y: {
        label: 'Pressure',
        unit: print.unit('pressure'),
        values: print.values(
          angles.map((angle) => at(pressure, angle)),
          'pressure',
        ),
      },
    },
  ]
}

function at(pressure: Float64Array, angle: number): number {
  return pressure[(angle + CYCLE) % CYCLE] ?? 0
}

/** Cylinder pressure over crank angle, fired and motored. */
export function pressurePicture(cycle: GasCycle, motored: GasCycle, print: Print): CurvesPicture {
  const curve = ({ pressure }: GasCycle): [number, number][] =>
    Array.from({ length: CYCLE / STEP + 1 }, (_, index) => {
      const angle = index * STEP - CYCLE / 2
      return [angle, print.values([at(pressure, angle)], 'pressure')[0] ?? 0]
    })
  const peak = print.figure(cycle.peakPressure, 'pressure')
  const angle = (cycle.peakAngle * 180) / Math.PI
  const [height = 0] = print.values([cycle.peakPressure], 'pressure')
  const rows = [-180, -90, -30, 0, 30, 90, 180].map((degrees) => [
    `${degrees}°`.replace('-', '−'),
    print.figure(at(cycle.pressure, degrees), 'pressure'),
    print.figure(at(motored.pressure, degrees), 'pressure'),
  ])
  return {
    kind: 'curves',
    title: 'Cylinder pressure through one cycle',
    text: `Pressure is highest, ${peak}, ${print.figure(cycle.peakAngle, 'angle')} after firing dead centre. Without a burn it would be ${print.figure(motored.peakPressure, 'pressure')}.`,
    caption:
      'Cylinder pressure over two turns; firing dead centre is at 0°. Dashed: without a burn.',
    x: 'crank angle, °',
    ticks: [-360, -180, 0, 180, 360],
    y: `${print.unit('pressure')}, absolute`,
    curves: [
      { label: 'without a burn', points: curve(motored), look: 'faint' },
      { label: 'pressure', points: curve(cycle), look: 'main' },
    ],
    marks: [{ label: peak, at: [angle, height] }],
    table: {
      caption: 'Pressure by crank angle',
      head: ['Angle', 'Pressure', 'Without a burn'],
      rows,
    },
  }
}
