import type { CrankLayout } from '../../src/mechanics/crank-layouts.ts'
import { cylinderForces } from '../../src/mechanics/crank-train.ts'
import type { MainLoadsInput } from '../../src/mechanics/main-loads.ts'
import { pressureTrace } from './pressure-trace.ts'

/** A street engine of the layout at one speed. */
export function engine(layout: CrankLayout, change: Partial<MainLoadsInput> = {}): MainLoadsInput {
  return {
    layout,
    bore: 0.1,
    stroke: 0.09,
    rodLength: 0.15,
    reciprocatingMass: 0.9,
    bigEndMass: 0.6,
    speed: 500,
    pressure: pressureTrace(),
    ...change,
  }
}

/**
 * Force of everything on one throw at a degree, built from textbook forces on the pin, tangential
 * and radial, and from the turning masses: another way than the main loads take.
 */
export function throwForce(input: MainLoadsInput, on: number, degree: number): [number, number] {
  const { layout, stroke, speed } = input
  const theta = (degree * Math.PI) / 180
  const share = input.counterweightShare ?? layout.counterweightShare
  const unit = (stroke / 2) * speed * speed
  let x = 0
  let y = 0
  let balanced = share.rotating * (input.pinMass ?? 0)
  layout.cylinders.forEach((cylinder) => {
    if (cylinder.throw !== on) return
    const local = theta - cylinder.firingAngle
    const sample =
      (((degree - Math.round((cylinder.firingAngle * 180) / Math.PI)) % 720) + 720) % 720
    const gaugePressure = input.pressure[sample]! - (input.crankcasePressure ?? 101_325)
    const forces = cylinderForces({ ...input, angle: local, gaugePressure })
    const pin = local + cylinder.bankAngle
    const outward = forces.bigEnd - forces.radial
    x += outward * Math.sin(pin) + forces.tangential * Math.cos(pin)
    y += outward * Math.cos(pin) - forces.tangential * Math.sin(pin)
    const faced = share.rotating * input.bigEndMass + share.reciprocating * input.reciprocatingMass
    balanced += faced * Math.cos(cylinder.pinOffset)
  })
  const turning = ((input.pinMass ?? 0) - balanced) * unit
  const angle = layout.throws[on]!.angle + theta
  return [x + turning * Math.sin(angle), y + turning * Math.cos(angle)]
}
