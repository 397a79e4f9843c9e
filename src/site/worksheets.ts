import { type Context, Hono } from 'hono'
import { assessOnce } from '../api/assess-once.ts'
import { type Client, clientOf } from '../api/client.ts'
import type { AppDeps } from '../api/deps.ts'
import { buildFromAnswers } from '../build/from-answers.ts'
import { trialsOf } from '../facts/trials.ts'
import { DomainError } from '../mechanics/domain-error.ts'
import { notFoundPage } from '../pages/not-found.ts'
import { worksheetPage } from '../pages/worksheet.ts'
import { worksheetIndexPage } from '../pages/worksheet-index.ts'
import { inputsFromQuery, inSystem } from '../worksheets/form-input.ts'
import { runWorksheet } from '../worksheets/input.ts'
import { WORKSHEETS, worksheetNamed } from '../worksheets/registry.ts'
import type { JointTaken, Worksheet } from '../worksheets/worksheet.ts'
import { type RequestView, viewOfQuery } from './request-view.ts'

/** Worksheets as plain pages: a form whose answer is a link. */
export function worksheetSite(deps: AppDeps): Hono {
  const site = new Hono()
  site.get('/worksheets', (c) => {
    const { units, link } = caseOf(deps, c)
    return c.html(worksheetIndexPage({ sheets: WORKSHEETS, units, link }))
  })
  site.get('/worksheets/:name', async (c) => {
    const request = caseOf(deps, c)
    const { units, link } = request
    const sheet = worksheetNamed(c.req.param('name'))
    if (!sheet) return c.html(notFoundPage({ units, link, path: c.req.path }), 404)
    const { raw, origin } = await startOf(deps, c, sheet, request)
    const outcome = runWorksheet(sheet, raw, units)
    const view = { sheet, raw, origin, outcome, units, link, content: deps.content }
    const hasCase = Object.keys(request.answers).length > 0
    return c.html(worksheetPage({ ...view, hasCase }), 'problems' in outcome ? 422 : 200)
  })
  return site
}

/** The case in the link, the worksheet's own parameters left aside. */
function caseOf({ rulebook }: AppDeps, c: Context): RequestView {
  const params = new URL(c.req.url).searchParams
  const rest = [...params].filter(([name]) => !name.startsWith('in.'))
  return viewOfQuery(rulebook, new URLSearchParams(rest).toString())
}

/** Where the figures in the form come from. */
export type InputOrigin = 'given' | 'build' | 'example'

async function startOf(
  deps: AppDeps,
  c: Context,
  sheet: Worksheet,
  { answers, units }: RequestView,
): Promise<{ raw: Record<string, unknown>; origin: InputOrigin }> {
  const given = inputsFromQuery(sheet.fields, new URL(c.req.url).searchParams)
  if (given) return { raw: given, origin: 'given' }
  if (Object.keys(answers).length > 0) {
    const raw = await fromCase(deps, sheet, { answers, units }, clientOf(c))
    if (raw) return { raw: inSystem(sheet.fields, raw, units), origin: 'build' }
  }
  return { raw: inSystem(sheet.fields, { ...sheet.example }, units), origin: 'example' }
}

/** What a worksheet takes for the joint, from the rulebook. */
export function jointTaken({ joint, scatter }: AppDeps['rulebook']): JointTaken {
  const settling = scatter.find(({ id }) => id === 'embedding')?.take
  return {
    grip: joint.gripOverCapHeight.value,
    head: joint.headOverDiameter.value,
    settling: settling && 'likely' in settling ? settling.likely : 0,
    capMaterial: joint.capMaterial,
    blockMaterial: joint.blockMaterial,
  }
}

/** Inputs from the case; undefined when its figures are beyond the mechanics. */
async function fromCase(
  { rulebook }: AppDeps,
  sheet: Worksheet,
  { answers, units: system }: Pick<RequestView, 'answers' | 'units'>,
  client: Client,
): Promise<Record<string, unknown> | undefined> {
  try {
    const options = { system, withoutWhatIf: true }
    const assessment = await assessOnce(rulebook, answers, options, client)
    const { loads } = trialsOf(buildFromAnswers(rulebook, answers), rulebook)
    return sheet.fromBuild({ assessment, loads, joint: jointTaken(rulebook) })
  } catch (error) {
    if (error instanceof DomainError) return undefined
    throw error
  }
}
