import type { Assessment } from '../../shared/assessment.ts'
import { convert } from '../../shared/print.ts'
import type { RouteId } from '../../shared/route-ids.ts'
import { readThread } from '../../shared/thread.ts'

export type FastenerPattern = 'two-bolt' | 'four-bolt' | 'four-bolt-splayed' | 'cross-bolted'

/** What a section through one main cap shows. Lengths in mm. */
export interface CapShape {
  journalRadius: number
  /** Of the housing, outside the bearing shells. */
  boreRadius: number
  /** Between the two inner fasteners. */
  span: number
  capHeight: number
  registerHeight: number
  fastenerDiameter: number
  pattern: FastenerPattern
  girdle: boolean
  studs: boolean
  capMaterial: string
  blockMaterial: string
  deepSkirt: boolean
}

type Build = Assessment['build']

/** Usual wall of a main bearing shell, mm; drawn only. Common practice, no published source. */
const SHELL_WALL = 2.4
/** Least metal drawn between the bore and the crown of the cap, mm. */
const LEAST_CROWN = 6

/**
 * The section to draw for a route, or for the present hardware.
 *
 * @param build - every fact with its value, said or assumed
 * @param route - null for the hardware as it is now
 */
export function capShape(build: Build, route: RouteId | null): CapShape {
  const journalRadius = millimetres(build, 'mainJournalDiameter', 64) / 2
  const boreRadius = journalRadius + SHELL_WALL
  const present = choice(build, 'capFastening', 'two-bolt')
  return {
    journalRadius,
    boreRadius,
    span: Math.max(millimetres(build, 'capBoltSpan', 98), 2 * boreRadius + 12),
    capHeight: Math.max(millimetres(build, 'capHeight', 50), boreRadius + LEAST_CROWN),
    registerHeight: millimetres(build, 'registerHeight', 0),
    fastenerDiameter: threadDiameter(build),
    pattern: patternOf(present, route),
    girdle: route === 'girdle' || (present === 'girdle' && !replacesCaps(route)),
    studs: studsOf(build, route),
    capMaterial: replacesCaps(route) ? 'steel' : choice(build, 'capMaterial', 'gray-iron'),
    blockMaterial: choice(build, 'blockMaterial', 'gray-iron'),
    deepSkirt: choice(build, 'skirt', 'short') === 'deep',
  }
}

function replacesCaps(route: RouteId | null): boolean {
  return route === 'steel-caps' || route === 'four-bolt-conversion' || route === 'stronger-block'
}

function studsOf(build: Build, route: RouteId | null): boolean {
  const keeps = route === null || route === 'keep-caps-and-bolts' || route === 'lower-the-target'
  return !keeps || choice(build, 'fastenerKind', 'bolt') === 'stud'
}

/** Fasteners as a route has them: a conversion, and a stronger block, bring splayed outer ones. */
function patternOf(present: string, route: RouteId | null): FastenerPattern {
  if (route === 'four-bolt-conversion') return 'four-bolt-splayed'
  if (route === 'stronger-block' && present !== 'cross-bolted') return 'four-bolt-splayed'
  if (present === 'four-bolt' || present === 'four-bolt-splayed') return present
  return present === 'cross-bolted' ? present : 'two-bolt'
}

/** Fasteners that stand in the cap, cross bolts left out. */
export function uprightFasteners(shape: CapShape): number {
  return shape.pattern === 'two-bolt' ? 2 : 4
}

function millimetres(build: Build, key: string, otherwise: number): number {
  const entry = build[key]
  return typeof entry?.value === 'number' ? convert(entry.value, entry.unit, 'mm') : otherwise
}

function choice(build: Build, key: string, otherwise: string): string {
  const value = build[key]?.value
  return typeof value === 'string' ? value : otherwise
}

function threadDiameter(build: Build): number {
  const thread = readThread(choice(build, 'fastenerThread', ''))
  return thread ? thread.diameter * 1000 : 12
}
