import type { RouteReport } from '../../shared/assessment.ts'
import type { SheetStep } from './sheet-case.ts'
import type { OrderRule } from './sheet-rules.ts'

/**
 * The order of work with everything that the route has done: a block is sent off before the
 * first step at the shop; what is done there goes before the steps that the rules name.
 *
 * @param steps - what follows from the call, in order
 * @param route - the called route: its work, by the ids of the price list, in order
 * @param rule - what is said with that work, where it is done and before what
 */
export function withRouteWork(
  steps: readonly SheetStep[],
  route: RouteReport,
  { works, otherwise, toldBy }: OrderRule,
): SheetStep[] {
  const told = new Set(steps.map(({ id }) => id))
  return route.work
    .filter((id) => !told.has(id) && !told.has(toldBy[id] ?? ''))
    .reduce<SheetStep[]>(
      (order, id) => {
        const item = route.cost.items.find((one) => one.id === id)
        const title = item?.label ?? id.replaceAll('-', ' ')
        const { at, text, before = otherwise.before } = works[id] ?? otherwise
        const step: SheetStep = { id, title, at, note: text }
        return insertBefore(order, step, (one) =>
          at === 'home' ? one.at === 'shop' : before.includes(one.id),
        )
      },
      [...steps],
    )
}

/** Before the step that fits; where none does, before the block is washed for assembly. */
function insertBefore(
  steps: readonly SheetStep[],
  step: SheetStep,
  fits: (step: SheetStep) => boolean,
): SheetStep[] {
  const found = steps.findIndex(fits)
  const place = found === -1 ? steps.findIndex(({ id }) => id === 'wash-block') : found
  return place === -1 ? [...steps, step] : steps.toSpliced(place, 0, step)
}
