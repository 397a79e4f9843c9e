import { type ChildProcess, spawn } from 'node:child_process'
import { Agent, request } from 'node:http'
import { gzipSync } from 'node:zlib'
import type { Answers } from '../../shared/answers.ts'
import { toQuery } from '../../shared/share-link.ts'
import type { Rulebook } from '../../src/rulebook/load.ts'
import { exampleOf, soundCases } from './cases.ts'
import { ms, table } from './measure.ts'

const CLIENTS = 64

interface Call {
  readonly url: string
  readonly body?: string
}

interface Ask {
  readonly name: string
  /** Made in turn, from the first again after the last. */
  readonly calls: readonly Call[]
  readonly count: number
  /** At once; all 64 when left out. */
  readonly clients?: number
}

/** The guide's pages and API under load, beside an endpoint that does nothing. Loopback only. */
export async function benchHttp(root: string, rulebook: Rulebook): Promise<void> {
  const guide = await start([`${root}dist/server.cjs`], root)
  const bare = await start([`${root}dist/bench/bare-server.cjs`], root)
  try {
    const answers = exampleOf(rulebook, 'twin-turbo')
    const link = toQuery(answers, rulebook.version)
    const body = JSON.stringify({ answers })
    const assess = { url: `${guide.url}api/assess`, body }
    const asks: Ask[] = [
      { name: 'bare endpoint', calls: [{ url: bare.url }], count: 6400 },
      { name: 'bare endpoint, JSON back', calls: [{ url: bare.url, body }], count: 6400 },
      { name: 'healthz', calls: [{ url: `${guide.url}healthz` }], count: 3200 },
      { name: 'start page', calls: [{ url: guide.url }], count: 320 },
      { name: 'guide, one case', calls: [{ url: `${guide.url}?${link}` }], count: 128 },
      { name: 'call page, one case', calls: [{ url: `${guide.url}call?${link}` }], count: 128 },
      { name: 'POST /api/assess, one case', calls: [assess], count: 128 },
    ]
    const { alone, together } = await differentCases(guide.url, rulebook)
    const rows = [['64 clients', 'requests', 'a second', 'p50 ms', 'p99 ms', 'p99/p50', 'failed']]
    for (const ask of [...asks, ...alone]) rows.push(await load(ask))
    // The pages are of one case each, which a server that is in use remembers.
    for (const call of together[1]?.calls ?? []) await once(new Agent(), call)
    rows.push(...(await Promise.all(together.map(load))))
    table('HTTP, one process (aim: p99/p50 at most 8)', rows)
    await weigh(guide.url, link)
  } finally {
    guide.child.kill()
    bare.child.kill()
  }
}

const DIFFERENT = 192

/** Every request another case, so that nothing of it is remembered; then pages beside such turns. */
async function differentCases(base: string, rulebook: Rulebook) {
  const cases = await soundCases(rulebook, 3 * DIFFERENT)
  const from = (part: number, call: (answers: Answers) => Call): Call[] =>
    cases.slice(part * DIFFERENT, (part + 1) * DIFFERENT).map(call)
  const turn = (answers: Answers): Call => ({
    url: `${base}api/turn`,
    body: JSON.stringify({ answers, asking: 'use', answer: 'street' }),
  })
  const page = (answers: Answers): Call => ({
    url: `${base}call?${toQuery(answers, rulebook.version)}`,
  })
  const short: Call[] = [{ url: base }, { url: `${base}healthz` }, { url: `${base}shops` }]
  const alone: Ask[] = [
    { name: 'POST /api/turn, different cases', calls: from(0, turn), count: DIFFERENT },
    { name: 'call page, different cases', calls: from(1, page), count: DIFFERENT },
  ]
  const together: Ask[] = [
    { name: 'turns, 32 of 64 clients', calls: from(2, turn), count: DIFFERENT, clients: 32 },
    { name: 'pages meanwhile, the other 32', calls: short, count: 2 * DIFFERENT, clients: 32 },
  ]
  return { alone, together }
}

function start(args: string[], cwd: string): Promise<{ url: string; child: ChildProcess }> {
  const env = { ...process.env, PORT: '0', HOST: '127.0.0.1', RATE_PER_MINUTE: '0' }
  const child = spawn(process.execPath, args, { cwd, env, stdio: ['ignore', 'pipe', 'inherit'] })
  return new Promise((resolve, reject) => {
    child.once('exit', (code) => reject(new Error(`${args[0]} ended with ${code}`)))
    child.stdout?.on('data', (text: Buffer) => {
      const url = /http:\/\/\S+/.exec(text.toString())?.[0]
      if (url) resolve({ url, child })
    })
  })
}

