import { FUELS, type FuelId } from '../mechanics/fuels.ts'
import { BEST_TORQUE_HALF_BURNT } from '../mechanics/phasing.ts'
import { burnDuration, halfBurntShare, WIEBE_COMPLETENESS, WIEBE_FORM } from '../mechanics/wiebe.ts'
import { buildInputs, figureInput } from './from-build.ts'
import type { BuildSource } from './worksheet.ts'

const DEGREE = Math.PI / 180

/** The cycle behind a case, at the full-load speed of its highest pressure. */
export function gasFromBuild({ assessment, loads }: BuildSource): Record<string, unknown> {
  const index = hardest(loads)
  const speed = loads.speeds[index] ?? 0
  return {
    ...buildInputs(assessment, { bore: 'bore', stroke: 'stroke', rodLength: 'rodLength' }),
    cylinders: loads.layout.cylinders.length,
    speed: figureInput((speed * 30) / Math.PI, 'rpm'),
    ...chargeOf({ assessment, loads }, index),
    // The guide's own wall and valve, so that the worksheet repeats its cycle.
    wallHeat: 'woschni',
    wallTemperature: figureInput(450, 'K'),
    exhaustOpens: figureInput(130, '°'),
  }
}

/** Which full-load speed has the highest pressure. */
export function hardest({ fullLoads }: BuildSource['loads']): number {
  const peaks = fullLoads.map(({ cycle }) => cycle.peakPressure)
  return peaks.indexOf(Math.max(...peaks))
}

/** Charge and burn of a case at one of its full-load speeds. */
export function chargeOf(
  { assessment, loads }: Pick<BuildSource, 'assessment' | 'loads'>,
  index: number,
): Record<string, unknown> {
  const load = loads.fullLoads[index]
  const speed = loads.speeds[index]
  if (!load || speed === undefined) return {}
  const { charge, sparkRetard, manifoldPressure } = load
  const fuel = FUELS[String(assessment.build.fuel?.value) as FuelId]
  const duration = burnDuration(speed, fuel, charge.lambda)
  const half = halfBurntShare(WIEBE_COMPLETENESS, WIEBE_FORM) * duration
  const start = BEST_TORQUE_HALF_BURNT + sparkRetard - half
  return {
    ...buildInputs(assessment, { compressionRatio: 'compressionRatio' }),
    startPressure: figureInput(charge.startPressure / 1e5, 'bar'),
    startTemperature: figureInput(charge.startTemperature - 273.15, '°C'),
    addedHeat: figureInput(charge.addedHeat, 'J'),
    burnStart: figureInput(start / DEGREE, '°'),
    burnDuration: figureInput(duration / DEGREE, '°'),
    intakePressure: figureInput(manifoldPressure / 1e5, 'bar'),
    exhaustPressure: figureInput(charge.exhaustPressure / 1e5, 'bar'),
  }
}
