import { requireWithin } from './domain-error.ts'

/** What the knock rule looks at. */
export interface KnockInput {
  /** Mean of research and motor octane number, 60 to 130. */
  readonly knockNumber: number
  /** Volume ratio, 2 to 30. */
  readonly compressionRatio: number
  /** Charge in the cylinder before compression: Pa absolute, K. */
  readonly startPressure: number
  readonly startTemperature: number
  /** rad/s */
  readonly speed: number
}

/** Retard from best-torque phasing. */
export interface KnockLimit {
  /** ln(reaction in the end gas / reaction at the border of knock); above 0 it would knock. */
  readonly severity: number
  /** Later burn than best torque, rad, 0 or more. */
  readonly retard: number
  readonly limited: boolean
}

/** Douaud & Eyzat: τ = 17.68 ms (ON/100)^3.402 p^−1.7 exp(3800/T), p in atm, T in K. */
const OCTANE_EXPONENT = 3.402
const PRESSURE_EXPONENT = 1.7
const ACTIVATION = 3800
/** Polytropic exponent of the unburned charge. */
const POLYTROPIC = 1.32
/** The end gas at its hottest / the charge at the end of compression: 3^0.25 for p rising 3-fold. */
const END_GAS = 1.3

/** Border of knock: 92 octane, 10.5:1, 0.1 MPa and 350 K at the start, 3000 r/min, best torque. */
const BORDER = {
  knockNumber: 92,
  ratio: 10.5,
  pressure: 1e5,
  temperature: 350,
  speed: 100 * Math.PI,
}

/** Retard for each unit of severity at 10:1; falls as 1/√(r − 1), see {@link knockLimit}. */
const RETARD_PER_SEVERITY = (3 * Math.PI) / 180
const REFERENCE_RATIO = 10
/** The burn is never set later than this; beyond it 1/√(r − 1) would win over compression. */
const GREATEST_RETARD = (11 * Math.PI) / 180

/**
 * Knock-limited phasing: a stated, monotone rule.
 *
 * The severity compares Douaud & Eyzat's reaction rate in the end gas, over the time the burn
 * takes (speed^(−2/3)), with that of a border engine. More compression, pressure or temperature
 * never lowers it; more octane never raises it. Each unit asks for a burn 3° · √(9/(r − 1))
 * later, to 11° at most: a degree lowers the peak more where the chamber is small, so a small
 * chamber needs fewer of them.
 *
 * The retard is on purpose gentler than a careful tuner's, for two reasons: a tune that retards
 * less loads the caps more, so the estimate errs to the safe side; and it keeps the peak pressure
 * from falling as boost or compression rises, which no builder should count on.
 *
 * @throws {DomainError} if an input does not fit its range
 * @see Douaud & Eyzat, SAE 780080 (1978), constants as given by Heywood 1988, section 9.6, from
 *   memory. Border and degrees per unit: no published source, chosen as said above.
 */
export function knockLimit(input: KnockInput): KnockLimit {
  requireWithin('knockNumber', input.knockNumber, 60, 130)
  requireWithin('compressionRatio', input.compressionRatio, 2, 30)
  requireWithin('startPressure', input.startPressure, 1e3, 3e6, 'Pa')
  requireWithin('startTemperature', input.startTemperature, 200, 1000, 'K')
  requireWithin('speed', input.speed, 10, 2000, 'rad/s')
  const ratio = input.compressionRatio / BORDER.ratio
  const pressure = Math.log(input.startPressure / BORDER.pressure) + POLYTROPIC * Math.log(ratio)
  const severity =
    PRESSURE_EXPONENT * pressure +
    ACTIVATION / endGas(BORDER.temperature, BORDER.ratio) -
    ACTIVATION / endGas(input.startTemperature, input.compressionRatio) -
    OCTANE_EXPONENT * Math.log(input.knockNumber / BORDER.knockNumber) -
    (2 / 3) * Math.log(input.speed / BORDER.speed)
  const chamber = Math.sqrt((REFERENCE_RATIO - 1) / (input.compressionRatio - 1))
  const asked = RETARD_PER_SEVERITY * chamber * severity
  const retard = Math.min(GREATEST_RETARD, Math.max(0, asked))
  return { severity, retard, limited: retard > 0 }
}

function endGas(startTemperature: number, ratio: number): number {
  return END_GAS * startTemperature * ratio ** (POLYTROPIC - 1)
}
