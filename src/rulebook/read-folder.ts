import { readdirSync, readFileSync, statSync } from 'node:fs'
import { join, relative } from 'node:path'

/**
 * Every JSON file below a folder as path → text, for {@link loadRulebook}. Kept
 * apart from it so that the same rulebook loads where there is no file system.
 *
 * @throws {Error} naming the file that cannot be read
 */
export function readFolder(folder: string): Map<string, string> {
  const files = new Map<string, string>()
  const entries = readdirSync(folder, { recursive: true, withFileTypes: true })
  for (const entry of entries) {
    const path = join(entry.parentPath, entry.name)
    if (!entry.name.endsWith('.json')) continue
    // Mounted folders often hold links.
    const isFile = entry.isFile() || (entry.isSymbolicLink() && statSync(path).isFile())
    if (isFile) files.set(relative(folder, path).replaceAll('\\', '/'), readUtf8(path))
  }
  return files
}

/**
 * The text of a file, without the mark of byte order that some editors put before it.
 *
 * @throws {Error} if it cannot be read, or is in another encoding: letters would be lost unsaid
 */
export function readUtf8(path: string): string {
  const bytes = readFileSync(path)
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    throw new Error(`${path}: is not UTF-8; save it in that encoding`)
  }
}
