import { z } from 'zod'

/** The moment at which a main is loaded most. */
const worstLoad = z.object({
  /** kN */
  force: z.number(),
  /** The other component at the same instant, kN. */
  pull: z.number(),
  side: z.number(),
  /** 1 is the main nearest the front. */
  main: z.number().int(),
  /** degrees after firing dead centre of cylinder 1 */
  angle: z.number(),
  rpm: z.number(),
  loadCase: z.enum(['full-load', 'closed-throttle']),
})
export type WorstLoad = z.infer<typeof worstLoad>

/** Pressure, power, and the load on every main over two turns. */
export const loadReport = z.object({
  peakPressure: z.object({
    value: z.number(),
    unit: z.literal('bar'),
    rpm: z.number(),
    angle: z.number(),
  }),
  power: z.object({ value: z.number(), unit: z.literal('kW'), rpm: z.number() }),
  torque: z.object({ value: z.number(), unit: z.literal('N m'), rpm: z.number() }),
  bmep: z.object({ value: z.number(), unit: z.literal('bar') }),
  knockLimited: z.boolean(),
  worstPull: worstLoad,
  worstSide: worstLoad,
  /** One row for each full-load speed of the sweep. */
  curve: z.array(
    z.object({
      rpm: z.number(),
      torque: z.number(),
      power: z.number(),
      bmep: z.number(),
      peakPressure: z.number(),
      worstPull: z.number(),
      worstSide: z.number(),
    }),
  ),
  /** Cylinder pressure at the speed of highest pressure: bar (absolute) every few degrees. */
  pressureTrace: z.array(z.object({ angle: z.number(), pressure: z.number() })),
  /** One for each main: the load's path over two turns, kN, at the worst speed. y is up, away from the cap. */
  mains: z.array(
    z.object({
      main: z.number().int(),
      rpm: z.number(),
      polar: z.array(z.object({ angle: z.number(), x: z.number(), y: z.number() })),
      worstPull: worstLoad,
      worstSide: worstLoad,
      /** Highest load over projected bearing area, MPa. */
      unitLoad: z.number(),
    }),
  ),
})
export type LoadReport = z.infer<typeof loadReport>
