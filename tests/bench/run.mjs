/** Bundles the measurements and runs them: `npm run bench`, or `npm run bench -- http` for one part. */
import { spawnSync } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import { build } from 'esbuild'

const root = fileURLToPath(new URL('../..', import.meta.url))
const outdir = `${root}dist/bench`

const built = spawnSync(process.execPath, [`${root}src/tools/build.mjs`], { stdio: 'inherit' })
if (built.status !== 0) process.exit(built.status ?? 1)
await build({
  entryPoints: [`${root}tests/bench/bench.ts`, `${root}tests/bench/bare-server.ts`],
  bundle: true,
  platform: 'node',
  format: 'cjs',
  outExtension: { '.js': '.cjs' },
  outdir,
  logLevel: 'warning',
})
const args = ['--expose-gc', `${outdir}/bench.cjs`, root, ...process.argv.slice(2)]
const ran = spawnSync(process.execPath, args, { stdio: 'inherit' })
process.exit(ran.status ?? 1)
