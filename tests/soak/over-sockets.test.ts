import { expect, it } from 'vitest'
import { soakOverSockets } from './over-sockets.ts'

it('the real server answers any client over sockets, and keeps nothing of it', async () => {
  const lines: string[] = []
  const isWell = await soakOverSockets(240, (line) => lines.push(line))
  expect([isWell, lines.join('\n')]).toEqual([true, expect.stringMatching(/200: \d+.*400: \d+/)])
})
