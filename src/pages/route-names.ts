import { ROUTE_IDS, type RouteId } from '../../shared/route-ids.ts'

/** Route names that fit beside a bar on a phone. */
export const SHORT_TITLES: Readonly<Record<RouteId, string>> = {
  'keep-caps-and-bolts': 'Caps and bolts',
  'keep-caps-add-studs': 'Caps and studs',
  'steel-caps': 'Steel caps',
  girdle: 'Girdle',
  'four-bolt-conversion': 'Four bolts',
  'stronger-block': 'Stronger block',
  'lower-the-target': 'Lower target',
}

/** 1 to 7: the colour and dash that a route has in every picture. */
export function routeNumber(route: RouteId): number {
  return ROUTE_IDS.indexOf(route) + 1
}
