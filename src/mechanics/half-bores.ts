/** A circle in the block frame: x to the side, y up from the old crank axis; m. */
export interface Circle {
  x: number
  y: number
  radius: number
}

/** Radial metal between a half bore as it is and a round bore to be cut; m, negative = no metal. */
export interface HalfStock {
  /** At the middle of the half: top of the block's, bottom of the cap's. */
  crown: number
  /** At its two edges on the parting face: left (−x) and right (+x). */
  edges: [number, number]
  /** Least anywhere on the half: below 0, that part will not clean up. */
  least: number
  /** Most anywhere on the half. */
  most: number
  /** Share of the half's arc that the new bore reaches, 0 to 1; touching counts. */
  reached: number
}

/**
 * Radial stock of one half of a split bore against a new round bore, exact for
 * circles that share no centre.
 *
 * @param half - circle of the existing half
 * @param side - which half: the block's lies above the parting face, the cap's below
 * @param face - height of the parting face, m; within the half's circle
 * @param bore - the round bore to be cut
 */
export function halfStock(
  half: Circle,
  side: 'block' | 'cap',
  face: number,
  bore: Circle,
): HalfStock {
  const up = side === 'block' ? 1 : -1
  const halfWidth = Math.sqrt(half.radius ** 2 - (face - half.y) ** 2)
  const stockAt = (x: number, y: number) => bore.radius - Math.hypot(x - bore.x, y - bore.y)
  const edges: [number, number] = [
    stockAt(half.x - halfWidth, face),
    stockAt(half.x + halfWidth, face),
  ]
  const crown = stockAt(half.x, half.y + up * half.radius)
  // The farthest and nearest points of a circle lie on the line through both centres.
  const apart = Math.hypot(half.x - bore.x, half.y - bore.y)
  const extremes = [...edges]
  for (const sign of apart > 0 ? [1, -1] : []) {
    const y = half.y + (sign * half.radius * (half.y - bore.y)) / apart
    if (up * (y - face) < 0) continue
    extremes.push(stockAt(half.x + (sign * half.radius * (half.x - bore.x)) / apart, y))
  }
  return {
    crown,
    edges,
    least: Math.min(crown, ...extremes),
    most: Math.max(crown, ...extremes),
    reached: reachedShare(half, up, face, bore),
  }
}

/**
 * Share of the half's arc inside the new bore. Along the existing circle the
 * squared distance to the new centre is R² + a² + 2 R a cos ψ, ψ measured from
 * the line of centres, so the part inside is one arc about its far side.
 */
function reachedShare(half: Circle, up: number, face: number, bore: Circle): number {
  const dx = half.x - bore.x
  const dy = half.y - bore.y
  const apart = Math.hypot(dx, dy)
  const arcHalf = Math.acos((up * (face - half.y)) / half.radius)
  // A nanometre more, so that circles meant to be the same touch in spite of rounding.
  const slack = (bore.radius + 1e-9) ** 2 - half.radius ** 2 - apart ** 2
  const cosine = apart > 0 ? slack / (2 * half.radius * apart) : slack >= 0 ? 1 : -1
  if (cosine >= 1) return 1
  if (cosine <= -1) return 0
  // Inside where cos ψ ≤ cosine: an arc of half-width π − acos(cosine) opposite the line of centres.
  const insideHalf = Math.PI - Math.acos(cosine)
  const insideMiddle = Math.atan2(-dx, -dy * up)
  return overlap(insideMiddle, insideHalf, arcHalf) / (2 * arcHalf)
}

/** Length shared by the arcs 0 ± half and middle ± width, angles from the crown, on a circle. */
function overlap(middle: number, width: number, half: number): number {
  let shared = 0
  for (const turn of [-2 * Math.PI, 0, 2 * Math.PI]) {
    const from = Math.max(-half, middle - width + turn)
    const to = Math.min(half, middle + width + turn)
    shared += Math.max(0, to - from)
  }
  return Math.min(shared, 2 * half)
}
