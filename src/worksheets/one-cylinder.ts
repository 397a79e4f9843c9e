import { cylinderForces, zeroLoadSpeed } from '../mechanics/crank-train.ts'
import {
  meanPistonSpeed,
  pistonAcceleration,
  pistonSpeed,
  pistonTravel,
} from '../mechanics/slider-crank.ts'
import type { MainLoadsInputs } from './main-loads-fields.ts'
import type { Print } from './print.ts'
import { fromMemory, present, type Result, type Step } from './worksheet.ts'

/** Motion and forces of one cylinder at one crank angle, when an angle is given. */
export function oneCylinder(
  input: MainLoadsInputs,
  print: Print,
): { results: Result[]; steps: Step[] } {
  const one = cylinderOf(input)
  if (!one) return { results: [], steps: [] }
  const forces = cylinderForces(one)
  return {
    results: [
      ...motionResults(one, print),
      ...forceResults(forces, print),
      print.result(
        'cylinder.zeroLoadSpeed',
        'Speed at which the pin’s load is nought',
        zeroLoadSpeed(one),
        'speed',
      ),
    ],
    steps: [pistonStep(input, forces, one.gaugePressure, print), rodStep(forces, print)],
  }
}

type Forces = ReturnType<typeof cylinderForces>
type Cylinder = NonNullable<ReturnType<typeof cylinderOf>>

/** The cylinder at the angle that is asked for; none is, as a rule. */
function cylinderOf(input: MainLoadsInputs) {
  const { crankAngle: angle, bore, stroke, speed, motion = 'exact', reciprocatingMass } = input
  if (angle === undefined) return undefined
  const { rodLength = Number.POSITIVE_INFINITY, gaugePressure = 0, gravity, bigEndMass } = input
  return {
    bore,
    stroke,
    rodLength,
    reciprocatingMass,
    speed,
    angle,
    gaugePressure,
    motion,
    ...present({ gravity, bigEndMass }),
  }
}

function motionResults({ stroke, rodLength, angle, speed, motion }: Cylinder, print: Print) {
  const radius = stroke / 2
  const travel = pistonTravel(radius, rodLength, angle)
  const now = pistonSpeed(radius, rodLength, angle, speed)
  const mean = meanPistonSpeed(stroke, speed)
  const acceleration = pistonAcceleration(radius, rodLength, angle, speed, motion)
  return [
    print.result('cylinder.travel', 'Piston below dead centre', travel, 'length'),
    print.result('cylinder.speed', 'Piston speed', now, 'velocity'),
    print.result('cylinder.meanSpeed', 'Mean piston speed', mean, 'velocity'),
    print.result('cylinder.acceleration', 'Piston acceleration', acceleration, 'acceleration'),
  ]
}

function forceResults(forces: Forces, print: Print): Result[] {
  const force = (name: keyof Forces, label: string): Result =>
    print.result(`cylinder.${name}`, label, forces[name], 'force')
  return [
    force('gas', 'Gas on the piston'),
    force('inertia', 'Taken by inertia'),
    force('weight', 'Weight along the bore'),
    force('piston', 'Left for the piston pin'),
    print.result('cylinder.rodAngle', 'Lean of the rod', forces.rodAngle, 'angle'),
    force('rod', 'Along the rod'),
    force('wall', 'On the cylinder wall'),
    force('tangential', 'Square to the crank'),
    force('radial', 'Along the crank, toward its axis'),
    force('bigEnd', 'Big end, outward'),
    print.result('cylinder.torque', 'Torque of the cylinder', forces.torque, 'torque'),
  ]
}

function pistonStep(input: MainLoadsInputs, forces: Forces, gauge: number, print: Print): Step {
  const force = (one: number): string => print.figure(one, 'force')
  return {
    title: `One cylinder at ${print.figure(input.crankAngle ?? 0, 'angle')}: along the bore`,
    formula: 'F = p π/4 B² − m R ω² k + m g',
    withNumbers: `F = ${print.figure(gauge, 'pressure')} × π/4 × (${print.figure(input.bore, 'length')})² − ${force(forces.inertia)} + ${force(forces.weight)}`,
    result: `F = ${force(forces.piston)}`,
    source: fromMemory('R. S. Khurmi & J. K. Gupta, Theory of Machines, ch. 15'),
  }
}

function rodStep({ piston, rodAngle, rod, wall, tangential }: Forces, print: Print): Step {
  const force = (one: number): string => print.figure(one, 'force')
  const lean = print.figure(rodAngle, 'angle')
  return {
    title: 'From the piston to the pin',
    formula: 'Q = F / cos φ; N = F tan φ; T = Q sin(θ + φ)',
    withNumbers: `Q = ${force(piston)} / cos ${lean}; N = ${force(piston)} × tan ${lean}`,
    result: `Q = ${force(rod)}, N = ${force(wall)}, T = ${force(tangential)}`,
    source: fromMemory('R. S. Khurmi & J. K. Gupta, Theory of Machines, ch. 15'),
  }
}
