import { serve } from '@hono/node-server'
import { Hono } from 'hono'

/** An endpoint that does nothing: what the same server costs without a guide behind it. */
const app = new Hono()
app.get('/', (c) => c.text('ok'))
app.post('/', async (c) => c.json(await c.req.json()))

serve({ fetch: app.fetch, port: 0, hostname: '127.0.0.1' }, (info) => {
  console.log(`http://127.0.0.1:${info.port}/`)
})
