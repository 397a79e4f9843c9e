import { requireLimits, requireWithin } from './domain-error.ts'
import { type Circle, type HalfStock, halfStock } from './half-bores.ts'

/** Everything in m; diameters where a bore is named. */
export interface BoreMachiningInput {
  /** Bore of the block's half as it is now; 0.02 to 0.3. */
  blockBore: number
  /** Bore of the cap's half as it is now: a new cap's is often smaller than the block's. */
  capBore: number
  /** Cut off the block's parting faces; 0 when not given. */
  blockFaceCut?: number
  /** Cut off the cap's parting faces; 0 when not given. */
  capFaceCut?: number
  /** How far the cap's half sits to one side (a walked cap); 0 when not given. */
  capSideOffset?: number
  /** Limits of the finished bore: from the service data, plus the oversize if there is one. */
  finished: { low: number; high: number }
  /** Size to aim at within the limits; their middle when not given. */
  aim?: number
  /** Left on the diameter by boring, for the hone; 0 when not given. */
  honingStock?: number
  /** Radial metal that the finished bore must take at the crown of the block; 0 when not given. */
  cleanUp?: number
  /** Axis of the new bore above the old; when not given, the least that leaves `cleanUp`. */
  axisShift?: number
  /** Most that the hone is to take off the diameter. */
  honeLimit: number
  /** Share of the hone's cut that comes out of the block's half, 0 to 1; one half when not given. */
  honeBlockShare?: number
}

export interface BoreMachining {
  /** The two halves before work, in the block frame, and the parting face between them. */
  rough: {
    block: Circle
    cap: Circle
    partingFace: number
    /** Top of the block's half to bottom of the cap's. */
    vertical: number
    /** Widths at the parting face. */
    blockWidth: number
    capWidth: number
    /** Greatest less least of the three. */
    outOfRound: number
  }
  /** What boring does, to `diameter`, with the metal it takes from each half. */
  boring: { diameter: number; axis: number; block: HalfStock; cap: HalfStock }
  /** The bore when boring and honing are done, with the metal both took from each half. */
  finished: { diameter: number; axis: number; block: HalfStock; cap: HalfStock }
  /** Off the diameter, after boring. */
  honingStock: number
  /** How far the crank axis moved up into the block. */
  axisShift: number
  /** Range of axis heights at which both crowns keep `cleanUp`; empty when low > high. */
  axisRange: { low: number; high: number }
  /** What a hone would do without boring first. */
  honeAlone: HoneAlone
  /** Change of the length clamped in the cap (negative: the fasteners reach deeper). */
  gripChange: number
}

/** A hone has no axis of its own: it follows the bore that it finds. */
export interface HoneAlone {
  /** Off the vertical diameter, to come to the size aimed at. */
  stock: number
  /** The part of it within the hone's limit. */
  removable: number
  /** The part beyond: above 0, boring has to come first. */
  beyond: number
  /** Where the axis ends up: not chosen, given by the halves and the share cut from each. */
  axis: number
  /** Sideways error of the cap's half, half of which a hone leaves as a moved axis. */
  sideShift: number
}

/**
 * Line boring and honing of one main bearing housing, from the two half circles
 * that do not match to the round bore and the moved axis.
 *
 * The block's half stays put, centred on the old axis. Cutting the cap's
 * parting faces, or the block's, lets the cap's half circle rise by the same
 * amount; an undersized cap has a smaller half circle about the parting face.
 * A boring bar cuts a circle wherever it is set; a hone follows what is there.
 *
 * @throws {DomainError} if a figure is not in its range, or the halves cannot meet
 *
 * Source: plane geometry of circles; order of work is common practice, no published source.
 */
export function boreMachining(input: BoreMachiningInput): BoreMachining {
  requireInput(input)
  const { capFaceCut = 0, honingStock = 0, cleanUp = 0, finished } = input
  const rough = roughBore(input)
  const diameter = input.aim ?? (finished.low + finished.high) / 2
  const axisRange = {
    low: rough.block.radius + cleanUp - diameter / 2,
    high: rough.cap.y - rough.cap.radius + diameter / 2 - cleanUp,
  }
  // No shop moves the axis away from the block to spare metal there, hence never below 0.
  const axis = input.axisShift ?? Math.max(0, axisRange.low)
  const cut = (size: number) => {
    const bore = { x: 0, y: axis, radius: size / 2 }
    return {
      diameter: size,
      axis,
      block: halfStock(rough.block, 'block', rough.partingFace, bore),
      cap: halfStock(rough.cap, 'cap', rough.partingFace, bore),
    }
  }
  return {
    rough,
    boring: cut(diameter - honingStock),
    finished: cut(diameter),
    honingStock,
    axisShift: axis,
    axisRange,
    honeAlone: honeAlone(input, rough, diameter),
    gripChange: -capFaceCut,
  }
}

