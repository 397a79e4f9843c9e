import { type GearDriveInput, gearDrive } from '../mechanics/gear-backlash.ts'
import { expansionOf } from '../mechanics/thermal-growth.ts'
import { type ChainDriveInput, chainDrive } from '../mechanics/timing-drive.ts'
import { type TimingWarmth, warmBacklash, warmChainSlack } from '../mechanics/timing-warmth.ts'
import { say } from '../rulebook/places.ts'
import type { Shift } from './axis-shift.ts'
import { type Judged, judge } from './judge.ts'
import {
  attempt,
  type MeasureCase,
  showDegrees,
  showLength,
  type Worked,
  worked,
} from './measure-case.ts'

/** The camshaft drive after the axis moved: what is judged, and what is only worked out. */
export interface DriveCheck {
  readonly judged: readonly Judged[]
  readonly worked: readonly Worked[]
}

const RADIANS = Math.PI / 180

/** What the moved axis does to chain or gears; undefined until the drive is described. */
export function timingCheck(measuring: MeasureCase, front: Shift): DriveCheck | undefined {
  const { parts } = measuring.rules.checkIn.beyond
  const drive = measuring.readings.text('drive')
  if (drive === 'chain') {
    return attempt(measuring, parts.chain, () => chainCheck(measuring, front))
  }
  return drive === 'gears'
    ? attempt(measuring, parts.gears, () => gearCheck(measuring, front))
    : undefined
}

/** Block and drive both rise by what the rulebook says; the drive is steel. */
function warmthOf({ engine, rules }: MeasureCase): TimingWarmth {
  const rise = rules.warmth.blockRise
  return {
    block: { perKelvin: expansionOf(engine.block), rise },
    drive: { perKelvin: expansionOf('steel'), rise },
  }
}

/** The chain drive as measured, with its axis moved by so much, m; undefined until it is described. */
function chainInput({
  readings,
}: MeasureCase): ((axisShift: number) => ChainDriveInput) | undefined {
  const centreDistance = readings.length('driveCentres')
  const pitch = readings.length('chainPitch')
  const crankTeeth = readings.number('crankTeeth')
  const camTeeth = readings.number('camTeeth')
  if (!centreDistance || !pitch || !crankTeeth || !camTeeth) return undefined
  return (axisShift) => ({
    centreDistance,
    pitch,
    crankTeeth,
    camTeeth,
    axisShift,
    camAngle: (readings.number('camAngle') ?? 0) * RADIANS,
    slackBefore: readings.length('chainSlack') ?? 0,
    setShortening: readings.length('setShortening') ?? 0,
  })
}

function chainCheck(measuring: MeasureCase, { shift, uncertainty }: Shift): DriveCheck | undefined {
  const input = chainInput(measuring)
  if (!input) return undefined
  const now = chainDrive(input(shift))
  const show = showLength(measuring)
  const farther = chainDrive(input(shift + uncertainty)).sag
  const warm = warmChainSlack(input(shift), warmthOf(measuring))
  const { tight } = measuring.rules.checkIn.values
  const slackText = (slack: number) =>
    slack < 0 ? say(tight, { slack: show(-slack) }) : show(slack)
  return {
    judged: [
      judge(measuring, 'chain-throw', {
        value: now.sag,
        uncertainty: Math.abs(farther - now.sag),
        show,
      }),
    ],
    worked: [
      worked(measuring, 'shortening', show(now.shortening)),
      worked(measuring, 'chainFreed', show(now.slackFreed)),
      worked(measuring, 'chainSlack', `${slackText(now.slack)}, ${slackText(warm)}`),
      worked(measuring, 'camLate', showDegrees(2 * now.camRetard)),
    ],
  }
}

function gearCheck(measuring: MeasureCase, { shift, uncertainty }: Shift): DriveCheck | undefined {
  const { readings } = measuring
  const centreDistance = readings.length('driveCentres')
  const backlashBefore = readings.length('gearBacklash')
  const pressureAngle = readings.number('pressureAngle')
  if (!centreDistance || backlashBefore === undefined || !pressureAngle) return undefined
  const input = (axisShift: number): GearDriveInput => ({
    centreDistance,
    backlashBefore,
    pressureAngle: pressureAngle * RADIANS,
    camAngle: (readings.number('camAngle') ?? 0) * RADIANS,
    axisShift,
  })
  const now = gearDrive(input(shift))
  const farther = gearDrive(input(shift + uncertainty)).backlash
  const show = showLength(measuring)
  return {
    judged: [
      judge(measuring, 'backlash', {
        value: now.backlash,
        uncertainty: Math.abs(farther - now.backlash),
        show,
      }),
    ],
    worked: [
      worked(measuring, 'shortening', show(now.shortening)),
      worked(measuring, 'backlashChange', show(now.change)),
      worked(measuring, 'backlashWarm', show(warmBacklash(input(shift), warmthOf(measuring)))),
      worked(measuring, 'shorteningToBind', show(now.shorteningToBind)),
    ],
  }
}
