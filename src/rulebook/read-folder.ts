import { readdirSync, readFileSync } from 'node:fs'
import { join, relative } from 'node:path'

/**
 * Every JSON file below a folder as path → text, for {@link loadRulebook}. Kept
 * apart from it so that the same rulebook loads where there is no file system.
 */
export function readFolder(folder: string): Map<string, string> {
  const files = new Map<string, string>()
  const entries = readdirSync(folder, { recursive: true, withFileTypes: true })
  for (const entry of entries) {
    if (!entry.isFile() || !entry.name.endsWith('.json')) continue
    const path = join(entry.parentPath, entry.name)
    files.set(relative(folder, path).replaceAll('\\', '/'), readFileSync(path, 'utf8'))
  }
  return files
}
