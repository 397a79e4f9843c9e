import { requireWithin } from './domain-error.ts'

/** One cylinder before the crank axis moved, and the move; m, rad. */
export interface CompressionChangeInput {
  bore: number
  stroke: number
  rodLength: number
  /** Swept plus clearance volume over clearance volume, before; 4 to 25. */
  compressionRatio: number
  /** Piston top below the deck at top dead centre, before; negative when it stands proud. */
  deckClearance: number
  /** How far the crank axis moved up, along the bisector of the banks; −0.005 to 0.005. */
  axisShift: number
  /** Angle of the cylinder from that bisector; 0 when not given. */
  bankAngle?: number
  /** Cut off the deck in the same visit; 0 when not given. */
  deckCut?: number
}

export interface CompressionChange {
  /** Rise of the piston at top dead centre from the moved axis. */
  rise: number
  /** Piston top below the deck after the move and any cut. */
  deckClearance: number
  /** Sideways offset of the cylinder from the moved axis. */
  offset: number
  stroke: number
  /** m³ */
  sweptVolume: number
  /** m³ */
  clearanceVolume: number
  compressionRatio: number
}

/**
 * Deck height and compression after the crank axis has moved up into the block.
 *
 * The move splits into a part along the cylinder, which lifts the piston, and a
 * part across, which leaves the cylinder offset from the crank: then top dead
 * centre stands √((l + r)² − e²) above the axis and bottom √((l − r)² − e²).
 *
 * @throws {DomainError} if a figure is not in its range or no clearance volume would be left
 * Source: exact offset slider-crank geometry; compression ratio by its definition.
 */
export function compressionChange(input: CompressionChangeInput): CompressionChange {
  requireInput(input)
  const { bore, rodLength, axisShift, bankAngle = 0, deckCut = 0 } = input
  const crank = input.stroke / 2
  const area = (Math.PI / 4) * bore * bore
  const offset = Math.abs(axisShift * Math.sin(bankAngle))
  const top = Math.sqrt((rodLength + crank) ** 2 - offset ** 2)
  const bottom = Math.sqrt((rodLength - crank) ** 2 - offset ** 2)
  const rise = axisShift * Math.cos(bankAngle) + top - (rodLength + crank)
  const before = (area * input.stroke) / (input.compressionRatio - 1)
  const clearanceVolume = before - area * (rise + deckCut)
  requireWithin('clearance volume left', clearanceVolume, before / 100, 100 * before, 'm³')
  const sweptVolume = area * (top - bottom)
  return {
    rise,
    deckClearance: input.deckClearance - rise - deckCut,
    offset,
    stroke: top - bottom,
    sweptVolume,
    clearanceVolume,
    compressionRatio: 1 + sweptVolume / clearanceVolume,
  }
}

function requireInput(input: CompressionChangeInput): void {
  requireWithin('bore', input.bore, 0.02, 0.3, 'm')
  requireWithin('stroke', input.stroke, 0.02, 0.4, 'm')
  requireWithin('rodLength', input.rodLength, 0.6 * input.stroke, 1, 'm')
  requireWithin('compressionRatio', input.compressionRatio, 4, 25)
  requireWithin('deckClearance', input.deckClearance, -0.01, 0.05, 'm')
  requireWithin('axisShift', input.axisShift, -0.005, 0.005, 'm')
  requireWithin('bankAngle', input.bankAngle ?? 0, -Math.PI / 2, Math.PI / 2, 'rad')
  requireWithin('deckCut', input.deckCut ?? 0, 0, 0.005, 'm')
}
