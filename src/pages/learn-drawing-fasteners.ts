import { html } from './html.ts'
import {
  callout,
  cutFace,
  fastener,
  type LearnDrawing,
  linings,
  measure,
  polyline,
} from './learn-drawing-parts.ts'
import { box, line, path, words } from './svg.ts'

export const boltAndStud: LearnDrawing = {
  height: 262,
  title: 'A bolt and a stud in the same cap',
  text: 'Left, a bolt: its head is turned, so the whole shank twists and its thread turns in the block while it is pulled. Right, a stud: it stands still in the block, its thread engaged over its full length; only the nut on its lower end turns, on a fine thread over a washer.',
  caption:
    'A bolt twists as it stretches, and wears the block’s thread. A stud stands still; only its nut turns.',
  body: (
    id,
  ) => html`${linings(id)}${[96, 264].map((x) => html`${cutFace(id, 'block', `M${x - 62} 14H${x + 62}V110H${x - 62}Z`)}${cutFace(id, 'cap', `M${x - 62} 112H${x + 62}V186H${x - 62}Z`)}`)}
${fastener({ x: 96, top: 44, seat: 186, d: 26, thread: 44 })}${twist(96)}
${path('M64 222A34 12 0 0 0 128 222', 'force')}${path('M128 222l-1 -9l8 5z', 'solid force')}
${fastener({ x: 264, top: 30, seat: 190, d: 26, thread: 72, nut: true })}${box(236, 186, 56, 5, 'bearing')}
${path('M232 224A34 12 0 0 0 296 224', 'force')}${path('M296 224l-1 -9l8 5z', 'solid force')}
${words(96, 254, 'bolt: all of it turns', 'label middle')}${words(264, 254, 'stud: the nut turns', 'label middle')}
${words(40, 104, 'block', 'small')}${words(40, 178, 'cap', 'small')}`,
}

/** Lines round the shank, leaning as a twisted bar's would. */
function twist(x: number) {
  return [100, 116, 132, 148, 164].map((y) => line(x - 12, y, x + 12, y + 12, 'force'))
}

/** Stretch to the right, force up: the fastener's line rises, the faces' line falls. */
const FOOT = 214
const PEAK = { x: 176, y: 66 }
const MEMBERS_END = 244
const LIFT = 26

export const preload: LearnDrawing = {
  height: 256,
  title: 'How a pull is shared between fastener and faces',
  text: 'A joint diagram. One line rises gently from zero: the fastener’s pull as it stretches. Another falls steeply from the same point: the faces’ clamp as they are let go. They meet at the preload. When the crank pulls, the fastener moves a little up its line and the faces a long way down theirs; the two together make the pull.',
  caption:
    'The joint diagram. From the preload, a pull of the crank stretches the fastener a little further: it gains a small share, and the faces lose the large one.',
  body: () => {
    const slope = (FOOT - PEAK.y) / (PEAK.x - 30)
    const fall = (FOOT - PEAK.y) / (MEMBERS_END - PEAK.x)
    const x = PEAK.x + LIFT
    const up = PEAK.y - LIFT * slope
    const down = PEAK.y + LIFT * fall
    return html`${line(30, FOOT, 330, FOOT, 'ink')}${line(30, FOOT, 30, 16, 'ink')}
${words(330, FOOT + 17, 'stretch', 'small end')}${words(36, 22, 'force', 'small')}
${line(30, PEAK.y, PEAK.x, PEAK.y, 'hidden-line')}${words(36, PEAK.y - 6, 'preload', 'label')}
${polyline(
  [
    [30, FOOT],
    [PEAK.x, PEAK.y],
    [x + 10, up - 10 * slope],
  ],
  'layout-blue',
)}
${polyline(
  [
    [PEAK.x, PEAK.y],
    [MEMBERS_END, FOOT],
  ],
  'clamp',
)}
${line(x, up, x, FOOT, 'hair')}${line(PEAK.x, PEAK.y, x + 96, PEAK.y, 'hair')}${line(x, up, x + 96, up, 'hair')}${line(x, down, x + 96, down, 'hair')}
${measure([x + 20, up], [x + 20, down], 'force')}${measure([x + 78, PEAK.y], [x + 78, down], 'clamp')}
${words(x + 26, (up + down) / 2 + 22, 'pull', 'label strong')}
${measure([x + 78, up], [x + 78, PEAK.y], 'layout-blue')}${callout(254, 24, 'fastener’s gain', [x + 78, (up + PEAK.y) / 2])}${words(x + 84, (PEAK.y + down) / 2 + 4, 'faces’', 'label')}${words(x + 84, (PEAK.y + down) / 2 + 19, 'loss', 'label')}
${measure([x, down], [x, FOOT], 'clamp')}${words(x - 6, FOOT - 22, 'clamp', 'label end')}${words(x - 6, FOOT - 8, 'that is left', 'label end')}
${words(40, 140, 'fastener', 'label layout-blue')}${words(232, 168, 'faces', 'label clamp')}${words(30, 248, 'where the faces’ line meets the ground, they part', 'small ink-soft')}`
  },
}
