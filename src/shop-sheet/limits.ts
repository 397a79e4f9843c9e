import type { Source } from '../../shared/assessment.ts'
import { toSi } from '../../shared/units.ts'
import type { GaugeId, LimitId, LimitRule } from './limit-rules.ts'
import type { Readings } from './readings.ts'
import type { ShopRules } from './shop-rules.ts'

/** A limit as it holds in this case, in SI: infinite where there is no end. */
export interface Limit {
  readonly id: LimitId
  readonly title: string
  readonly low: number
  readonly high: number
  /** Whether there is any end at all. */
  readonly known: boolean
  readonly because: string
  readonly ifLow: string
  readonly ifHigh: string
  readonly source: Source
  /** What goes back to be mended when it is not kept. */
  readonly goesBack: LimitRule['goesBack']
}

/** What a limit or a gauge is looked up in. */
export interface LimitCase {
  readonly rules: ShopRules
  readonly readings: Readings
  /** The engine's use, for limits that differ by it. */
  readonly use: string
  /** Diameter for limits that are so much for each unit of it, m. */
  readonly journal?: number | undefined
}

/** A limit: the person's own service data first, then the rule. */
export function limitFor(id: LimitId, { rules, readings, use, journal }: LimitCase): Limit {
  const rule = rules.limits[id]
  const said = {
    low: rule.service?.low === undefined ? undefined : readings.length(rule.service.low),
    high: rule.service?.high === undefined ? undefined : readings.length(rule.service.high),
  }
  const isSaid = said.low !== undefined || said.high !== undefined
  const ends = rule.uses?.[use] ?? rule
  const inSi = (end: number | undefined): number | undefined => {
    if (end === undefined) return undefined
    if (rule.kind === 'per-diameter') return journal === undefined ? undefined : end * journal
    return rule.kind === 'length' ? toSi(end, rule.unit) : end
  }
  const low = said.low ?? inSi(ends.low)
  const high = said.high ?? inSi(ends.high)
  return {
    id,
    title: rule.title,
    low: low ?? Number.NEGATIVE_INFINITY,
    high: high ?? Number.POSITIVE_INFINITY,
    known: low !== undefined || high !== undefined,
    because: rule.because,
    ifLow: rule.ifLow ?? '',
    ifHigh: rule.ifHigh ?? '',
    goesBack: rule.goesBack,
    source: isSaid
      ? { kind: 'said', cite: 'your service data' }
      : { kind: rule.source.kind, cite: rule.source.cite ?? '' },
  }
}

/** Expanded uncertainty of a gauge, m: of a size, and of a difference read with it. */
export interface GaugeCase {
  readonly title: string
  readonly size: number
  readonly repeat: number
  readonly source: Source
}

/** A gauge: the person's own ± first, which scales both figures, then the rule. */
export function gaugeFor(id: GaugeId, { rules, readings }: LimitCase): GaugeCase {
  const rule = rules.gauges[id]
  const size = toSi(rule.size, rule.unit)
  const own = readings.length(`gauge-${id}`)
  return {
    title: rule.title,
    size: own ?? size,
    repeat: toSi(rule.repeat, rule.unit) * (own === undefined ? 1 : own / size),
    source:
      own === undefined
        ? { kind: rule.source.kind, cite: rule.source.cite ?? '' }
        : { kind: 'said', cite: '' },
  }
}
