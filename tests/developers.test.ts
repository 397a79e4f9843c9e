import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'

const root = new URL('../', import.meta.url)
const page = readFileSync(new URL('DEVELOPERS.md', root), 'utf8')
const manifest = JSON.parse(readFileSync(new URL('package.json', root), 'utf8')) as Record<
  'scripts' | 'dependencies' | 'devDependencies',
  Record<string, string>
>

/** First cells of the rows of the table below a heading, taken apart at commas. */
function listed(heading: string): string[] {
  const section = page.split(`\n## ${heading}\n`)[1]?.split('\n## ')[0] ?? ''
  const rows = [...section.matchAll(/^\| ([^|]+) \|/gm)].slice(2).map((row) => row[1] ?? '')
  return rows.flatMap((cell) => cell.replaceAll('`', '').split(', '))
}

describe('DEVELOPERS.md', () => {
  it('gives a reason for every dependency, and for nothing else', () => {
    const { dependencies, devDependencies } = manifest
    const needed = Object.keys({ ...dependencies, ...devDependencies })
    expect(listed('Dependencies, and why each').sort()).toEqual(needed.sort())
  })

  it('explains every command', () => {
    const commands = listed('Commands').map((command) => command.replace(/^npm (run )?/, ''))
    expect(commands.sort()).toEqual(Object.keys(manifest.scripts).sort())
  })

  it('says what is in every folder of src', () => {
    const folders = readdirSync(new URL('src/', root), { withFileTypes: true })
      .filter((entry) => entry.isDirectory())
      .map(({ name }) => `src/${name}/`)
    expect(listed('The way of data')).toEqual(expect.arrayContaining(folders))
  })

  it('names only files and folders that are there', () => {
    const paths = [...page.matchAll(/`((?:rules|content|shared|src|tests)\/[\w./-]*)`/g)]
    const names = paths.map((match) => match[1] ?? '')
    expect(names.length).toBeGreaterThan(40)
    const absent = names.filter((name) => !existsSync(new URL(name, root)))
    expect(absent).toEqual([])
  })
})
