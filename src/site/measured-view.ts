import type { Context } from 'hono'
import type { AppDeps } from '../api/deps.ts'
import { buildFromAnswers } from '../build/from-answers.ts'
import { measuredFromForm } from '../check-in/read-form.ts'
import { type EngineCase, engineCase } from '../shop-sheet/engine-case.ts'
import { type Measured, measuredFrom, measuredQuery } from '../shop-sheet/link-code.ts'
import { type RequestView, viewOf, viewOfQuery } from './request-view.ts'

/** A case with what was measured, as sheet and check-in read it from a link. */
export interface MeasuredView extends RequestView {
  readonly measured: Measured
}

/** A request's case with the measurements in its link. */
export function measuredViewOf({ rulebook }: AppDeps, c: Context): MeasuredView {
  return withMeasured(viewOf(rulebook, c))
}

/** The same out of a form post: the case and earlier readings in `state`, new ones in their fields. */
export async function measuredViewOfForm({ rulebook }: AppDeps, c: Context): Promise<MeasuredView> {
  const form = new URLSearchParams(await c.req.text())
  const units = form.get('units') === 'metric' ? 'metric' : 'us'
  const before = withMeasured(viewOfQuery(rulebook, `${form.get('state') ?? ''}&units=${units}`))
  return { ...before, measured: measuredFromForm(form, before.measured) }
}

function withMeasured(request: RequestView): MeasuredView {
  const usual = request.units === 'us' ? 'in' : 'mm'
  return { ...request, measured: measuredFrom(request.other, usual) }
}

/** The link of a case with measurements. */
export function fullLink({ link }: RequestView, measured: Measured): string {
  return [link, measuredQuery(measured)].filter((part) => part !== '').join('&')
}

/** The engine of a case as sheet and check-in need it, after a route or as it is. */
export function engineOf(
  { rulebook }: AppDeps,
  { answers }: RequestView,
  route: string | null,
): EngineCase {
  return engineCase(buildFromAnswers(rulebook, answers), route, rulebook)
}
