import type { LayoutId } from './crank-layouts.ts'

/** In degrees: throw index, bank, firing angle, pin offset. */
type CylinderRow = readonly [number, number, number, number?]

/** One layout in whole degrees. */
export interface LayoutRow {
  /** Whole degrees. */
  readonly throws: readonly number[]
  readonly cylinders: readonly CylinderRow[]
  readonly bankSpread: number
  /** Part of the reciprocating mass: usual, least and most met. */
  readonly reciprocating: readonly [number, number, number]
  readonly splitCase?: boolean
}

const inLine = (firing: readonly number[]): CylinderRow[] =>
  firing.map((angle, index) => [index, 0, angle])

/**
 * Every layout in degrees. The usual reciprocating share is 0.5 for V engines, because two pistons
 * at right angles on one pin shake like one piston's mass turning with the pin; in-line and flat
 * cranks run from 0 to 0.5.
 */
export const LAYOUT_ROWS: Record<LayoutId, LayoutRow> = {
  'inline-3': {
    throws: [0, 240, 120],
    cylinders: inLine([0, 480, 240]),
    bankSpread: 0,
    reciprocating: [0.5, 0, 0.5],
  },
  'inline-4': {
    throws: [0, 180, 180, 0],
    cylinders: inLine([0, 540, 180, 360]),
    bankSpread: 0,
    reciprocating: [0, 0, 0.5],
  },
  'inline-5': {
    throws: [0, 216, 144, 72, 288],
    cylinders: inLine([0, 144, 576, 288, 432]),
    bankSpread: 0,
    reciprocating: [0.25, 0, 0.5],
  },
  'inline-6': {
    throws: [0, 240, 120, 120, 240, 0],
    cylinders: inLine([0, 480, 240, 600, 120, 360]),
    bankSpread: 0,
    reciprocating: [0, 0, 0.5],
  },
  // Each cylinder has its own pin, 60° apart on one throw, for even firing.
  'v6-60': {
    throws: [300, 60, 180],
    cylinders: [
      [0, -30, 0, 30],
      [0, 30, 120, -30],
      [1, -30, 240, 30],
      [1, 30, 360, -30],
      [2, -30, 480, 30],
      [2, 30, 600, -30],
    ],
    bankSpread: 60,
    reciprocating: [0.5, 0.4, 0.5],
  },
  // Pins split by 30° for even firing.
  'v6-90': {
    throws: [60, 300, 180],
    cylinders: [
      [0, 45, 0, -15],
      [0, -45, 600, 15],
      [1, 45, 480, -15],
      [1, -45, 360, 15],
      [2, 45, 240, -15],
      [2, -45, 120, 15],
    ],
    bankSpread: 90,
    reciprocating: [0.5, 0.36, 0.5],
  },
  'v8-cross-plane': {
    throws: [45, 135, 315, 225],
    cylinders: [
      [0, 45, 0],
      [0, -45, 630],
      [1, 45, 270],
      [1, -45, 180],
      [2, 45, 450],
      [2, -45, 360],
      [3, 45, 540],
      [3, -45, 90],
    ],
    bankSpread: 90,
    reciprocating: [0.5, 0.46, 0.54],
  },
  'v8-flat-plane': {
    throws: [315, 135, 135, 315],
    cylinders: [
      [0, -45, 0],
      [0, 45, 450],
      [1, -45, 540],
      [1, 45, 270],
      [2, -45, 180],
      [2, 45, 630],
      [3, -45, 360],
      [3, 45, 90],
    ],
    bankSpread: 90,
    reciprocating: [0.5, 0, 0.5],
  },
  // Pins split by 18° for even firing.
  'v10-90': {
    throws: [36, 252, 180, 108, 324],
    cylinders: [
      [0, 45, 0, 9],
      [0, -45, 648, -9],
      [1, 45, 144, 9],
      [1, -45, 72, -9],
      [2, 45, 576, 9],
      [2, -45, 504, -9],
      [3, 45, 288, 9],
      [3, -45, 216, -9],
      [4, 45, 432, 9],
      [4, -45, 360, -9],
    ],
    bankSpread: 90,
    reciprocating: [0.5, 0.46, 0.54],
  },
  'v12-60': {
    throws: [330, 210, 90, 90, 210, 330],
    cylinders: [
      [0, -30, 0],
      [0, 30, 420],
      [1, -30, 480],
      [1, 30, 180],
      [2, -30, 240],
      [2, 30, 660],
      [3, -30, 600],
      [3, 30, 300],
      [4, -30, 120],
      [4, 30, 540],
      [5, -30, 360],
      [5, 30, 60],
    ],
    bankSpread: 60,
    reciprocating: [0.5, 0, 0.5],
  },
  'flat-4': {
    throws: [0, 180, 180, 0],
    cylinders: [
      [0, 0, 0],
      [1, 180, 360],
      [2, 0, 180],
      [3, 180, 540],
    ],
    bankSpread: 180,
    reciprocating: [0, 0, 0.5],
    splitCase: true,
  },
  'flat-6': {
    throws: [0, 180, 120, 300, 240, 60],
    cylinders: [
      [0, 0, 0],
      [1, 180, 360],
      [2, 0, 240],
      [3, 180, 600],
      [4, 0, 480],
      [5, 180, 120],
    ],
    bankSpread: 180,
    reciprocating: [0, 0, 0.5],
    splitCase: true,
  },
}