/** A fixed number of requests over a fixed number of kept connections. */
async function load({ name, calls, count, clients = CLIENTS }: Ask): Promise<string[]> {
  const agent = new Agent({ keepAlive: true, maxSockets: clients })
  if (calls.length === 1) for (let warm = 0; warm < 8; warm++) await once(agent, calls[0] as Call)
  const times: number[] = []
  let [sentYet, failed] = [0, 0]
  const start = performance.now()
  const client = async (): Promise<void> => {
    while (sentYet < count) {
      const call = calls[sentYet++ % calls.length] as Call
      const sent = performance.now()
      const { status } = await once(agent, call)
      if (status !== 200) failed++
      times.push(performance.now() - sent)
    }
  }
  await Promise.all(Array.from({ length: clients }, client))
  const seconds = (performance.now() - start) / 1000
  agent.destroy()
  times.sort((a, b) => a - b)
  const at = (share: number): number => times[Math.floor(share * (times.length - 1))] as number
  const ratio = (at(0.99) / at(0.5)).toFixed(1)
  const rate = (count / seconds).toFixed(0)
  return [name, String(count), rate, ms(at(0.5)), ms(at(0.99)), ratio, String(failed)]
}

function once(agent: Agent, { url, body }: Call): Promise<{ status: number; data: Buffer }> {
  return new Promise((resolve, reject) => {
    const headers = body ? { 'content-type': 'application/json' } : {}
    const sent = request(url, { agent, method: body ? 'POST' : 'GET', headers }, (response) => {
      const parts: Buffer[] = []
      response.on('data', (part: Buffer) => parts.push(part))
      response.on('end', () =>
        resolve({ status: response.statusCode ?? 0, data: Buffer.concat(parts) }),
      )
    })
    // A kept connection may be closed just as it is used again; that is asked once more.
    sent.on('error', (error) =>
      sent.reusedSocket ? resolve(once(agent, { url, ...(body ? { body } : {}) })) : reject(error),
    )
    sent.end(body)
  })
}

/** What a page and all that it names weigh, as sent and as compressed text would be. */
async function weigh(base: string, link: string): Promise<void> {
  const agent = new Agent()
  const rows = [['page', 'HTML kB', 'CSS', 'scripts', 'fonts', 'total, text gzipped, kB']]
  for (const [name, path] of [
    ['start', ''],
    ['guide', `?${link}`],
    ['call', `call?${link}`],
  ] as const) {
    const html = (await once(agent, { url: base + path })).data
    const assets = await assetsOf(agent, base, html.toString())
    const kinds = ['css', 'js', 'woff2'].map((kind) =>
      assets.filter(([asset]) => asset.endsWith(`.${kind}`)),
    )
    const size = (data: Buffer): number => data.length
    const zipped = (asset: string, data: Buffer): number =>
      asset.endsWith('.woff2') ? data.length : gzipSync(data).length
    const total = assets.reduce(
      (sum, [asset, data]) => sum + zipped(asset, data),
      gzipSync(html).length,
    )
    const kb = (bytes: number): string => (bytes / 1000).toFixed(1)
    rows.push([
      name,
      kb(html.length),
      ...kinds.map((kind) => kb(kind.reduce((sum, [, data]) => sum + size(data), 0))),
      kb(total),
    ])
  }
  agent.destroy()
  table('Page weight', rows)
}

/** Scripts, sheets and fonts that a page or its sheet names. */
async function assetsOf(agent: Agent, base: string, html: string): Promise<[string, Buffer][]> {
  const found = new Map<string, Buffer>()
  const take = async (text: string): Promise<void> => {
    const names = [...text.matchAll(/[\w/.-]*?([\w-]+\.(?:css|js|woff2))\b/g)]
    for (const [, name] of names) {
      if (!name || found.has(name)) continue
      const { status, data } = await once(agent, { url: `${base}assets/${name}` })
      if (status !== 200) continue
      found.set(name, data)
      if (name.endsWith('.css')) await take(data.toString())
    }
  }
  await take(html)
  return [...found]
}
