import type { CapJoint } from '../mechanics/cap-joint.ts'
import type { CapJointInputs } from './cap-joint-fields.ts'
import type { CurvesPicture } from './picture.ts'
import type { Print } from './print.ts'

const POINTS = 24

/** Even steps to past the pull and past opening, and the bend at opening itself. */
function pullsToDraw({ openingLoad }: CapJoint, pull: number): number[] {
  const far = Math.max(1.1 * openingLoad, 1.1 * pull)
  const even = Array.from({ length: POINTS + 1 }, (_, i) => (far * i) / POINTS)
  return [...even, openingLoad].sort((a, b) => a - b)
}

/** Clamp left and side capacity against the pull, from none to past opening. */
export function jointPicture(
  joint: CapJoint,
  { pull = 0, side }: CapJointInputs,
  friction: number,
  print: Print,
): CurvesPicture {
  const pulls = pullsToDraw(joint, pull)
  const curve = (of: (at: number) => number): [number, number][] =>
    pulls.map((at) => {
      const [x = 0, y = 0] = print.values([at, of(at)], 'force')
      return [x, y]
    })
  const force = (one: number): string => print.figure(one, 'force')
  const sideText = side === undefined ? '' : `, and the side push is ${force(side)}`
  const table = [0, 0.25, 0.5, 0.75, 1].map((share) => share * joint.openingLoad)
  const [pullX = 0, sideY = 0] = print.values([pull, side ?? 0], 'force')
  return {
    kind: 'curves',
    title: 'What holds the cap as the pull grows',
    text: `With no pull the clamp is ${force(joint.clamp)}; it is gone at a pull of ${force(joint.openingLoad)}. The pull is ${force(pull)}${sideText}.`,
    caption:
      'Clamp left at the parting face, side push that all holds, and side push that friction alone holds, as the pull grows. The mark is the load on the cap.',
    x: `pull, ${print.unit('force')}`,
    y: print.unit('force'),
    curves: [
      { label: 'clamp left', points: curve(joint.residualClamp), look: 'faint' },
      { label: 'all holds', points: curve(joint.holdCapacity), look: 'main' },
      { label: 'friction holds', points: curve(joint.gripCapacity), look: 'second' },
    ],
    marks: side === undefined ? [] : [{ label: 'load', at: [pullX, sideY] }],
    table: {
      caption: `Capacities by pull, friction ${print.number(friction)}`,
      head: ['Pull', 'Clamp left', 'Friction holds', 'All holds'],
      rows: table.map((at) =>
        [at, joint.residualClamp(at), joint.gripCapacity(at), joint.holdCapacity(at)].map(force),
      ),
    },
  }
}
