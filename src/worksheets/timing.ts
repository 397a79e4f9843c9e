import {
  type GearDriveInput,
  gearDrive,
  mostShiftForBacklash,
  transversePressureAngle,
} from '../mechanics/gear-backlash.ts'
import { expansionOf } from '../mechanics/thermal-growth.ts'
import {
  type ChainDriveInput,
  chainDrive,
  chainPitches,
  mostShiftForSlack,
} from '../mechanics/timing-drive.ts'
import { type TimingWarmth, warmBacklash, warmChainSlack } from '../mechanics/timing-warmth.ts'
import type { Followers } from './axis-followers.ts'
import type { BoreMachiningInputs } from './bore-machining-fields.ts'
import { InputError } from './input.ts'
import type { Print } from './print.ts'
import { geometry, present, published, type Result, type Step } from './worksheet.ts'

const NONE: Followers = { results: [], steps: [] }

/** What a moved crank axis does to the timing chain or gears. */
export function timing(input: BoreMachiningInputs, axisShift: number, print: Print): Followers {
  const { camDistance, chainPitch, pressureAngle } = input
  if (chainPitch === undefined && pressureAngle === undefined) return NONE
  if (camDistance === undefined) {
    throw new InputError('camDistance', 'give the distance of the axes for chain or gears')
  }
  if (chainPitch !== undefined && pressureAngle !== undefined) {
    throw new InputError('pressureAngle', 'give a chain or gears, not both')
  }
  return chainPitch === undefined
    ? gears(input, camDistance, axisShift, print)
    : chain(input, camDistance, chainPitch, axisShift, print)
}

function chain(
  input: BoreMachiningInputs,
  centreDistance: number,
  pitch: number,
  axisShift: number,
  print: Print,
): Followers {
  const full = chainInput(input, centreDistance, pitch, axisShift)
  const drive = chainDrive(full)
  const fine = (id: string, label: string, one: number): Result =>
    print.result(id, label, one, 'fine')
  const pitches = chainPitches(centreDistance, pitch, full.crankTeeth, full.camTeeth)
  const results = [
    fine('chainShortening', 'Crank and cam come closer by', drive.shortening),
    fine('slackFreed', 'Chain set free, in its length', drive.slackFreed),
    fine('chainSlack', 'Slack left with the set that is fitted', drive.slack),
    fine('chainSag', 'Sideways throw at mid-strand', drive.sag),
    print.result('camRetard', 'Cam late by', drive.camRetard, 'angle'),
    print.ratio('chainPitches', 'Chain length in pitches, before', pitches),
  ]
  if (input.mostSlack !== undefined) {
    const most = mostShiftForSlack(full, input.mostSlack)
    results.push(
      fine('mostShiftForSlack', 'Axis shift at which the slack is the most allowed', most),
    )
  }
  const warm = warmth(input)
  if (warm) results.push(fine('warmSlack', 'Slack when warm', warmChainSlack(full, warm)))
  return { results, steps: [chainStep(drive, centreDistance, print)] }
}

function chainInput(
  { crankTeeth, camTeeth, camAngle, slackBefore, setShortening }: BoreMachiningInputs,
  centreDistance: number,
  pitch: number,
  axisShift: number,
): ChainDriveInput {
  if (crankTeeth === undefined || camTeeth === undefined) {
    const missing = crankTeeth === undefined ? 'crankTeeth' : 'camTeeth'
    throw new InputError(missing, 'give the teeth of both sprockets')
  }
  return {
    centreDistance,
    pitch,
    crankTeeth,
    camTeeth,
    axisShift,
    ...present({ camAngle, slackBefore, setShortening }),
  }
}

function chainStep(drive: ReturnType<typeof chainDrive>, before: number, print: Print): Step {
  const fine = (one: number): string => print.figure(one, 'fine')
  return {
    title: 'Timing chain as a belt over both pitch circles',
    formula:
      'L = 2 C cos α + R1 (π − 2α) + R2 (π + 2α), sin α = (R2 − R1)/C; freed = L(before) − L(after) ≈ 2 ΔC cos α',
    withNumbers: `C from ${print.figure(before, 'length')} to ${print.figure(drive.centreDistance, 'length')}, ΔC = ${fine(drive.shortening)}; by the short form ${fine(drive.slackFreedApproximate)}`,
    result: `freed ${fine(drive.slackFreed)}, slack ${fine(drive.slack)}, sag √(3 s e / 8) = ${fine(drive.sag)}`,
    source: published(
      'Shigley’s Mechanical Engineering Design, 9th ed., figure 17–1 (open belt); plane geometry',
    ),
  }
}

function gears(
  input: BoreMachiningInputs,
  centreDistance: number,
  axisShift: number,
  print: Print,
): Followers {
  const { camAngle, standardCentreDistance, backlashBefore = 0, leastBacklash } = input
  const normal = input.pressureAngle ?? 0
  const pressureAngle = transversePressureAngle(normal, input.helix ?? 0)
  const full: GearDriveInput = {
    centreDistance,
    pressureAngle,
    axisShift,
    backlashBefore,
    ...present({ camAngle, standardCentreDistance }),
  }
  const drive = gearDrive(full)
  const fine = (id: string, label: string, one: number): Result =>
    print.result(id, label, one, 'fine')
  const results = [
    fine('gearShortening', 'Crank and cam come closer by', drive.shortening),
    fine('backlashChange', 'Backlash changes by', drive.change),
    fine('backlash', 'Backlash left', drive.backlash),
    fine('shorteningToBind', 'Closer by this, the teeth bind', drive.shorteningToBind),
  ]
  if (leastBacklash !== undefined) {
    const most = mostShiftForBacklash(full, leastBacklash)
    results.push(fine('mostShiftForBacklash', 'Axis shift that leaves the least backlash', most))
  }
  const warm = warmth(input)
  if (warm) results.push(fine('warmBacklash', 'Backlash when warm', warmBacklash(full, warm)))
  return { results, steps: [gearStep(drive, full, print)] }
}

function gearStep(
  drive: ReturnType<typeof gearDrive>,
  { centreDistance, pressureAngle }: GearDriveInput,
  print: Print,
): Step {
  const text = (one: number): string => print.figure(one, 'fine')
  return {
    title: 'Backlash of the timing gears',
    formula: 'Δj = 2 a (inv φw − inv φ), cos φw = a0 cos φ / a; ≈ 2 ΔC tan φ',
    withNumbers: `a from ${print.figure(centreDistance, 'length')} to ${print.figure(drive.centreDistance, 'length')}, φ = ${print.figure(pressureAngle, 'angle')}; by the short form ${text(drive.changeApproximate)}`,
    result: `Δj = ${text(drive.change)}, ${text(drive.backlash)} left`,
    source: geometry('Involute geometry, working pressure angle'),
  }
}

/** Both rises and expansions, when the block's warmth is given. */
function warmth({
  blockMaterial,
  blockRise,
  driveRise,
}: BoreMachiningInputs): TimingWarmth | undefined {
  if (blockRise === undefined && blockMaterial === undefined) return undefined
  if (blockRise === undefined || blockMaterial === undefined) {
    const missing = blockRise === undefined ? 'blockRise' : 'blockMaterial'
    throw new InputError(missing, 'give both material and rise for warm timing')
  }
  return {
    block: { perKelvin: expansionOf(blockMaterial), rise: blockRise },
    drive: { perKelvin: expansionOf('steel'), rise: driveRise ?? blockRise },
  }
}
