import { requireWithin } from './domain-error.ts'

/**
 * Unit load of a plain bearing: force over the projected area, F / (l d). The
 * same definition serves a mean and a peak force; published limits differ
 * several times between the two, so keep them apart.
 *
 * @param force - on the bearing, N; 0 to 1e7
 * @param journal - d, diameter, m; 0.01 to 0.3
 * @param width - l, of the shell, m; 0.005 to 0.3
 * @param lost - width lost to an oil groove and chamfers, m; 0 up to l
 * @returns Pa
 * @throws {DomainError} if an argument does not fit
 * @see Shigley's Mechanical Engineering Design, 9th ed., section 12–8
 */
export function unitLoad(force: number, journal: number, width: number, lost = 0): number {
  requireWithin('force', force, 0, 1e7, 'N')
  requireWithin('journal', journal, 0.01, 0.3, 'm')
  requireWithin('width', width, 0.005, 0.3, 'm')
  requireWithin('lost', lost, 0, 0.9 * width, 'm')
  return force / ((width - lost) * journal)
}
