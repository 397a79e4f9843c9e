import { readdirSync, readFileSync } from 'node:fs'
import { learnDrawing } from '../../src/pages/learn-drawings.ts'
import { createContent } from '../../src/pages/markdown.ts'

const root = new URL('../../content/', import.meta.url)

/** Every Markdown file below content/, as a path such as `learn/register.md`. */
export const contentPaths: readonly string[] = readdirSync(root, { recursive: true })
  .map(String)
  .filter((path) => path.endsWith('.md'))
  .sort()

export function readContent(path: string): string | undefined {
  return contentPaths.includes(path) ? readFileSync(new URL(path, root), 'utf8') : undefined
}

/** The project's own content with its drawings. */
export const content = createContent(readContent, learnDrawing)
