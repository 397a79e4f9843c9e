import { describe, expect, it } from 'vitest'
import { oilFilm, oilFilmFor } from '../../src/mechanics/oil-film.ts'

describe('oilFilm', () => {
  it('nears the closed form of the short bearing as the width shrinks', () => {
    // Ocvirk: S (l/d)² = (1 − ε²)² / (π ε √(π²(1 − ε²) + 16 ε²)); tan φ = π √(1 − ε²) / 4ε.
    for (const eccentricity of [0.2, 0.5, 0.7]) {
      const rest = 1 - eccentricity ** 2
      const root = Math.sqrt(Math.PI ** 2 * rest + 16 * eccentricity ** 2)
      const short = rest ** 2 / (Math.PI * eccentricity * root)
      const film = oilFilm(eccentricity, 0.1)
      // The theory drops terms of order (l/d)² times the film's curvature; and the grid is coarse.
      expect(Math.abs((film.sommerfeld * 0.01) / short - 1)).toBeLessThan(0.04)
      const attitude = Math.atan((Math.PI * Math.sqrt(rest)) / (4 * eccentricity))
      expect(Math.abs(film.attitude - attitude)).toBeLessThan(0.02)
    }
  })

  it('nears Petroff’s friction as the journal comes to the middle', () => {
    const film = oilFilm(0.02, 1)
    expect(film.friction / (2 * Math.PI ** 2 * film.sommerfeld)).toBeCloseTo(1, 3)
    expect((film.attitude * 180) / Math.PI).toBeGreaterThan(80)
  })

  it('carries more on a thinner film, and on a wider bearing', () => {
    const thin = [0.1, 0.3, 0.5, 0.7, 0.9].map((e) => oilFilm(e, 0.4).sommerfeld)
    expect(thin.toSorted((one, other) => other - one)).toEqual(thin)
    const wide = [0.25, 0.5, 1, 2].map((ratio) => oilFilm(0.6, ratio).sommerfeld)
    expect(wide.toSorted((one, other) => other - one)).toEqual(wide)
  })

  it('finds the film back from its Sommerfeld number', () => {
    const film = oilFilm(0.65, 0.35)
    expect(Math.abs(oilFilmFor(film.sommerfeld, 0.35).eccentricity - 0.65)).toBeLessThan(2e-4)
  })

  it('names what does not fit', () => {
    expect(() => oilFilm(1, 1)).toThrow(/eccentricity/)
    expect(() => oilFilm(0.5, 10)).toThrow(/widthRatio/)
    expect(() => oilFilmFor(1e6, 1)).toThrow(/sommerfeld/)
  })
})
