import { describe, expect, it } from 'vitest'
import { app, rulebook } from '../support/app.ts'

const said = (preset: string) => {
  const answers = rulebook.presets.find(({ id }) => id === preset)?.answers ?? {}
  const texts = Object.entries(answers).map(([key, answer]) => [key, String(answer)])
  return new URLSearchParams(texts as [string, string][]).toString()
}
const sheet = async (preset: string) => (await app.request(`/sheet?${said(preset)}`)).text()

describe('the sheet of a call that asks nothing of a shop', () => {
  it('says so first, measures the bores once and speaks of no cutting', async () => {
    const text = await sheet('mild-street')
    expect(text).toContain('This call asks for no parts and no machine work.')
    expect(text.match(/<caption>Housing bores/g)).toHaveLength(1)
    expect(text).toContain('While the engine is apart:')
    expect(text).not.toContain('Before anything is cut')
    expect(text).not.toContain('before metal is cut')
  })

  it('is the whole sheet where there is work', async () => {
    const text = await sheet('twin-turbo')
    expect(text).not.toContain('This call asks for no parts')
    expect(text.match(/<caption>Housing bores/g)).toHaveLength(2)
  })
})
