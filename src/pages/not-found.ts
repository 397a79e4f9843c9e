import { errorPage } from './error-page.ts'
import type { Html } from './html.ts'
import type { UnitSystem } from './page-href.ts'

/** For an address that leads nowhere. */
export function notFoundPage(view: { units: UnitSystem; link: string; path: string }): Html {
  return errorPage({
    ...view,
    title: 'There is no such page',
    text: 'The address may be mistyped, or the page has moved. The guide, the explanations, the worksheets and the method are in the header.',
  })
}
