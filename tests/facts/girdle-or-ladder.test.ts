import { describe, expect, it } from 'vitest'
import { callFor } from '../support/rulebook.ts'

// A ladder is cast in one piece with an aluminium block's lower half; a girdle that is added to an
// iron block lies over its own iron caps (common practice, no published source).
describe('the caps under a girdle or ladder that nobody described', () => {
  it.each([
    ['gray-iron', 'gray-iron'],
    ['compacted-iron', 'gray-iron'],
    ['aluminium', 'aluminium'],
    [undefined, 'gray-iron'],
  ])('in a block of %s are taken as %s', async (blockMaterial, caps) => {
    const changes = { capFastening: 'girdle', capMaterial: undefined, blockMaterial }
    const { build } = await callFor(changes)
    expect(build.capMaterial).toMatchObject({ state: 'assumed', value: caps })
  })

  it('are what was said, whatever the block', async () => {
    const { build } = await callFor({ capFastening: 'girdle', capMaterial: 'ductile-iron' })
    expect(build.capMaterial).toMatchObject({ state: 'said', value: 'ductile-iron' })
  })
})
