import { type Html, html, NOTHING } from './html.ts'
import {
  axisShift,
  boreThenHone,
  clearance,
  lineBore,
  torqueDistortion,
} from './learn-drawing-bores.ts'
import { capMaterials, capOrder, capWalk, mainCap, register } from './learn-drawing-caps.ts'
import { boltAndStud, preload } from './learn-drawing-fasteners.ts'
import { boltPatterns, crossBolts, girdle, splitCase } from './learn-drawing-holding.ts'
import { detonation, howDecides } from './learn-drawing-loads.ts'
import type { LearnDrawing } from './learn-drawing-parts.ts'
import { svg } from './svg.ts'

/** Drawings by the name that a page gives in a line `![drawing: name]`. */
const DRAWINGS: ReadonlyMap<string, LearnDrawing> = new Map([
  ['main-cap', mainCap],
  ['cap-walk', capWalk],
  ['register', register],
  ['cap-materials', capMaterials],
  ['cap-order', capOrder],
  ['bolt-patterns', boltPatterns],
  ['cross-bolts', crossBolts],
  ['girdle', girdle],
  ['split-case', splitCase],
  ['bolt-and-stud', boltAndStud],
  ['preload', preload],
  ['line-bore', lineBore],
  ['bore-then-hone', boreThenHone],
  ['torque-distortion', torqueDistortion],
  ['axis-shift', axisShift],
  ['clearance', clearance],
  ['detonation', detonation],
  ['how-decides', howDecides],
])

export const LEARN_DRAWING_NAMES: readonly string[] = [...DRAWINGS.keys()]

/** A drawing with its caption as markup, or undefined when no drawing has that name. */
export function learnDrawing(name: string): string | undefined {
  const drawing = DRAWINGS.get(name)
  if (!drawing) return undefined
  const { height, title, text, caption, body } = drawing
  const id = `drawing-${name}`
  const picture = svg({ id, height, title, text, body: body(id) })
  return String(
    html`<figure class="figure" id="${id}">${picture}<figcaption>${caption}</figcaption></figure>`,
  )
}

/** The same drawing small, as an ornament beside its title; hidden from screen readers. */
export function learnThumbnail(name: string): Html {
  const drawing = DRAWINGS.get(name)
  if (!drawing) return NOTHING
  return html`<svg class="thumbnail" viewBox="0 0 360 ${drawing.height}" aria-hidden="true" focusable="false">${drawing.body(`thumbnail-${name}`)}</svg>`
}
