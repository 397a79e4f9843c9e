import { describe, expect, it } from 'vitest'
import { DomainError } from '../../src/mechanics/domain-error.ts'
import { constantGamma, GAMMA_FITS, gammaAt } from '../../src/mechanics/gas-properties.ts'

describe('gammaAt', () => {
  it('follows the published line', () => {
    // Gatowski et al., SAE 841359, as quoted: γ = 1.392 − 8.13e-5 T.
    expect(gammaAt(GAMMA_FITS.linear, 300)).toBeCloseTo(1.36761, 12)
    expect(gammaAt(GAMMA_FITS.linear, 2000)).toBeCloseTo(1.2294, 12)
  })

  it('follows the published parabola', () => {
    // Brunt, Rai & Emtage, SAE 981052, as quoted: γ = 1.338 − 6.0e-5 T + 1.0e-8 T².
    expect(gammaAt(GAMMA_FITS.quadratic, 1000)).toBeCloseTo(1.288, 12)
    expect(gammaAt(GAMMA_FITS.quadratic, 2500)).toBeCloseTo(1.2505, 12)
  })

  it('is within the range of cylinder gases and falls with temperature', () => {
    // Heywood 1988, section 4.7, from memory: unburned about 1.35 to 1.25, burned 1.3 to 1.15.
    for (const fit of [GAMMA_FITS.linear, GAMMA_FITS.quadratic, GAMMA_FITS.air]) {
      let last = 1.41
      for (let t = 300; t <= 3000; t += 100) {
        const gamma = gammaAt(fit, t)
        expect(gamma).toBeLessThanOrEqual(last)
        expect(gamma).toBeGreaterThan(1.13)
        last = gamma
      }
    }
  })

  it('is held above the highest temperature of the fit', () => {
    expect(gammaAt(GAMMA_FITS.linear, 4000)).toBe(gammaAt(GAMMA_FITS.linear, 3000))
  })
})

describe('constantGamma', () => {
  it('does not change with temperature', () => {
    expect(gammaAt(constantGamma(1.4), 300)).toBe(1.4)
    expect(gammaAt(constantGamma(1.4), 3000)).toBe(1.4)
    expect(() => constantGamma(1)).toThrow(DomainError)
  })
})
