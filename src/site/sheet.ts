import { type Context, Hono } from 'hono'
import { type Assessment, toFindOut } from '../../shared/assessment.ts'
import { fact, isFactKey } from '../../shared/fact-keys.ts'
import { assessOnce } from '../api/assess-once.ts'
import { type Client, clientOf } from '../api/client.ts'
import type { AppDeps } from '../api/deps.ts'
import { originOf } from '../api/origin-of.ts'
import { errorPage } from '../pages/error-page.ts'
import { pageHref } from '../pages/page-href.ts'
import type { PrintFonts } from '../pages/pdf-pen.ts'
import { safetyWords } from '../pages/safety-words.ts'
import { sheetPage } from '../pages/sheet.ts'
import { sheetPdf } from '../pages/sheet-pdf.ts'
import { say } from '../rulebook/places.ts'
import type { ShopSheet } from '../shop-sheet/blocks.ts'
import { SERVICE_FIELDS } from '../shop-sheet/fields.ts'
import { onlyFields } from '../shop-sheet/link-code.ts'
import { readingsOf } from '../shop-sheet/readings.ts'
import { shopSheet } from '../shop-sheet/sheet.ts'
import type { ShopRules } from '../shop-sheet/shop-rules.ts'
import { workSteps } from './call.ts'
import {
  engineOf,
  fullLink,
  type MeasuredView,
  measuredViewOf,
  measuredViewOfForm,
} from './measured-view.ts'

const SERVICE = new Set(SERVICE_FIELDS.map(({ id }) => id))

/** `/sheet?…` and `/sheet.pdf?…`: what the machine shop gets. */
export function sheetRoutes(deps: AppDeps): Hono {
  const site = new Hono()
  site.get('/sheet', async (c) => {
    const request = serviceOnly(measuredViewOf(deps, c))
    const made = await sheetOf(deps, request, clientOf(c))
    if ('refused' in made) return c.html(noSheet(request, made.refused), 422)
    const { sheet, hedge, wrong } = made
    const link = fullLink(request, request.measured)
    const address = `${originOf(deps, c)}${pageHref('/sheet', link, request.units)}`
    const { units, measured } = request
    const view = {
      sheet,
      units,
      link: request.link,
      fullLink: link,
      measured,
      wrong,
      address,
      hedge,
      withoutPdf: !deps.printFonts,
    }
    return c.html(sheetPage(view))
  })
  site.post('/sheet', async (c) => {
    const request = await measuredViewOfForm(deps, c)
    return c.redirect(pageHref('/sheet', fullLink(request, request.measured), request.units), 303)
  })
  const { printFonts } = deps
  if (printFonts) site.get('/sheet.pdf', (c) => pdf(deps, printFonts, c))
  return site
}

/** A sheet says what is to be done, so only the service data of a link belong on it. */
function serviceOnly(request: MeasuredView): MeasuredView {
  return { ...request, measured: onlyFields(request.measured, (name) => SERVICE.has(name)) }
}

async function pdf(deps: AppDeps, fonts: PrintFonts, c: Context): Promise<Response> {
  const request = serviceOnly(measuredViewOf(deps, c))
  const made = await sheetOf(deps, request, clientOf(c))
  if ('refused' in made) return c.html(noSheet(request, made.refused), 422)
  const { units } = request
  const link = fullLink(request, request.measured)
  const address = `${originOf(deps, c)}${pageHref('/sheet', link, units)}`
  const asked = request.other.get('paper')
  const paper = asked === 'a4' || (asked !== 'letter' && units === 'metric') ? 'A4' : 'LETTER'
  const { sheet, hedge } = made
  const dated = deps.rulebook.changes.at(-1)?.date ?? '2000-01-01'
  const foot = safetyWords(deps.content, 'foot-of-paper')
  const bytes = await sheetPdf({ sheet, address, hedge, foot, paper, dated, fonts })
  return c.body(bytes, 200, {
    'content-type': 'application/pdf',
    'content-disposition': 'inline; filename="shop-sheet.pdf"',
  })
}

type Made =
  | { readonly refused: 'nothing-said' | 'withheld' }
  | {
      readonly sheet: ShopSheet
      readonly hedge: string | undefined
      readonly wrong: readonly { field: string; text: string }[]
    }

/** The sheet of a case, or why there is none. */
export async function sheetOf(deps: AppDeps, request: MeasuredView, client: Client): Promise<Made> {
  const { answers, units, measured } = request
  const { rulebook, shopRules, content } = deps
  if (Object.keys(answers).length === 0) return { refused: 'nothing-said' }
  const assessment = await assessOnce(
    rulebook,
    answers,
    { system: units, withoutTurningPoints: true },
    client,
  )
  const route = assessment.routes.find(({ id }) => id === assessment.call.route)
  if (!route) return { refused: 'withheld' }
  const engine = engineOf(deps, request, route.id)
  const readings = readingsOf(measured)
  const rates: Readonly<Record<string, number>> = rulebook.cost.rates
  const sheet = shopSheet({
    assessment,
    route,
    engine,
    readings,
    units,
    use: engine.use,
    rules: shopRules,
    safety: [safetyWords(content, 'on-sheet-1'), safetyWords(content, 'on-sheet-2')],
    steps: workSteps(rulebook, assessment),
    rate: (rates[assessment.cost.currency] ?? 1) / (rates[shopRules.often.currency] ?? 1),
  })
  return { sheet, hedge: hedgeOf(assessment, shopRules), wrong: readings.wrong }
}

/** A sheet for a call, or a lowered target, that an open answer could still change says so. */
function hedgeOf(assessment: Assessment, { sheet: { hedge } }: ShopRules): string | undefined {
  const { call, routes } = assessment
  if (call.confidence !== 'likely') return call.targetMoves
  const key = call.settledBy
  const open = key && isFactKey(key) ? fact(key).label : 'an open answer'
  const more = toFindOut(assessment).length - 1
  const others = more > 0 ? ` and ${more} more that the call lists` : ''
  const isCut = routes.some(({ id, work }) => id === call.route && work.length > 0)
  const settle = say(isCut ? hedge.cutting : hedge.relying, { open: more > 0 ? 'them' : 'it' })
  const moves = call.targetMoves ? ` ${call.targetMoves}` : ''
  return `The call is likely, not settled. Still open: ${open.charAt(0).toLowerCase()}${open.slice(1)}${others}. ${settle}${moves}`
}

function noSheet({ units, link, problems }: MeasuredView, why: 'nothing-said' | 'withheld') {
  const text =
    why === 'withheld'
      ? 'Two answers of this case cannot both be true, so there is no route to hand to a shop. Open the call to see which, mend one, and the sheet appears.'
      : 'This link says nothing about a build yet. Answer a few questions, or describe the build in your own words; the sheet follows from the call.'
  return errorPage({ units, link, path: '/sheet', title: 'There is no sheet yet', text, problems })
}
