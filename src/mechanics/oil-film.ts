import { requireWithin } from './domain-error.ts'

/** Steady oil film of a plain bearing, in pure numbers. */
export interface OilFilm {
  /** ε, distance between the axes over the radial clearance. */
  eccentricity: number
  /** h₀/c, least film over the radial clearance, 1 − ε. */
  leastFilm: number
  /** S = (r/c)² μ N / P */
  sommerfeld: number
  /** Angle from the load to the least film, rad. */
  attitude: number
  /** f r/c: coefficient of friction times radius over clearance. */
  friction: number
  /** Unit load over the greatest pressure in the film. */
  pressureRatio: number
}

// Fine enough for 1 % against published charts; the pressure is symmetric along the width.
const AROUND = 144
const ACROSS = 10

/**
 * Oil film of a bearing by the Reynolds equation, fed where the film is
 * thickest, without tension in the oil (pressure and its slope end together).
 *
 * Finite differences over the unwrapped film, solved by over-relaxation with
 * negative pressures set to zero. The shear of the film is counted round the
 * whole journal.
 *
 * @param eccentricity - ε, 0.02 to 0.97
 * @param widthRatio - l/d, 0.1 to 4
 * @throws {DomainError} if an argument does not fit
 *
 * @see Raimondi & Boyd, "A solution for the finite journal bearing", ASLE Trans. 1 (1958) 159–209
 *   (same equation and boundary conditions; their charts are the check)
 */
export function oilFilm(eccentricity: number, widthRatio: number): OilFilm {
  requireWithin('eccentricity', eccentricity, 0.02, 0.97)
  requireWithin('widthRatio', widthRatio, 0.1, 4)
  const pressure = solvePressure(eccentricity, widthRatio)
  let along = 0
  let across = 0
  let peak = 0
  for (let i = 1; i < AROUND; i++) {
    const angle = (2 * Math.PI * i) / AROUND
    let strip = 0
    for (let j = 0; j < ACROSS; j++) {
      const here = pressure[i * (ACROSS + 1) + j]!
      // Trapezium rule across half the width; the middle line is shared by both halves.
      strip += (j === 0 ? 0.5 : 1) * here
      peak = Math.max(peak, here)
    }
    strip *= (2 * Math.PI) / AROUND / ACROSS
    along -= strip * Math.cos(angle)
    across += strip * Math.sin(angle)
  }
  const load = Math.hypot(along, across)
  const sommerfeld = 1 / (6 * Math.PI * load)
  const attitude = Math.atan2(across, along)
  const shear = (2 * Math.PI) / Math.sqrt(1 - eccentricity ** 2)
  return {
    eccentricity,
    leastFilm: 1 - eccentricity,
    sommerfeld,
    attitude,
    friction: Math.PI * sommerfeld * shear + (eccentricity / 2) * Math.sin(attitude),
    pressureRatio: load / 2 / peak,
  }
}

/**
 * Oil film that carries a given Sommerfeld number.
 *
 * @param sommerfeld - S, within what ε from 0.02 to 0.97 can give at this l/d
 * @param widthRatio - l/d, 0.1 to 4
 * @throws {DomainError} if S is beyond that range
 */
export function oilFilmFor(sommerfeld: number, widthRatio: number): OilFilm {
  let thick = oilFilm(0.02, widthRatio)
  let thin = oilFilm(0.97, widthRatio)
  requireWithin('sommerfeld', sommerfeld, thin.sommerfeld, thick.sommerfeld)
  while (thin.eccentricity - thick.eccentricity > 1e-4) {
    const film = oilFilm((thin.eccentricity + thick.eccentricity) / 2, widthRatio)
    if (film.sommerfeld > sommerfeld) thick = film
    else thin = film
  }
  return thin
}

/** Pressure over 6 μ ω (r/c)², row by row round the film, column 0 at mid-width. */
function solvePressure(eccentricity: number, widthRatio: number): Float64Array {
  const row = ACROSS + 1
  const pressure = new Float64Array((AROUND + 1) * row)
  const step = (2 * Math.PI) / AROUND
  const film = (place: number) => 1 + eccentricity * Math.cos(place * step)
  const sideways = (step * ACROSS) ** 2 / widthRatio ** 2
  const relaxation = 1.85
  for (let sweep = 0; sweep < 4000; sweep++) {
    let change = 0
    let greatest = 0
    for (let i = 1; i < AROUND; i++) {
      const ahead = film(i + 0.5) ** 3
      const behind = film(i - 0.5) ** 3
      const across = sideways * film(i) ** 3
      const source = (film(i + 0.5) - film(i - 0.5)) * step
      for (let j = 0; j < ACROSS; j++) {
        const at = i * row + j
        const inner = pressure[j === 0 ? at + 1 : at - 1]!
        const around = ahead * pressure[at + row]! + behind * pressure[at - row]!
        const flows = around + across * (inner + pressure[at + 1]!)
        const settled = (flows - source) / (ahead + behind + 2 * across)
        const next = Math.max(0, pressure[at]! + relaxation * (settled - pressure[at]!))
        change = Math.max(change, Math.abs(next - pressure[at]!))
        greatest = Math.max(greatest, next)
        pressure[at] = next
      }
    }
    if (change <= 1e-8 * greatest) break
  }
  return pressure
}
