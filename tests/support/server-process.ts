import { type ChildProcess, spawn } from 'node:child_process'
import { cpSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

const root = fileURLToPath(new URL('../..', import.meta.url))

export interface ServerProcess {
  readonly origin: string
  readonly port: number
  readonly child: ChildProcess
  /** What it wrote to its log until now. */
  logged(): string
  /** Waits until the log says so. */
  says(what: RegExp): Promise<void>
  readonly ended: Promise<number | null>
}

export interface Started {
  readonly child: ChildProcess
  readonly output: { out: string; log: string }
  readonly ended: Promise<number | null>
}

/** The real server as a process of its own; `PORT=0` unless another is named. */
export function spawnServer(env: Readonly<Record<string, string>> = {}): Started {
  const child = spawn(process.execPath, ['--import', 'tsx', 'src/server.ts'], {
    cwd: root,
    env: { PATH: process.env.PATH ?? '', PORT: '0', RATE_PER_MINUTE: '0', ...env },
    stdio: ['ignore', 'pipe', 'pipe'],
  })
  const output = { out: '', log: '' }
  child.stdout.on('data', (chunk: Buffer) => {
    output.out += chunk.toString()
  })
  child.stderr.on('data', (chunk: Buffer) => {
    output.log += chunk.toString()
  })
  // 'close' comes when the pipes are read to their end, so that the log is whole.
  const ended = new Promise<number | null>((resolve) => child.once('close', resolve))
  return { child, output, ended }
}

/** The same, once it listens. */
export async function startServer(
  env: Readonly<Record<string, string>> = {},
): Promise<ServerProcess> {
  const { child, output, ended } = spawnServer(env)
  const address = /http:\/\/127\.0\.0\.1:(\d+)\//
  await until(() => {
    if (child.exitCode !== null) throw new Error(`the server ended: ${output.log}`)
    return address.test(output.out)
  })
  const port = Number(address.exec(output.out)?.[1])
  return {
    child,
    port,
    origin: `http://127.0.0.1:${port}`,
    logged: () => output.log,
    says: (what) => until(() => what.test(output.log)),
    ended,
  }
}

/** A copy of rules/ and content/ that a test may break. */
export function operatorCopy() {
  const folder = mkdtempSync(join(tmpdir(), 'mainstay-'))
  for (const name of ['rules', 'content']) {
    cpSync(join(root, name), join(folder, name), { recursive: true })
  }
  return {
    env: { RULES_DIR: join(folder, 'rules'), CONTENT_DIR: join(folder, 'content') },
    path: (name: string) => join(folder, name),
    remove: () => rmSync(folder, { recursive: true, force: true }),
  }
}

async function until(condition: () => boolean): Promise<void> {
  while (!condition()) await new Promise((resolve) => setTimeout(resolve, 25))
}
