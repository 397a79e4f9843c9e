import { DomainError, requireLimits, requireWithin } from './domain-error.ts'
import { expansionOf, type GrowthMaterial, thermalGrowth } from './thermal-growth.ts'

/** A bearing set and its journal, measured at one temperature; m, diameters where not said. */
export interface ClearanceInput {
  /** Finished housing bore, caps torqued: up and down, and side to side at the parting face. */
  housing: { vertical: number; horizontal: number }
  /** Wall of one shell: at its middle, and near its parting edges (thinner when eccentric). */
  shell: { crown: number; parting: number }
  journal: number
  /** How much the pressed-in shells widen the housing; 0 when not given. */
  crushGrowth?: number
}

/** Materials and temperature rises above that of measuring, K. */
export interface WarmRun {
  block: GrowthMaterial
  cap: GrowthMaterial
  /** Steel when not given. */
  journal?: GrowthMaterial
  blockRise: number
  /** As the block when not given. */
  shellRise?: number
  journalRise: number
}

export interface Clearance {
  vertical: number
  horizontal: number
  /** Horizontal less vertical: what the shells' eccentricity and an out-of-round bore make. */
  eccentricity: number
  /** Vertical clearance for each unit of journal diameter. */
  perDiameter: number
}

/**
 * Running clearance on the diameter: housing − two walls − journal, vertical
 * and horizontal.
 *
 * @returns clearances, m; negative is an interference
 * @throws {DomainError} if a measure is not in its range
 * Source: definition; the vertical is the one that counts (common practice).
 */
export function clearance(input: ClearanceInput): Clearance {
  requireMeasures(input)
  const { housing, shell, journal, crushGrowth = 0 } = input
  const vertical = housing.vertical + crushGrowth - 2 * shell.crown - journal
  const horizontal = housing.horizontal + crushGrowth - 2 * shell.parting - journal
  return describe(vertical, horizontal, journal)
}

/**
 * The same clearance warm: every part grown by α L ΔT. Half of the vertical
 * bore lies in the block and half in the cap, so a bore in two materials grows
 * by the mean of both; the same is taken across, where the register ties them.
 * The shell, pressed into its seat, takes the housing's size; its wall grows as
 * steel. Pressure in the film and stiffness of block and cap are left out.
 *
 * @throws {DomainError} if a measure or a temperature rise (−100 to 300 K) does not fit
 * @see Callister, Materials Science and Engineering, Table B.6, for the coefficients
 */
export function warmClearance(input: ClearanceInput, run: WarmRun): Clearance {
  const cold = clearance(input)
  const housingPerKelvin = (expansionOf(run.block) + expansionOf(run.cap)) / 2
  const steel = expansionOf('steel')
  const shellRise = run.shellRise ?? run.blockRise
  const journal = thermalGrowth(input.journal, expansionOf(run.journal ?? 'steel'), run.journalRise)
  const change = (bore: number, wall: number) =>
    thermalGrowth(bore, housingPerKelvin, run.blockRise) -
    2 * thermalGrowth(wall, steel, shellRise) -
    journal
  return describe(
    cold.vertical + change(input.housing.vertical, input.shell.crown),
    cold.horizontal + change(input.housing.horizontal, input.shell.parting),
    input.journal + journal,
  )
}

/**
 * Clearance aimed at, from a rule of so much for each unit of journal diameter.
 *
 * @param journal - diameter, m; 0.02 to 0.2
 * @param perDiameter - low and high of the rule, a pure number (0.001 = 0.001 in per in)
 * @throws {DomainError} if an argument does not fit
 * Source: common practice, 0.00075 to 0.0010 per unit of diameter; the rule is the caller's.
 */
export function targetClearance(
  journal: number,
  perDiameter: { low: number; high: number },
): { low: number; high: number } {
  requireWithin('journal', journal, 0.02, 0.2, 'm')
  requireLimits('perDiameter', perDiameter, 0, 0.01)
  return { low: journal * perDiameter.low, high: journal * perDiameter.high }
}

/**
 * What would bring the vertical clearance to a wanted one: a shell wall, or a
 * journal, or a housing bore, each with the other two as they are.
 *
 * @param wanted - vertical clearance on the diameter, m; 0 to 0.001
 * @returns crown wall of each shell, journal diameter, vertical housing bore; m
 * @throws {DomainError} if a measure is not in its range
 */
export function partsForClearance(
  input: ClearanceInput,
  wanted: number,
): { shellCrown: number; journal: number; housing: number } {
  requireWithin('wanted', wanted, 0, 0.001, 'm')
  const excess = clearance(input).vertical - wanted
  return {
    shellCrown: input.shell.crown + excess / 2,
    journal: input.journal + excess,
    housing: input.housing.vertical - excess,
  }
}

function describe(vertical: number, horizontal: number, journal: number): Clearance {
  return {
    vertical,
    horizontal,
    eccentricity: horizontal - vertical,
    perDiameter: vertical / journal,
  }
}

function requireMeasures({ housing, shell, journal, crushGrowth = 0 }: ClearanceInput): void {
  requireWithin('housing.vertical', housing.vertical, 0.02, 0.3, 'm')
  requireWithin('housing.horizontal', housing.horizontal, 0.02, 0.3, 'm')
  requireWithin('shell.crown', shell.crown, 0, 0.02, 'm')
  requireWithin('shell.parting', shell.parting, 0, 0.02, 'm')
  requireWithin('journal', journal, 0.02, 0.2, 'm')
  requireWithin('crushGrowth', crushGrowth, 0, 0.0005, 'm')
  if (!(2 * shell.crown < housing.vertical)) {
    throw new DomainError('shell.crown', shell.crown, 'less than half of the housing bore')
  }
}
