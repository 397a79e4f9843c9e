import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { OPERATIONS } from '../../src/api/operations.ts'
import { createApp } from '../../src/app.ts'
import { realDeps } from '../support/app.ts'
import { anyRequest, OPERATION_PATHS } from './any-request.ts'
import { send } from './send.ts'

describe('any request to any endpoint', () => {
  it('is generated for every operation of the description', () => {
    const posts = OPERATIONS.filter(({ method }) => method === 'post').map(({ path }) => path)
    expect(OPERATION_PATHS.map((path) => path.replace(/^\/api/, ''))).toEqual(
      expect.arrayContaining(posts),
    )
  })

  it('is answered, never with a fault of ours', async () => {
    const deps = realDeps()
    const app = createApp(deps)
    const seen = new Set<number>()
    await fc.assert(
      fc.asyncProperty(anyRequest, async (sent) => {
        const status = await send(app, sent)
        seen.add(status)
        expect(status).toBeLessThan(500)
      }),
      { numRuns: 400 },
    )
    expect(deps.logged).toEqual([])
    // It would prove nothing if all were refused at the door.
    for (const status of [200, 400, 404, 422]) expect(seen).toContain(status)
  })
})
