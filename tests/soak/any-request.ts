import fc from 'fast-check'
import { FACT_KEYS } from '../../shared/fact-keys.ts'
import { toQuery } from '../../shared/share-link.ts'
import { openApi } from '../../src/api/openapi.ts'
import { OPERATIONS } from '../../src/api/operations.ts'
import { WORKSHEETS } from '../../src/worksheets/registry.ts'
import { anyAnswers } from '../support/answers.ts'
import { rulebook } from '../support/app.ts'
import { fromSchema, ODD, type Schema } from './from-schema.ts'

/** One request as plain data, so that one that fails can be printed. */
export interface Sent {
  readonly method: string
  readonly path: string
  readonly headers: Readonly<Record<string, string>>
  readonly body?: string | Uint8Array<ArrayBuffer>
}

const JSON_TYPE = { 'content-type': 'application/json' }
const FORM_TYPE = { 'content-type': 'application/x-www-form-urlencoded' }

/** Pages that reckon little; the others assess a build. */
const LIGHT = [
  ...['/learn', '/learn/glossary', '/learn/register', '/learn/none', '/method', '/rules', '/api'],
  ...[
    '/rules/any-rule',
    '/offline',
    '/shops',
    '/shops/demo',
    '/presets',
    '/preset/none',
    '/embed.js',
  ],
  ...['/problems/invalid-body', '/problems/none', '/robots.txt', '/sitemap.xml', '/assets/none.js'],
  ...[
    '/embed/theme.css',
    '/healthz',
    '/worksheets',
    '/api/facts',
    '/api/routes',
    '/api/openapi.json',
  ],
]
const HEAVY = ['/', '/call', '/sheet', '/check-in', '/check-in.csv', '/forum', '/compare', '/embed']

const text = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 80 }),
  ODD.map(String),
  fc.constantFrom(
    'a 355 with 9.5:1 and 8 psi',
    '4.03 in',
    '4.03 x 3.48',
    'what if 12 psi?',
    'undo',
  ),
)
const names = fc.constantFrom(
  ...[
    ...FACT_KEYS,
    'v',
    'units',
    'ask',
    'by',
    'was.boost',
    'parked',
    'shop',
    'note',
    'said',
    'a',
    'b',
  ],
  ...['paper', 'm-unit', 'paste', 'paste-into', 'in.bore', 'in.torque', 'state', 'fact', 'value'],
  ...['text', 'choice', 'know', 'unit', '__proto__', 'constructor', ''],
)
const shop = fc.constantFrom('', '', '', 'millpond', 'harrow-lane', 'none', '__proto__')

const oddQuery = fc
  .array(fc.tuple(names, text), { maxLength: 6 })
  .map((pairs) => new URLSearchParams(pairs).toString())
const goodQuery = anyAnswers.map((answers) => toQuery(answers, rulebook.version))
const rawQuery = fc.string({ maxLength: 60 }).map((raw) => raw.replaceAll('#', '%23'))
const query = fc
  .tuple(fc.oneof(oddQuery, goodQuery, rawQuery), shop)
  .map(([own, id]) => (id === '' ? own : `${own}&shop=${id}`))

const sheets = WORKSHEETS.map(({ name }) => `/worksheets/${name}`)
const anyPath = fc.oneof(
  { weight: 4, arbitrary: fc.constantFrom(...LIGHT, ...sheets) },
  { weight: 2, arbitrary: fc.constantFrom(...HEAVY) },
  { weight: 1, arbitrary: fc.webPath({ size: 'small' }) },
)

const page = fc
  .tuple(fc.constantFrom('GET', 'GET', 'GET', 'HEAD', 'OPTIONS', 'DELETE'), anyPath, query)
  .map(([method, path, asked]): Sent => ({ method, path: `${path}?${asked}`, headers: {} }))

const form = fc
  .tuple(fc.constantFrom('/', '/embed', '/sheet', '/check-in', '/call'), oddQuery, query)
  .map(([path, body, state]): Sent => {
    const whole = `${body}&${new URLSearchParams({ state })}`
    return { method: 'POST', path, headers: FORM_TYPE, body: whole }
  })

const { paths, components } = openApi(OPERATIONS, rulebook.version) as unknown as {
  paths: Record<
    string,
    Record<string, { requestBody?: { content: Record<string, { schema: Schema }> } }>
  >
  components: { schemas: Record<string, Schema> }
}
const find = (ref: string) => components.schemas[ref.split('/').at(-1) as string] as Schema
const operations = Object.entries(paths).flatMap(([path, { post }]) => {
  const schema = post?.requestBody?.content['application/json']?.schema
  return schema ? [{ path, schema }] : []
})

/** What the operations of the description take. */
export const OPERATION_PATHS = operations.map(({ path }) => path)

const json = fc.oneof(
  ...operations.map(({ path, schema }) =>
    fromSchema(schema, find).map(
      (body): Sent => ({
        method: 'POST',
        path: path.startsWith('/api') ? path : `/api${path}`,
        headers: JSON_TYPE,
        body: JSON.stringify(body) ?? '',
      }),
    ),
  ),
)

const bytes = fc
  .tuple(
    fc.constantFrom(...OPERATIONS.map(({ path }) => `/api${path}`), '/', '/sheet', '/check-in'),
    fc.uint8Array({ maxLength: 300 }),
    fc.constantFrom(JSON_TYPE, FORM_TYPE, { 'content-type': 'text/plain' }, {}),
  )
  .map(([path, body, headers]): Sent => {
    return {
      method: 'POST',
      path,
      headers: { ...headers } as Sent['headers'],
      body: new Uint8Array(body),
    }
  })

/** Any request to any endpoint: good, nearly good, and none at all. */
export const anyRequest: fc.Arbitrary<Sent> = fc.oneof(
  { weight: 4, arbitrary: page },
  { weight: 3, arbitrary: json },
  { weight: 2, arbitrary: form },
  { weight: 2, arbitrary: bytes },
)
