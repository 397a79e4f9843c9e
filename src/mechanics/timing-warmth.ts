import { requireWithin } from './domain-error.ts'
import { type GearDriveInput, gearDrive } from './gear-backlash.ts'
import { thermalGrowth } from './thermal-growth.ts'
import { beltLength, type ChainDriveInput, chainDrive, sprocketRadius } from './timing-drive.ts'

/** What warms, above the temperature of measuring: the block between the axes, and the drive. */
export interface TimingWarmth {
  /** Expansion of the block, 1/K, and its rise, K. */
  block: { perKelvin: number; rise: number }
  /** Expansion of chain and sprockets or gears, 1/K, and their rise, K. */
  drive: { perKelvin: number; rise: number }
}

/**
 * Slack of a timing chain when warm. The block carries the axes apart, the
 * sprockets grow, and the chain lengthens: slack is the chain's length less that
 * of its path, each grown. Chain and sprockets of one metal at the block's
 * temperature keep their slack in an iron block; an aluminium block tightens it.
 *
 * @returns slack in the chain's length, m; below 0 it is stretched tight
 * @throws {DomainError} as `chainDrive`, or if a temperature rise does not fit
 * Source: geometry as `chainDrive`, and α L ΔT.
 */
export function warmChainSlack(input: ChainDriveInput, { block, drive }: TimingWarmth): number {
  const cold = chainDrive(input)
  const small = sprocketRadius(input.pitch, input.crankTeeth)
  const large = sprocketRadius(input.pitch, input.camTeeth)
  const path = (centres: number, scale: number) => beltLength(centres, small * scale, large * scale)
  const before = path(cold.centreDistance, 1)
  const centres =
    cold.centreDistance + thermalGrowth(cold.centreDistance, block.perKelvin, block.rise)
  const after = path(centres, 1 + drive.perKelvin * drive.rise)
  const chain = thermalGrowth(before + cold.slack, drive.perKelvin, drive.rise)
  return cold.slack + chain - (after - before)
}

/**
 * Backlash of timing gears when warm: the block carries the centres apart, the
 * gears' own growth closes them by as much as their standard centres grow.
 *
 * @returns backlash along the pitch circle, m; below 0 the teeth bind
 * @throws {DomainError} as `gearDrive`, or if a temperature rise does not fit
 * Source: as `gearDrive`; gears that grow evenly keep their pressure angle, and α L ΔT.
 */
export function warmBacklash(input: GearDriveInput, { block, drive }: TimingWarmth): number {
  requireWithin('camAngle', input.camAngle ?? 0, -Math.PI, Math.PI, 'rad')
  const cold = gearDrive(input)
  const standard = input.standardCentreDistance ?? input.centreDistance
  const grown =
    thermalGrowth(cold.centreDistance, block.perKelvin, block.rise) -
    thermalGrowth(standard, drive.perKelvin, drive.rise)
  // Seen from the gears, only the centres move: by the difference of both growths.
  return gearDrive({
    centreDistance: cold.centreDistance,
    standardCentreDistance: standard,
    pressureAngle: input.pressureAngle,
    axisShift: -grown,
    backlashBefore: Math.max(0, cold.backlash),
  }).backlash
}
