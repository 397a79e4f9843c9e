import { html } from './html.ts'
import { type LearnDrawing, polyline } from './learn-drawing-parts.ts'
import { arrow, box, circle, line, words } from './svg.ts'

const X = (degrees: number) => 34 + ((degrees + 40) / 130) * 310
const Y = (pressure: number) => 206 - pressure * 180

/** A smooth schematic of pressure: a hump of compression and a hump of the burn. */
function smooth(degrees: number): number {
  const squeeze = 0.3 * Math.exp(-((degrees / 34) ** 2))
  const burn =
    degrees < -12 ? 0 : 0.42 * ((degrees + 12) / 26) ** 2 * Math.exp(2 * (1 - (degrees + 12) / 26))
  return squeeze + burn
}

/** The same, but the last of the charge goes off at once and rings. */
function knocking(degrees: number): number {
  const after = degrees - 8
  if (after < 0) return smooth(degrees)
  return (
    smooth(degrees) +
    0.34 * Math.exp(-after / 9) * Math.cos(after * 1.25) ** 2 * (after < 0.5 ? 0.5 : 1)
  )
}

const degreesOf = Array.from({ length: 261 }, (_, i) => -40 + i / 2)

export const detonation: LearnDrawing = {
  height: 252,
  title: 'Pressure with and without detonation',
  text: 'Two schematic curves of cylinder pressure against crank angle. The normal one rises smoothly and peaks some 14 degrees after top dead centre. The detonating one follows it, then jumps to a sharp spike soon after top dead centre and rings.',
  caption:
    'A schematic, not a measurement. The normal burn pushes; detonation spikes early, while the rod stands nearly straight over the crank, and rings.',
  body: () => html`${line(34, 206, 344, 206, 'ink')}${line(34, 206, 34, 14, 'ink')}${line(X(0), 14, X(0), 206, 'hidden-line')}
${polyline(
  degreesOf.map((d): [number, number] => [X(d), Y(knocking(d))]),
  'force',
)}
${polyline(
  degreesOf.map((d): [number, number] => [X(d), Y(smooth(d))]),
  'layout-blue',
)}
${words(X(0), 222, 'top dead centre', 'small middle')}${words(344, 222, 'crank angle', 'small end')}${words(40, 24, 'pressure', 'small')}
${words(X(26), 40, 'detonation', 'label force strong')}${words(X(47), 118, 'normal burn', 'label layout-blue')}
${words(34, 244, 'blue: smooth hump · red: sharp spike that rings', 'small ink-soft')}`,
}

const STEPS = [
  'load against hold',
  'a hundred cases',
  'needed share of the use',
  'practice and money',
  'the call, with reasons',
] as const

const HELD = 87
const NEEDED = 80

export const howDecides: LearnDrawing = {
  height: 250,
  title: 'From load to call',
  text: 'Five steps, one after the other: load against hold; a hundred sampled cases; the share that the use needs; practice and money; the call with its reasons. Beside them a field of a hundred dots: 87 filled, which hold, and 13 open, which do not. A line after 80 marks the share that this use needs.',
  caption:
    'An example: 87 of a hundred sampled cases hold, and the use asks for 80 (the line). It says how sure the estimate is, not how likely a failure is.',
  body: () => html`${STEPS.map(
    (step, i) =>
      html`${box(8, 10 + i * 48, 172, 32, i === STEPS.length - 1 ? 'cap' : 'sheet')}${box(8, 10 + i * 48, 172, 32, 'ink')}${words(94, 31 + i * 48, step, 'label middle')}${i < STEPS.length - 1 ? arrow(94, 42 + i * 48, 94, 57 + i * 48, 'ink') : ''}`,
  )}
${Array.from({ length: 100 }, (_, i) => circle(212 + (i % 10) * 15, 22 + Math.floor(i / 10) * 19, 5, i < HELD ? 'ink blue-fill' : 'warn'))}
${line(202, 22 + (NEEDED / 10) * 19 - 9.5, 358, 22 + (NEEDED / 10) * 19 - 9.5, 'ink thick')}
${words(204, 224, '87 hold; 80 needed', 'label')}${words(204, 241, 'open dots do not', 'small ink-soft')}`,
}
