import type { FastenerStrength } from '../mechanics/fastener-grades.ts'
import { materialOf } from '../mechanics/materials.ts'
import { type ThreadLimits, threadLimits } from '../mechanics/thread-limits.ts'
import {
  equalStrengthEngagement,
  neededEngagement,
  relativeStrength,
  type ShearAreas,
  shearAreas,
  strippingLoad,
} from '../mechanics/thread-strip.ts'
import { InputError } from './input.ts'
import type { PreloadInput } from './preload-fields.ts'
import type { Print } from './print.ts'
import { published, type Result, type Step } from './worksheet.ts'

const H28 = 'FED-STD-H28/2; Machinery’s Handbook, screw thread systems'

interface Stripping {
  readonly results: readonly Result[]
  readonly steps: readonly Step[]
}

/** Shear areas, engagement of equal strength, and, with the materials, what strips first. */
export function threadStripping(
  input: PreloadInput,
  stressArea: number,
  preload: number,
  strength: FastenerStrength | undefined,
  print: Print,
): Stripping {
  const asked = input.engagement ?? input.blockMaterial ?? input.blockShear ?? givenLimit(input)
  if (asked === undefined) return { results: [], steps: [] }
  const { diameter, pitch, form } = input.thread
  const limits = { ...threadLimits(diameter, pitch, form), ...givenLimits(input) }
  const areas = shearAreas(pitch, limits)
  const equal = equalStrengthEngagement(stressArea, areas)
  const shear = shearsOf(input, strength)
  const results = [
    print.result(
      'screwShearArea',
      'Shear area of the screw, for each length engaged',
      areas.screw,
      'length',
    ),
    print.result(
      'holeShearArea',
      'Shear area of the hole, for each length engaged',
      areas.hole,
      'length',
    ),
    print.result(
      'equalStrengthEngagement',
      'Engagement at which the screw breaks first',
      equal,
      'length',
    ),
  ]
  const steps = [areaStep(areas, limits, pitch, print), equalStep(equal, stressArea, areas, print)]
  if (!shear) return { results, steps }
  const more = strip(input, areas, shear, preload, print)
  return { results: [...results, ...more.results], steps: [...steps, ...more.steps] }
}

function givenLimit(input: PreloadInput): number | undefined {
  return input.screwMajorMin ?? input.screwPitchMin ?? input.holeMinorMax ?? input.holePitchMax
}

function givenLimits(input: PreloadInput): Partial<ThreadLimits> {
  const { screwMajorMin, screwPitchMin, holeMinorMax, holePitchMax } = input
  const limits = { screwMajorMin, screwPitchMin, holeMinorMax, holePitchMax }
  return Object.fromEntries(Object.entries(limits).filter(([, length]) => length !== undefined))
}

interface Shears {
  readonly screw: number
  readonly hole: number
  /** Tensile strengths, for the relative strength of the standard. */
  readonly ultimates: { readonly screw: number; readonly hole: number } | undefined
}

/** Shear strengths of both threads; undefined when nothing is said of either material. */
function shearsOf(input: PreloadInput, strength: FastenerStrength | undefined): Shears | undefined {
  const block = input.blockMaterial && materialOf(input.blockMaterial)
  const hole = input.blockShear ?? block?.shear
  const screwUltimate = input.fastenerUltimate ?? strength?.ultimate
  // Distortion energy: a steel yields in shear at 0.58 of what it does in tension.
  const screw = input.fastenerShear ?? (screwUltimate && 0.58 * screwUltimate)
  if (input.engagement === undefined && hole === undefined) return undefined
  if (hole === undefined)
    throw new InputError('blockMaterial', 'give the block’s material or shear strength')
  if (screw === undefined)
    throw new InputError('grade', 'give a grade or the fastener’s shear strength')
  const holeUltimate = input.blockUltimate ?? block?.ultimate
  const ultimates =
    screwUltimate && holeUltimate ? { screw: screwUltimate, hole: holeUltimate } : undefined
  return { screw, hole, ultimates }
}

function areaStep(areas: ShearAreas, limits: ThreadLimits, pitch: number, print: Print): Step {
  const figure = (length: number) => print.figure(length, 'length')
  return {
    title: 'Shear areas of the engaged thread',
    formula: 'As = π Kn [1/2 + tan 30° (Es − Kn) / P]; An = π Ds [1/2 + tan 30° (Ds − En) / P]',
    withNumbers: `As = π × ${figure(limits.holeMinorMax)} × [1/2 + 0.5774 (${figure(limits.screwPitchMin)} − ${figure(limits.holeMinorMax)}) / ${figure(pitch)}]; An = π × ${figure(limits.screwMajorMin)} × [1/2 + 0.5774 (${figure(limits.screwMajorMin)} − ${figure(limits.holePitchMax)}) / ${figure(pitch)}]`,
    result: `As = ${print.figure(areas.screw, 'length')}², An = ${print.figure(areas.hole, 'length')}² for each ${print.unit('length')} engaged`,
    source: published(H28),
  }
}

function equalStep(equal: number, area: number, areas: ShearAreas, print: Print): Step {
  return {
    title: 'Engagement of equal strength',
    formula: 'Le = 2 At / As',
    withNumbers: `Le = 2 × ${print.figure(area, 'area')} / ${print.figure(areas.screw, 'length')}`,
    result: `Le = ${print.figure(equal, 'length')}`,
    source: published(H28),
  }
}

function strip(
  input: PreloadInput,
  areas: ShearAreas,
  shear: Shears,
  preload: number,
  print: Print,
): Stripping {
  const { screw: screwShear, hole: holeShear, ultimates } = shear
  const needed = neededEngagement(preload, { areas, screwShear, holeShear })
  const results = [
    print.result('neededEngagement', 'Engagement that just carries this preload', needed, 'length'),
  ]
  if (ultimates) {
    const relative = relativeStrength(areas, ultimates.screw, ultimates.hole)
    results.push(print.ratio('relativeStrength', 'Relative strength of the threads, J', relative))
  }
  if (input.engagement === undefined) return { results, steps: [] }
  const { load, weaker } = strippingLoad({
    areas,
    engagement: input.engagement,
    screwShear,
    holeShear,
  })
  const [area, strength] = weaker === 'hole' ? [areas.hole, holeShear] : [areas.screw, screwShear]
  results.push(print.result('strippingLoad', `Load that strips the ${weaker}`, load, 'force'))
  results.push(print.ratio('stripMargin', 'Stripping load over preload', load / preload))
  const step: Step = {
    title: 'Load that strips the weaker thread',
    formula: 'F = A Le τ',
    withNumbers: `F = ${print.figure(area, 'length')} × ${print.figure(input.engagement, 'length')} × ${print.figure(strength, 'stress')}`,
    result: `the ${weaker} strips at ${print.figure(load, 'force')}`,
    source: published(H28),
  }
  return { results, steps: [step] }
}