/**
 * Limits of a finished bore at standard size or at an oversize for which
 * bearings with a larger outside diameter are sold.
 *
 * @param standard - limits in the service data, m; up to 0.5
 * @param oversize - on the diameter, m; 0 to 0.002
 * @throws {DomainError} if the limits are out of order or the oversize does not fit
 */
export function finishedLimits(
  standard: { low: number; high: number },
  oversize: number,
): { low: number; high: number } {
  requireLimits('standard', standard, 0, 0.5, 'm')
  requireWithin('oversize', oversize, 0, 0.002, 'm')
  return { low: standard.low + oversize, high: standard.high + oversize }
}

/**
 * Least cut off the cap's parting faces that lets a bore of a given size clean
 * up both crowns, with the axis no higher than allowed.
 *
 * From the crowns: cut = R_block + R_cap + 2 · cleanUp − D when the axis is free
 * to rise, and not less than R_cap + cleanUp − D/2 + axis when it is held there.
 *
 * @param finishedBore - D, size to come to, m
 * @param mostAxisShift - highest axis allowed, m; 0 or above
 * @returns the cut, m, 0 when none is needed; infinite when the block's crown cannot clean up
 * @throws {DomainError} if a figure is not in its range
 */
export function leastCapFaceCut(input: {
  blockBore: number
  capBore: number
  finishedBore: number
  cleanUp: number
  mostAxisShift: number
}): number {
  const { blockBore, capBore, finishedBore, cleanUp, mostAxisShift } = input
  requireWithin('blockBore', blockBore, 0.02, 0.3, 'm')
  requireWithin('capBore', capBore, 0.02, 0.3, 'm')
  requireWithin('finishedBore', finishedBore, 0.02, 0.3, 'm')
  requireWithin('cleanUp', cleanUp, 0, 0.005, 'm')
  requireWithin('mostAxisShift', mostAxisShift, 0, 0.005, 'm')
  const axis = Math.max(0, blockBore / 2 + cleanUp - finishedBore / 2)
  if (axis > mostAxisShift) return Number.POSITIVE_INFINITY
  return Math.max(0, capBore / 2 + cleanUp - finishedBore / 2 + axis)
}

function roughBore(input: BoreMachiningInput): BoreMachining['rough'] {
  const { blockFaceCut = 0, capFaceCut = 0, capSideOffset = 0 } = input
  const block = { x: 0, y: 0, radius: input.blockBore / 2 }
  // A half circle lies about its uncut face; the cap follows the block's face up.
  const cap = { x: capSideOffset, y: blockFaceCut + capFaceCut, radius: input.capBore / 2 }
  const vertical = block.radius - (cap.y - cap.radius)
  const blockWidth = 2 * Math.sqrt(block.radius ** 2 - blockFaceCut ** 2)
  const capWidth = 2 * Math.sqrt(cap.radius ** 2 - capFaceCut ** 2)
  const sizes = [vertical, blockWidth, capWidth]
  return {
    block,
    cap,
    partingFace: blockFaceCut,
    vertical,
    blockWidth,
    capWidth,
    outOfRound: Math.max(...sizes) - Math.min(...sizes),
  }
}

function honeAlone(
  input: BoreMachiningInput,
  rough: BoreMachining['rough'],
  diameter: number,
): HoneAlone {
  const stock = diameter - rough.vertical
  const removable = Math.min(Math.max(stock, 0), input.honeLimit)
  const cut = Math.max(stock, 0)
  return {
    stock,
    removable,
    beyond: cut - removable,
    axis: rough.block.radius + (input.honeBlockShare ?? 0.5) * cut - (rough.vertical + cut) / 2,
    sideShift: (input.capSideOffset ?? 0) / 2,
  }
}

function requireInput(input: BoreMachiningInput): void {
  const { blockBore, capBore, finished } = input
  requireWithin('blockBore', blockBore, 0.02, 0.3, 'm')
  requireWithin('capBore', capBore, 0.8 * blockBore, 1.05 * blockBore, 'm')
  requireWithin('blockFaceCut', input.blockFaceCut ?? 0, 0, 0.005, 'm')
  requireWithin('capFaceCut', input.capFaceCut ?? 0, 0, 0.005, 'm')
  requireWithin('capSideOffset', input.capSideOffset ?? 0, -0.002, 0.002, 'm')
  requireLimits('finished', finished, 0.95 * blockBore, 1.1 * blockBore, 'm')
  requireWithin('aim', input.aim ?? finished.low, finished.low, finished.high, 'm')
  requireWithin('honingStock', input.honingStock ?? 0, 0, 0.001, 'm')
  requireWithin('cleanUp', input.cleanUp ?? 0, 0, 0.005, 'm')
  requireWithin('axisShift', input.axisShift ?? 0, -0.005, 0.005, 'm')
  requireWithin('honeLimit', input.honeLimit, 0, 0.001, 'm')
  requireWithin('honeBlockShare', input.honeBlockShare ?? 0.5, 0, 1)
}
