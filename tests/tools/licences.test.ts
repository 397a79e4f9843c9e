import { execFileSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { expect, it } from 'vitest'

const root = fileURLToPath(new URL('../..', import.meta.url))

it('every package that is installed has a licence that only asks for a notice', () => {
  const { dependencies } = JSON.parse(readFileSync(`${root}package.json`, 'utf8')) as {
    dependencies: Record<string, string>
  }
  // It ends with an error, and this with it, when one has not.
  const printed = execFileSync(process.execPath, ['src/tools/licences.mjs'], {
    cwd: root,
    encoding: 'utf8',
  })
  for (const [name, version] of Object.entries(dependencies)) {
    expect(printed).toContain(`${name}@${version}`)
  }
})
