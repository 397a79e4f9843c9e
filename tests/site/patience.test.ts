import { readFileSync } from 'node:fs'
import { createServer } from 'node:http'
import { describe, expect, it } from 'vitest'
import { PATIENCE } from '../../src/patience.ts'

describe('how long a client may take', () => {
  const { connectionsCheckingInterval, ...times } = PATIENCE

  it('is what the server takes, and is looked at many times before it is over', () => {
    const server = createServer(PATIENCE)
    for (const [name, time] of Object.entries(times)) {
      expect([name, server[name as keyof typeof times]]).toEqual([name, time])
    }
    // Node's own interval is longer than any of these times.
    expect(connectionsCheckingInterval).toBeLessThanOrEqual(Math.min(...Object.values(times)) / 5)
  })

  it('is what README says', () => {
    const page = readFileSync(new URL('../../README.md', import.meta.url), 'utf8')
    const { headersTimeout, requestTimeout } = times
    expect(page).toContain(
      `more than ${headersTimeout / 1000} seconds for its headers or ${requestTimeout / 1000} for a whole request is let go within a second more`,
    )
  })
})
