import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'

const root = new URL('../src/', import.meta.url)

/**
 * What only tests call, each the plain form of a textbook: quicker code in use is held against
 * it, or a published example is worked through it.
 */
const REFERENCES = [
  ...['burnRate', 'burntShare', 'cylinderVolume', 'memberStiffnessOneMaterial'],
  ...['pertQuantile', 'plainSobol', 'powerOfMep', 'woschniCoefficient', 'woschniGasSpeed'],
]

const files = readdirSync(root, { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.ts'))
  .map((name) => ({ name, code: withoutComments(readFileSync(new URL(name, root), 'utf8')) }))

function withoutComments(text: string): string {
  return text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/\/\/.*$/gm, '')
}

const times = (code: string, word: string) => code.split(new RegExp(`\\b${word}\\b`)).length - 1

describe('the mechanics', () => {
  const exported = files
    .filter(({ name }) => name.startsWith('mechanics/'))
    .flatMap(({ name, code }) =>
      [...code.matchAll(/^export (?:function|const) (\w+)/gm)].map(([, word]) => ({
        name,
        word: word as string,
      })),
    )

  it('are all called by the guide, but for a few references', () => {
    const idle = exported.filter(({ name, word }) =>
      files.every((file) => times(file.code, word) <= (file.name === name ? 1 : 0)),
    )
    expect(exported.length).toBeGreaterThan(100)
    expect(idle.map(({ word }) => word).sort()).toEqual([...REFERENCES].sort())
  })
})
