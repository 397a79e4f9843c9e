/**
 * Builds dist/: the server as one CommonJS file, and the scripts, the stylesheet, the
 * fonts and the mark under content-hashed names. `--assets` builds all but the server.
 *
 * The server is CommonJS because jsonpath-plus, inside json-rules-engine, requires
 * `vm`, which an ES module bundle cannot. rules/ and content/ are read when it runs.
 */
import { mkdir, readdir, rm, writeFile } from 'node:fs/promises'
import { basename, dirname, join, relative } from 'node:path'
import { fileURLToPath } from 'node:url'
import { build } from 'esbuild'

const root = fileURLToPath(new URL('../..', import.meta.url))
const assets = join(root, 'dist', 'assets')
const styles = join(root, 'src', 'browser', 'styles')
/** The one stylesheet: every file of the styles folder, site.css (the order of layers) first. */
const ALL_STYLES = 'all-styles'

try {
  const manifest = await buildAssets()
  if (!process.argv.includes('--assets')) await buildServer(manifest)
} catch (error) {
  // esbuild has already printed its own errors with file and line.
  if (!(error instanceof Error && 'errors' in error)) console.error(error)
  process.exit(1)
}

async function buildAssets() {
  await mkdir(assets, { recursive: true })
  // Every .ts file beside the folders is a script of its own; the folders hold their parts.
  const names = await readdir(join(root, 'src', 'browser'))
  const scripts = names.filter((name) => name.endsWith('.ts') && !name.endsWith('.d.ts'))
  const shared = { ...common(), bundle: true, minify: true, metafile: true, outdir: assets }
  const results = await Promise.all([
    build({
      ...shared,
      entryPoints: scripts.map((name) => join(root, 'src', 'browser', name)),
      entryNames: '[name]-[hash]',
      platform: 'browser',
      format: 'iife',
      target: 'es2022',
    }),
    build({
      ...shared,
      entryPoints: [{ in: ALL_STYLES, out: 'site' }, join(styles, 'mark.svg')],
      entryNames: '[name]-[hash]',
      assetNames: '[name]-[hash]',
      loader: { '.woff2': 'file', '.svg': 'copy' },
      plugins: [allStyles()],
      // Written for browsers that have cascade layers; nothing older is served a broken page.
      target: ['chrome111', 'firefox113', 'safari16.4'],
    }),
  ])
  const manifest = logicalNames(results.flatMap(({ metafile }) => Object.entries(metafile.outputs)))
  await writeFile(join(assets, 'manifest.json'), `${JSON.stringify(manifest, null, 2)}\n`)
  await sweep(new Set([...Object.values(manifest), 'manifest.json']))
  return manifest
}

function allStyles() {
  return {
    name: ALL_STYLES,
    setup({ onResolve, onLoad }) {
      onResolve({ filter: new RegExp(`^${ALL_STYLES}$`) }, () => ({
        path: ALL_STYLES,
        namespace: ALL_STYLES,
      }))
      onLoad({ filter: /.*/, namespace: ALL_STYLES }, async () => {
        const names = (await readdir(styles)).filter((name) => name.endsWith('.css')).sort()
        const ordered = ['site.css', ...names.filter((name) => name !== 'site.css')]
        const contents = ordered.map((name) => `@import './${name}';`).join('\n')
        return { contents, loader: 'css', resolveDir: styles }
      })
    },
  }
}

/** `conversation-AB12CD34.js` → `conversation.js`: the name that pages ask for. */
function logicalNames(outputs) {
  const files = outputs.map(([path]) => basename(path)).sort()
  return Object.fromEntries(files.map((file) => [file.replace(/-[0-9A-Z]{8}(?=\.)/, ''), file]))
}

async function sweep(wanted) {
  const stale = (await readdir(assets)).filter((name) => !wanted.has(name))
  await Promise.all(stale.map((name) => rm(join(assets, name), { recursive: true, force: true })))
}

async function buildServer(manifest) {
  const outfile = join(root, 'dist', 'server.cjs')
  await build({
    ...common(),
    entryPoints: [join(root, 'src', 'server.ts')],
    outfile,
    bundle: true,
    platform: 'node',
    format: 'cjs',
    target: 'node20',
    sourcemap: true,
    // Native add-ons, and pdfkit with its data files, cannot be bundled: they load from node_modules.
    external: ['*.node', '@resvg/resvg-js', 'pdfkit'],
    loader: { '.md': 'text', '.css': 'text', '.woff2': 'file' },
    define: { ASSET_MANIFEST: JSON.stringify(manifest) },
  })
  console.log(`Built ${relative(root, dirname(outfile))}/.`)
}

function common() {
  return { absWorkingDir: root, legalComments: 'none', logLevel: 'warning', charset: 'utf8' }
}
