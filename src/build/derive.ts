import { type Answers, UNKNOWN } from '../../shared/answers.ts'
import type { FactKey } from '../../shared/fact-keys.ts'
import { CRANK_LAYOUTS, type LayoutId } from '../mechanics/crank-layouts.ts'
import type { BuildFact } from './build.ts'
import type { Lookup } from './from-answers.ts'

/** Cylinders of a layout. */
function cylindersOf(layout: string): number {
  return CRANK_LAYOUTS[layout as LayoutId].cylinders.length
}

/**
 * A fact that follows from others: displacement from bore and stroke, and either
 * of these from displacement and the other. Usual units (in, cu in).
 *
 * @returns the derived fact, or undefined when the others were not said
 */
export function derive(key: FactKey, answers: Answers, lookup: Lookup): BuildFact | undefined {
  return key === 'displacement' || key === 'bore' || key === 'stroke'
    ? derivedSize(key, answers, lookup)
    : undefined
}

function derivedSize(
  key: 'displacement' | 'bore' | 'stroke',
  answers: Answers,
  lookup: Lookup,
): BuildFact | undefined {
  const known = (other: FactKey): boolean =>
    answers[other] !== undefined && answers[other] !== UNKNOWN
  const figure = (other: FactKey): number => Number(lookup(other).value)
  const cylinders = (): number => cylindersOf(String(lookup('layout').value))
  const sweptOf = (bore: number, stroke: number): number =>
    (Math.PI / 4) * bore ** 2 * stroke * cylinders()
  const made = (value: number, because: string): BuildFact => {
    // A layout that nobody gave makes all that follows from it an assumption.
    const state = known('layout') ? 'derived' : 'assumed'
    return { key, state, value, because, source: { kind: 'computed', cite: '' } }
  }
  if (key === 'displacement') {
    const fact = made(
      sweptOf(figure('bore'), figure('stroke')),
      'π/4 × bore² × stroke × cylinders.',
    )
    return known('bore') && known('stroke') ? fact : { ...fact, state: 'assumed' }
  }
  if (!known('displacement')) return undefined
  const swept = figure('displacement')
  if (key === 'bore' && known('stroke')) {
    const bore = Math.sqrt((4 * swept) / (Math.PI * figure('stroke') * cylinders()))
    return within(key, made(bore, 'From displacement and stroke.'))
  }
  if (key === 'stroke' && known('bore')) {
    const stroke = (4 * swept) / (Math.PI * figure('bore') ** 2 * cylinders())
    return within(key, made(stroke, 'From displacement and bore.'))
  }
  if (key === 'bore' && !known('stroke')) {
    const bore = Math.cbrt((4 * swept) / (Math.PI * USUAL_STROKE_TO_BORE * cylinders()))
    const fact = within(key, made(bore, 'From displacement, with a usual stroke for its bore.'))
    return fact && { ...fact, state: 'assumed', low: bore * 0.95, high: bore * 1.05 }
  }
  return undefined
}

/** Stroke over bore when only the displacement is known; from memory. */
const USUAL_STROKE_TO_BORE = 0.88

const PLAUSIBLE = { bore: [2, 5.9], stroke: [1.6, 6] } as const

/** A derived size that no engine has means that one of its sources is a slip: do not use it. */
function within(key: 'bore' | 'stroke', made: BuildFact): BuildFact | undefined {
  const [low, high] = PLAUSIBLE[key]
  return typeof made.value === 'number' && made.value >= low && made.value <= high
    ? made
    : undefined
}
