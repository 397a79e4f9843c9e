import { describe, expect, it } from 'vitest'
import type { Assessment } from '../../shared/assessment.ts'
import { ROUTE_IDS } from '../../shared/route-ids.ts'
import { assess } from '../../src/assess.ts'
import { callFor, routeOf, rulebook, said } from '../support/rulebook.ts'

const effects = new Map(rulebook.rules.map(({ id, outcome }) => [id, outcome.effect]))
const ids = ({ cautions }: Assessment) => cautions.map(({ rule }) => rule)

/** What speaks against a route and is more than a note. */
function drawbacks(found: Assessment, route: (typeof ROUTE_IDS)[number]): string[] {
  return routeOf(found, route)
    .against.filter(({ rule, severity }) => severity !== 'note' && effects.get(rule) === 'against')
    .map(({ rule }) => rule)
}

describe('the cautions of a call', () => {
  it.each(rulebook.presets.map(({ id, answers }) => [id, answers] as const))(
    'hold what speaks against the called route, and against no other: %s',
    async (_, answers) => {
      const found = await assess(rulebook, said(answers), { withoutWhatIf: true })
      const own = drawbacks(found, found.call.route as (typeof ROUTE_IDS)[number])
      const others = ROUTE_IDS.flatMap((id) => drawbacks(found, id)).filter(
        (rule) => !own.includes(rule),
      )
      expect(ids(found)).toEqual(expect.arrayContaining(own))
      expect(ids(found).filter((rule) => others.includes(rule))).toEqual([])
      expect(new Set(ids(found)).size).toBe(found.cautions.length)
    },
  )

  it('say that faces slip where friction alone does not hold them, and not where it does', async () => {
    const held = await callFor({ peakRpm: '4500 rpm', compressionRatio: 8.5 })
    const slips = await callFor({ induction: 'turbocharged', boost: '7 psi' })
    const grip = ({ call, routes }: Assessment) =>
      routes.find(({ id }) => id === call.route)?.margins.grip.likely
    expect(grip(held)).toBeGreaterThan(1)
    expect(ids(held)).not.toContain('cap-frets')
    expect(grip(slips)).toBeLessThan(1)
    expect(ids(slips)).toContain('cap-frets')
  })

  it('are of the build alone while a contradiction withholds the call', async () => {
    const found = await callFor({ targetPower: '1500 hp' })
    expect(found.call.route).toBe(null)
    expect(ROUTE_IDS.flatMap((id) => drawbacks(found, id))).not.toEqual([])
    expect(ids(found).filter((rule) => effects.get(rule) === 'against')).toEqual([])
  })
})
