import { type Answers, withAnswer } from '../../shared/answers.ts'
import type { RouteId } from '../../shared/route-ids.ts'
import { type Build, choiceOf, figureOf } from '../build/build.ts'
import { buildFromAnswers } from '../build/from-answers.ts'
import { type Memory, newMemory } from '../facts/memory.ts'
import { trialsOf } from '../facts/trials.ts'
import { DomainError } from '../mechanics/domain-error.ts'
import type { Rulebook } from '../rulebook/load.ts'

/** Highest boost that each route holds at each speed; psi. */
export interface ReachFound {
  readonly boundaries: readonly {
    readonly route: RouteId
    readonly boundary: readonly { readonly rpm: number; readonly boost: number }[]
  }[]
  readonly here: { readonly rpm: number; readonly boost: number }
  /** The highest boost tried, psi: a route that holds it may hold more. */
  readonly tried: number
}

const SPEEDS = 5
const MOST_BOOST = 50
const BOOSTS = [0, 4, 8, 12, 16, 20, 26, 32, 40, MOST_BOOST]

/**
 * How far each route carries this build: for a row of speeds, the highest boost at
 * which it still holds in enough sampled cases. Between the tried boosts the number
 * of cases that hold is taken as a straight line.
 *
 * @param routes - those that are possible
 */
export function reachOf(
  answers: Answers,
  build: Build,
  routes: readonly RouteId[],
  rulebook: Rulebook,
): ReachFound {
  const memory = newMemory()
  const here = { rpm: figureOf(build, 'peakRpm'), boost: figureOf(build, 'boost') }
  const speeds = speedsAround(here.rpm)
  const columns = speeds.map((rpm) => {
    const column = new Map<RouteId, number>()
    let standing = [...routes]
    const before = new Map<RouteId, { boost: number; spare: number }>()
    for (const boost of BOOSTS) {
      if (standing.length === 0) break
      const tried = triedAt(rulebook, at(rulebook, answers, build, boost, rpm), standing, memory)
      // What the equations do not cover is beyond every reach.
      if (!tried) break
      standing = standing.filter((id) => {
        const spare = tried.get(id) as number
        const last = before.get(id)
        if (spare >= 0) column.set(id, boost)
        else if (last)
          column.set(id, last.boost + ((boost - last.boost) * last.spare) / (last.spare - spare))
        before.set(id, { boost, spare })
        return spare >= 0
      })
    }
    return column
  })
  return {
    here,
    tried: MOST_BOOST,
    boundaries: routes.map((route) => ({
      route,
      boundary: speeds.flatMap((rpm, index) => {
        const boost = columns[index]?.get(route)
        return boost === undefined ? [] : [{ rpm, boost: Math.floor(boost * 100) / 100 }]
      }),
    })),
  }
}

/** Sampled cases that each route holds in beyond those that are needed; undefined for no engine. */
function triedAt(
  rulebook: Rulebook,
  build: Build,
  routes: readonly RouteId[],
  memory: Memory,
): Map<RouteId, number> | undefined {
  try {
    const trials = trialsOf(build, rulebook, memory)
    const spare = (id: RouteId) => {
      const { result, needed } = trials.trial(id)
      return result.holdsIn - needed
    }
    return new Map(routes.map((id) => [id, spare(id)]))
  } catch (error) {
    if (error instanceof DomainError) return undefined
    throw error
  }
}

function speedsAround(rpm: number): number[] {
  const [low, high] = [Math.max(3000, rpm * 0.75), Math.min(12_000, rpm * 1.25)]
  return Array.from({ length: SPEEDS }, (_, step) => {
    return Math.round((low + ((high - low) * step) / (SPEEDS - 1)) / 50) * 50
  })
}

/** The build at another speed and boost; without a compressor, as if one were fitted. */
function at(rulebook: Rulebook, answers: Answers, build: Build, boost: number, rpm: number): Build {
  const boosted = ['turbocharged', 'supercharged'].includes(choiceOf(build, 'induction'))
  const known = withAnswer(
    withAnswer(answers, 'targetPower', undefined),
    'peakCylinderPressure',
    undefined,
  )
  const speed = withAnswer(known, 'peakRpm', { value: rpm, unit: 'rpm' })
  const torque = Math.min(figureOf(build, 'torquePeakRpm'), rpm)
  const said = build.facts.torquePeakRpm.state === 'said'
  const slow = said ? withAnswer(speed, 'torquePeakRpm', { value: torque, unit: 'rpm' }) : speed
  const pressed = withAnswer(slow, 'boost', { value: boost, unit: 'psi' })
  return buildFromAnswers(
    rulebook,
    boosted || boost === 0
      ? pressed
      : withAnswer(withAnswer(pressed, 'induction', 'turbocharged'), 'nitrousPower', undefined),
  )
}
