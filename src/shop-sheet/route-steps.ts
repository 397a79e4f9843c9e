import type { RouteReport } from '../../shared/assessment.ts'
import type { SheetStep } from './sheet-case.ts'
import type { OrderRule } from './sheet-rules.ts'

/**
 * The order of work with everything that the route has done: a block is sent off before the
 * first step at the shop; caps are fitted and holes drilled before the mains are bored.
 *
 * @param steps - what follows from the call, in order
 * @param route - the called route: its work, by the ids of the price list
 * @param rule - what is said with that work, and where it is done
 */
export function withRouteWork(
  steps: readonly SheetStep[],
  route: RouteReport,
  { works, otherwise, toldBy }: OrderRule,
): SheetStep[] {
  const told = new Set(steps.map(({ id }) => id))
  const more = route.work
    .filter((id) => !told.has(id) && !told.has(toldBy[id] ?? ''))
    .map((id): SheetStep => {
      const item = route.cost.items.find((one) => one.id === id)
      const title = item?.label ?? id.replaceAll('-', ' ')
      const { at, text } = works[id] ?? otherwise
      return { id, title, at, note: text }
    })
  const sent = insertBefore(
    steps,
    more.filter(({ at }) => at === 'home'),
    ({ at }) => at === 'shop',
  )
  return insertBefore(
    sent,
    more.filter(({ at }) => at === 'shop'),
    ({ id, at }) => at === 'shop' && id.startsWith('line-'),
  )
}

/** Before the step that fits; where none does, before the block is washed for assembly. */
function insertBefore(
  steps: readonly SheetStep[],
  more: readonly SheetStep[],
  fits: (step: SheetStep) => boolean,
): SheetStep[] {
  const found = steps.findIndex(fits)
  const place = found === -1 ? steps.findIndex(({ id }) => id === 'wash-block') : found
  return place === -1 ? [...steps, ...more] : steps.toSpliced(place, 0, ...more)
}
