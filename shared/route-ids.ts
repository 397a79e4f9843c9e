import { z } from 'zod'

/** The rulebook's ids of the ways to hold a crankshaft, weakest change first. */
export const ROUTE_IDS = [
  'keep-caps-and-bolts',
  'keep-caps-add-studs',
  'steel-caps',
  'girdle',
  'four-bolt-conversion',
  'stronger-block',
  'lower-the-target',
] as const
/** A route by its id. */
export const routeId = z.enum(ROUTE_IDS)
/** Id of one of the ways to hold the crank. */
export type RouteId = z.infer<typeof routeId>

/** The margins of a route: each what it can bear over what it must, so that 1 is the edge. */
export const MARGIN_IDS = [
  'hold',
  'grip',
  'separation',
  'capFatigue',
  'fastenerProof',
  'threadStrip',
] as const
/** A margin by its id. */
export const marginId = z.enum(MARGIN_IDS)
/** Id of one of the ways in which a cap, fastener or thread gives. */
export type MarginId = z.infer<typeof marginId>
