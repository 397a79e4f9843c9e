import { execFileSync, spawn } from 'node:child_process'
import { existsSync } from 'node:fs'
import { createRequire } from 'node:module'
import { createInterface } from 'node:readline'
import type { Readable } from 'node:stream'
import { fileURLToPath } from 'node:url'

const root = fileURLToPath(new URL('../..', import.meta.url))

export interface Edge {
  readonly origin: string
  close(): Promise<void>
}

/** Build the guide for an edge runtime, and serve it by one on a free port of this machine. */
export async function startEdge(): Promise<Edge> {
  if (!existsSync(`${root}dist/assets/manifest.json`)) {
    execFileSync(process.execPath, ['src/tools/build.mjs', '--assets'], { cwd: root })
  }
  execFileSync(process.execPath, ['src/tools/build-edge.mjs'], { cwd: root })
  const { default: program } = createRequire(import.meta.url)('workerd') as { default: string }
  const child = spawn(
    program,
    [
      ...['serve', 'src/edge/workerd.capnp', '--control-fd=3'],
      ...['--socket-addr', 'http=127.0.0.1:0'],
    ],
    { cwd: root, stdio: ['ignore', 'inherit', 'inherit', 'pipe'] },
  )
  const ended = new Promise<void>((resolve) => child.once('exit', () => resolve()))
  const port = await new Promise<number>((resolve, reject) => {
    createInterface({ input: child.stdio[3] as Readable }).on('line', (line) => {
      const { event, port } = JSON.parse(line) as { event: string; port: number }
      if (event === 'listen') resolve(port)
    })
    child.once('error', reject)
    child.once('exit', (code) => reject(new Error(`the edge runtime ended with code ${code}`)))
  })
  return {
    origin: `http://127.0.0.1:${port}`,
    close: () => {
      child.kill('SIGTERM')
      return ended
    },
  }
}
