import type { Assessment, RouteReport } from '../../shared/assessment.ts'
import type { EngineCase } from './engine-case.ts'
import type { LimitCase } from './limits.ts'
import type { ShopRules } from './shop-rules.ts'
import type { Units } from './workshop-figures.ts'

/** One step of the order of work, as rules/follow-on.json has it. */
export interface SheetStep {
  readonly id: string
  readonly title: string
  readonly at: 'home' | 'shop'
  readonly note: string
}

/** All that the sections of a sheet draw from. */
export interface SheetCase extends LimitCase {
  readonly assessment: Assessment
  /** The called route. */
  readonly route: RouteReport
  readonly engine: EngineCase
  readonly steps: readonly SheetStep[]
  readonly units: Units
  readonly rules: ShopRules
  /** Cautions that every sheet carries, whatever the case. */
  readonly safety: readonly string[]
  /** One US dollar in the currency of the case. */
  readonly rate: number
}

/** Whether a rule's condition fits the called route; a rule without one always does. */
export function fitsRoute(
  when: { work?: readonly string[] | undefined; parts?: readonly string[] | undefined } | undefined,
  route: RouteReport,
): boolean {
  if (!when) return true
  return (
    (when.work ?? []).some((id) => route.work.includes(id)) ||
    (when.parts ?? []).some((id) => route.parts.includes(id))
  )
}

/** Whether a route has its main bores bored or honed. */
export function isMachined({ work }: RouteReport): boolean {
  return work.some((id) => id === 'line-bore' || id.startsWith('line-hone'))
}
