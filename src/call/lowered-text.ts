import { printFigure } from '../../shared/print.ts'
import { fromSi } from '../../shared/units.ts'
import { figureOf } from '../build/build.ts'
import { figureText } from '../facts/live-facts.ts'
import { say } from '../rulebook/places.ts'
import type { Route } from '../rulebook/schema.ts'
import type { CallContext } from './call-report.ts'
import type { LoweredTarget } from './lower-target.ts'

/**
 * What the present hardware holds, in words: "6.1 psi and 6,500 rpm, about 551 hp"; where nothing
 * will do, the least that was tried.
 */
export function loweredText({ lowered, trials, rulebook, system }: CallContext): string {
  const says = rulebook.callWords.lowered
  const speed = printFigure(lowered.rpm, 'rpm', 0)
  const power = figureText(fromSi(lowered.power, 'hp'), 'hp', system)
  const [boosted, sprayed] = [
    figureOf(trials.build, 'boost') > 0,
    figureOf(trials.build, 'nitrousPower') > 0,
  ]
  if (!lowered.found) {
    const calm = boosted ? says.withoutBoost : sprayed ? says.withoutNitrous : undefined
    const target = say(says.target, { parts: calm ? say(calm, { speed }) : speed, power })
    return lowered.asks ? target : say(says.none, { target })
  }
  const nitrous = figureText(lowered.nitrousPower, 'hp', system, 0)
  const parts = [
    ...(boosted ? [figureText(lowered.boost, 'psi', system, 1)] : []),
    ...(sprayed ? [say(says.nitrous, { power: nitrous })] : []),
    speed,
  ]
  return say(says.target, { parts: parts.join(' and '), power })
}

/**
 * The route's title and call: where no target will do, those that say so; where it is called at the
 * plan's own target, those that say what is the matter instead.
 *
 * @param isCalled - whether this route is the one that is called
 */
export function loweredWords(
  route: Pick<Route, 'title' | 'call' | 'none' | 'practice' | 'unpaid'>,
  { found, asks, asPlanned }: Pick<LoweredTarget, 'found' | 'asks' | 'asPlanned'>,
  isCalled: boolean,
): { readonly title: string; readonly call: string } {
  if (found) return (isCalled && asPlanned ? route.unpaid : undefined) ?? route
  return (asks ? route.practice : route.none) ?? route
}
