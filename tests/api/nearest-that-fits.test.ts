import { expect, it } from 'vitest'
import { nearestThatFits } from '../../src/api/nearest-that-fits.ts'
import { rulebook } from '../support/app.ts'

const upTo = (most: number, mended = 0.2) => ({
  answers: { registerHeight: { value: 4e-180, unit: 'in' } },
  mended: { registerHeight: { value: mended, unit: 'in' } },
  fits: async () => true,
  mayFit: async ({ registerHeight }: { registerHeight?: unknown }) =>
    (registerHeight as { value: number }).value >= most,
})

it('names a figure next to one so small that no decimals would hold it', async () => {
  // From arithmetic alone: what fits lies between the figure said and the mended one.
  const nearest = await nearestThatFits(rulebook, 'registerHeight', upTo(0, 8e-180))
  expect(nearest).toMatchObject({ unit: 'in' })
  const { value } = nearest as { value: number }
  expect(value).toBeGreaterThan(0)
  expect(value).toBeLessThanOrEqual(8e-180)
})

it('rounds a figure towards what fits, without binary dust', async () => {
  const nearest = await nearestThatFits(rulebook, 'registerHeight', upTo(0.1))
  const { value } = nearest as { value: number }
  expect(value).toBeGreaterThanOrEqual(0.1)
  expect(String(value).length).toBeLessThanOrEqual(6)
})
