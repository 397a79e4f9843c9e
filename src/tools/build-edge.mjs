/**
 * Builds dist/edge/worker.js: the same fetch handler as the server's, as one module for a
 * runtime without files, with the texts of rules/ and content/ inside. The assets must have
 * been built before; without them pages name assets by their plain names.
 */
import { readdir, readFile } from 'node:fs/promises'
import { join, relative } from 'node:path'
import { fileURLToPath } from 'node:url'
import { build } from 'esbuild'

const root = fileURLToPath(new URL('../..', import.meta.url))

try {
  const content = await texts('content', '.md')
  const files = {
    rules: await texts('rules', '.json'),
    content,
    shops: await texts('content/shops', '.json'),
  }
  await build({
    absWorkingDir: root,
    entryPoints: [join(root, 'src', 'edge', 'worker.ts')],
    outfile: join(root, 'dist', 'edge', 'worker.js'),
    bundle: true,
    minify: true,
    format: 'esm',
    target: 'es2022',
    // json-rules-engine brings a JSONPath without node's `vm` for these.
    conditions: ['workerd', 'worker', 'browser'],
    alias: { pdfkit: join(root, 'src', 'edge', 'no-pdf.ts') },
    define: {
      EDGE_FILES: JSON.stringify(files),
      ASSET_MANIFEST: JSON.stringify(await manifest()),
    },
    legalComments: 'none',
    logLevel: 'warning',
    charset: 'utf8',
  })
  console.log('Built dist/edge/.')
} catch (error) {
  // esbuild has already printed its own errors with file and line.
  if (!(error instanceof Error && 'errors' in error)) console.error(error)
  process.exit(1)
}

/** Path below the folder → text, of every file with this ending. */
async function texts(folder, ending) {
  const below = join(root, folder)
  const entries = await readdir(below, { recursive: true, withFileTypes: true })
  const paths = entries
    .filter((entry) => entry.isFile() && entry.name.endsWith(ending))
    .map((entry) => join(entry.parentPath, entry.name))
    .sort()
  const read = paths.map(async (path) => [
    relative(below, path).replaceAll('\\', '/'),
    await readFile(path, 'utf8'),
  ])
  return Object.fromEntries(await Promise.all(read))
}

async function manifest() {
  const path = join(root, 'dist', 'assets', 'manifest.json')
  return JSON.parse(await readFile(path, 'utf8').catch(() => '{}'))
}
