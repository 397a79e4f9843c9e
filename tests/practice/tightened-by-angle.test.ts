import { describe, expect, it } from 'vitest'
import type { Assessment } from '../../shared/assessment.ts'
import { callFor, routeOf } from '../support/rulebook.ts'

const M12 = { fastenerThread: 'M12x1.75', fastenerGrade: 'iso-10.9' }
const BY_ANGLE = { ...M12, tightening: 'torque-angle' }
const kept = (found: Assessment) => routeOf(found, 'keep-caps-and-bolts')

describe('fasteners that an angle or a stretch tightens', () => {
  it.each(['torque-angle', 'stretch'])(
    'are clamped to 0.75 of proof load: %s',
    async (tightening) => {
      const { joint } = kept(await callFor({ ...M12, tightening, fastenerTorque: undefined }))
      // ISO 898-1:2013, tables 3 and 5: Sp = 830 MPa for 10.9, At = 84.3 mm2 for M12x1.75
      // (from memory; π/4 (d − 0.9382 P)² of the same standard gives it); Shigley's
      // Mechanical Engineering Design, 9th ed., eq. 8-31: Fi = 0.75 Fp. kN.
      expect(joint.preload / (0.75 * 0.83 * 84.3)).toBeCloseTo(1, 3)
      expect(joint.shareOfProof).toBeCloseTo(0.75, 9)
      expect(joint.torque).toBeUndefined()
    },
  )

  it('hold alike whatever the torque before the turn, said to the pound-foot or as a range', async () => {
    const none = kept(await callFor({ ...BY_ANGLE, fastenerTorque: undefined }))
    for (const fastenerTorque of [
      '20 N m',
      '90 N m',
      { value: 30, low: 20, high: 60, unit: 'N m' },
    ]) {
      const said = kept(await callFor({ ...BY_ANGLE, fastenerTorque }))
      expect(said.joint).toEqual(none.joint)
      expect(said.margins).toEqual(none.margins)
    }
  })

  it('make room for studs on a torque wrench', async () => {
    const turned = routeOf(await callFor(BY_ANGLE), 'keep-caps-add-studs')
    const wrenched = routeOf(await callFor(M12), 'keep-caps-add-studs')
    expect(turned.joint).toEqual(wrenched.joint)
    expect(turned.joint.torque).toBeDefined()
  })

  it('say in the working where the preload comes from', async () => {
    const { working } = await callFor(BY_ANGLE)
    const step = working.find(({ title }) => title.startsWith('Preload of one fastener'))
    expect(step?.withNumbers).toBe('75% of proof load of M12x1.75')
    expect(step?.source.cite).toContain('8–31')
  })
})
