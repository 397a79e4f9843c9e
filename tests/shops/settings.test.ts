import { describe, expect, it } from 'vitest'
import { readSettings } from '../../src/settings.ts'

describe('settings for shops', () => {
  it('look for profiles beside the content, or in a folder of their own', () => {
    expect(readSettings({}, '/guide').shopsFolder).toBe('/guide/content/shops')
    expect(readSettings({ CONTENT_DIR: '/words' }, '/guide').shopsFolder).toBe('/words/shops')
    expect(readSettings({ SHOPS_DIR: '/shops' }, '/guide').shopsFolder).toBe('/shops')
  })

  it('take whole origins and nothing else', () => {
    const { origin, demoOrigin } = readSettings(
      { ORIGIN: 'https://guide.example', DEMO_ORIGIN: 'http://localhost:3001' },
      '/guide',
    )
    expect([origin, demoOrigin]).toEqual(['https://guide.example', 'http://localhost:3001'])
    expect(readSettings({ ORIGIN: '' }, '/guide').origin).toBeUndefined()
    for (const wrong of [
      'guide.example',
      'https://guide.example/',
      'ftp://guide.example',
      'https://a b',
    ]) {
      expect(() => readSettings({ ORIGIN: wrong }, '/guide'), wrong).toThrow(/ORIGIN is/)
      expect(() => readSettings({ DEMO_ORIGIN: wrong }, '/guide'), wrong).toThrow(/DEMO_ORIGIN is/)
    }
  })
})
