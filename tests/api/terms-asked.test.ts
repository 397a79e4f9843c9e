import { describe, expect, it } from 'vitest'
import { app, postJson } from '../support/app.ts'

const TERMS = [
  ['register', 'register'],
  ['cap', 'main-cap'],
  ['stud', 'studs-and-bolts'],
  ['line bore', 'line-bore'],
  ['line hone', 'line-bore'],
  ['girdle', 'girdles'],
  ['cross bolt', 'cross-bolts'],
  ['preload', 'preload'],
  ['clearance', 'clearance'],
  ['detonation', 'detonation'],
] as const

async function reply(text: string, asking?: string): Promise<string> {
  const { json } = await postJson('/api/turn', { text, ...(asking ? { asking } : {}) })
  return (json.says as { html: string }).html
}

describe('a word of the trade that is asked about', () => {
  it.each(TERMS)(
    '%s: its entry, with the link to its lesson, and nothing left over',
    async (term, lesson) => {
      for (const text of [`what is a ${term}?`, `what are ${term}s`]) {
        const html = await reply(text, 'registerHeight')
        expect(html).toContain(`href="/learn/${lesson}`)
        expect(html).not.toContain('Not used')
      }
      expect((await app.request(`/learn/${lesson}`)).status).toBe(200)
    },
  )

  it('is still a measure when its measuring is asked about', async () => {
    expect(await reply('how do I measure the register?')).toContain(
      '/learn/measuring#registerHeight',
    )
    expect(await reply('what is register height?')).toContain('/learn/measuring#registerHeight')
  })
})
