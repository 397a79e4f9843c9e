/** What falls on the cap: newtons, both zero or above. */
export interface CapShare {
  /** Pull away from the parting face, N. */
  pull: number
  /** Push along the parting face, N, either way. */
  side: number
}

/**
 * Share of a main bearing's load that falls on the cap.
 *
 * The journal presses on the half circle about the load's direction with p = p₀ cos ε, ε the angle
 * from that direction, |ε| ≤ 90°; friction is left out, so the pressure acts square to the wall.
 * The resultant of the whole half circle is F = p₀ r w π/2 (radius r, width w). Only the part below
 * the parting face, which is the plane y = 0, pushes on the cap.
 *
 * With δ the angle between load and straight down (0 down, π/2 along the face, π up) and ψ the
 * direction of a strip of wall from straight down, the strip carries (2F/π) cos(ψ − δ) dψ. The cap
 * holds |ψ| ≤ π/2 and the pressed half circle is |ψ − δ| ≤ π/2, so ψ runs from δ − π/2 to π/2:
 *
 *   pull = (2F/π) ∫ cos(ψ − δ) cos ψ dψ = (F/π) [(π − δ) cos δ + sin δ]
 *   side = (2F/π) ∫ cos(ψ − δ) sin ψ dψ = (F/π) (π − δ) sin δ
 *
 * With F cos δ = −y and F sin δ = |x| these become
 *
 *   pull = −y (1 − δ/π) + |x|/π,   side = |x| (1 − δ/π),   δ = atan2(|x|, −y).
 *
 * Straight down: pull F, side 0. Along the face: pull F/π, side F/2. Straight up: nothing.
 * Both are homogeneous of degree one in the load. The pull is convex in (x, y), since with
 * pull = F h(δ) the sum h + h″ = 2 sin δ / π is never negative; hence pull(A + B) ≤ pull(A) +
 * pull(B), and along any straight line in (x, y) the greatest pull is at an end. The side push is
 * not convex while the load points down (h + h″ = −2 cos δ / π).
 *
 * @param x - load of the crank on the bearing along the parting face, N, any finite number
 * @param y - load square to the parting face, N, positive away from the cap
 * @returns pull and side push on the cap, N; zeros for no load
 *
 * @see Cosine spread of contact pressure over a half circle: the usual assumption for a pin in a
 *   close-fitting hole; the closed form is derived here and checked against quadrature in the tests
 *
 * @example
 * capShare(0, -1000) // { pull: 1000, side: 0 }
 * capShare(1000, 0)  // { pull: 318.3, side: 500 }
 */
export function capShare(x: number, y: number): CapShare {
  const across = Math.abs(x)
  const part = pressedPart(across, y)
  return { pull: pullOf(across, y, part), side: across * part }
}

/**
 * 1 − δ/π: the part of the pressed half circle that lies on the cap, 0 to 1.
 *
 * @param across - |x|, N, zero or above
 * @param y - N
 */
export function pressedPart(across: number, y: number): number {
  // atan2(across, y) is the angle from straight up, π − δ; adding 0 makes −0 into 0, for which
  // atan2 would answer π instead of 0 where there is no load.
  return Math.atan2(across, y + 0) / Math.PI
}

/**
 * Pull on the cap, N, from a part already found; for loops that must not allocate.
 * The rounding of a load that points almost straight up is kept from going below zero.
 */
export function pullOf(across: number, y: number, part: number): number {
  return Math.max(across / Math.PI - y * part, 0)
}
