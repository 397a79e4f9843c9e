import { readdirSync, readFileSync, statSync } from 'node:fs'
import { join, relative } from 'node:path'

/**
 * Every JSON file below a folder as path → text, for {@link loadRulebook}. Kept
 * apart from it so that the same rulebook loads where there is no file system.
 */
export function readFolder(folder: string): Map<string, string> {
  const files = new Map<string, string>()
  const entries = readdirSync(folder, { recursive: true, withFileTypes: true })
  for (const entry of entries) {
    const path = join(entry.parentPath, entry.name)
    // Mounted folders often hold links.
    const isFile = entry.isFile() || (entry.isSymbolicLink() && statSync(path).isFile())
    if (!isFile || !entry.name.endsWith('.json')) continue
    files.set(relative(folder, path).replaceAll('\\', '/'), readFileSync(path, 'utf8'))
  }
  return files
}
