import type { RouteReport } from '../../shared/assessment.ts'
import type { SheetStep } from './sheet-case.ts'

type Told = Pick<SheetStep, 'at' | 'note'>

/** Where a route's own work is done, and what is said with it. */
const WORK: Readonly<Record<string, Told>> = {
  'ship-block': {
    at: 'home',
    note: 'Crated so that nothing rests on a machined face. Agree on both ways before it leaves.',
  },
  'block-machining': { at: 'shop', note: 'The whole block is cut for its parts.' },
  'bore-check': {
    at: 'shop',
    note: 'Three directions, front and rear of every bore, with the final fasteners torqued.',
  },
}

const CUT_BEFORE_BORING: Told = {
  at: 'shop',
  note: 'With the final fasteners at hand; before any bore is cut.',
}

/** A step that already tells of this work in other words. */
const TOLD_BY: Readonly<Record<string, string>> = {
  'bore-check': 'recheck-bores-after-studs',
  'line-hone-if-needed': 'recheck-bores-after-studs',
}

/**
 * The order of work with everything that the route has done: a block is sent off before the
 * first step at the shop; caps are fitted and holes drilled before the mains are bored.
 *
 * @param steps - what follows from the call, in order
 * @param route - the called route: its work, by the ids of the price list
 */
export function withRouteWork(steps: readonly SheetStep[], route: RouteReport): SheetStep[] {
  const told = new Set(steps.map(({ id }) => id))
  const more = route.work
    .filter((id) => !told.has(id) && !told.has(TOLD_BY[id] ?? ''))
    .map((id): SheetStep => {
      const item = route.cost.items.find((one) => one.id === id)
      const title = item?.label ?? id.replaceAll('-', ' ')
      return { id, title, ...(WORK[id] ?? CUT_BEFORE_BORING) }
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
