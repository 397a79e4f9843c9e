import type { Hono } from 'hono'
import type { Sent } from './any-request.ts'

/** No answer within this is a hang. */
const PATIENCE_MS = 30_000

/** The status of the answer, read to its end; throws with the request where there is a fault. */
export async function send(app: Hono, sent: Sent): Promise<number> {
  const { path, ...init } = sent
  let timer: NodeJS.Timeout | undefined
  const late = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new Error(`no answer to ${JSON.stringify(sent)}`)), PATIENCE_MS)
  })
  try {
    const response = await Promise.race([app.request(path, init as RequestInit), late])
    await Promise.race([response.arrayBuffer(), late])
    const next = response.headers.get('location')
    if (next !== null && !/^\/(?!\/)/.test(next)) throw new Error(`sent away to ${next}`)
    if (response.status >= 500) throw new Error(`${response.status} to ${JSON.stringify(sent)}`)
    return response.status
  } finally {
    clearTimeout(timer)
  }
}
