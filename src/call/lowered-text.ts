import { printFigure } from '../../shared/print.ts'
import { fromSi } from '../../shared/units.ts'
import { figureOf } from '../build/build.ts'
import { figureText } from '../facts/live-facts.ts'
import type { Route } from '../rulebook/schema.ts'
import type { CallContext } from './call-report.ts'
import type { LoweredTarget } from './lower-target.ts'

/**
 * What the present hardware holds, in words: "6.1 psi and 6,500 rpm, about 551 hp"; where nothing
 * will do, the least that was tried.
 */
export function loweredText({ lowered, trials, system }: CallContext): string {
  const speed = printFigure(lowered.rpm, 'rpm', 0)
  const power = figureText(fromSi(lowered.power, 'hp'), 'hp', system)
  const [boosted, sprayed] = [
    figureOf(trials.build, 'boost') > 0,
    figureOf(trials.build, 'nitrousPower') > 0,
  ]
  if (!lowered.found) {
    const calm = boosted ? ' without boost' : sprayed ? ' without nitrous' : ''
    return `${lowered.asks ? '' : 'not even '}${speed}${calm}, about ${power}`
  }
  const parts = [
    ...(boosted ? [figureText(lowered.boost, 'psi', system, 1)] : []),
    ...(sprayed ? [`${figureText(lowered.nitrousPower, 'hp', system, 0)} of nitrous`] : []),
    speed,
  ]
  return `${parts.join(' and ')}, about ${power}`
}

/** The route's title and call: where no target will do, those that say so. */
export function loweredWords(
  route: Pick<Route, 'title' | 'call' | 'none' | 'practice'>,
  { found, asks }: Pick<LoweredTarget, 'found' | 'asks'>,
): { readonly title: string; readonly call: string } {
  if (found) return route
  return (asks ? route.practice : route.none) ?? route
}
