import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join, posix } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'

/** What pages draw, lay out and print with. */
const DRAWS = ['zod', 'hono', 'marked', 'd3-scale', 'd3-shape', 'pdfkit', 'uqr']

/** Stages that the outside of the arrow may call: all of them, pages and what is made of pages too. */
const STAGES = [
  ...['shared', 'mechanics', 'rulebook', 'build', 'facts', 'findings', 'call', 'what-if'],
  ...['answers', 'talk', 'shop-sheet', 'check-in', 'worksheets', 'shops', 'pages', 'forum'],
  'preview',
]

/**
 * The way of data as a table: for each folder, what its files may import besides each
 * other. Nothing may import a folder that stands below it. A new folder gets a row.
 */
const ARROW: Readonly<Record<string, readonly string[]>> = {
  mechanics: [],
  shared: ['zod', 'rules/facts.json'],
  rulebook: ['shared', 'mechanics', 'zod', 'json-rules-engine', 'node:fs', 'node:path'],
  build: ['shared', 'mechanics', 'rulebook'],
  facts: ['shared', 'mechanics', 'rulebook', 'build'],
  findings: ['shared', 'rulebook', 'facts'],
  call: ['shared', 'mechanics', 'rulebook', 'build', 'facts', 'findings'],
  'what-if': ['shared', 'mechanics', 'rulebook', 'build', 'facts', 'findings', 'call'],
  answers: ['shared', 'zod'],
  talk: ['shared', 'rulebook', 'build', 'answers'],
  'shop-sheet': ['shared', 'zod', 'mechanics', 'rulebook', 'build', 'facts'],
  'check-in': ['shared', 'zod', 'mechanics', 'rulebook', 'build', 'facts', 'shop-sheet'],
  worksheets: ['shared', 'zod', 'mechanics', 'rulebook', 'build', 'facts'],
  shops: ['shared', 'zod', 'rulebook'],
  pages: ['shared', 'rulebook', 'worksheets', 'shop-sheet', 'check-in', 'shops', ...DRAWS],
  forum: ['shared', 'pages'],
  preview: ['shared', 'pages', '@resvg/resvg-js', 'node:path'],
  'assess.ts': ['shared', 'rulebook', 'build', 'facts', 'findings', 'call', 'what-if'],
  api: [...STAGES, 'assess.ts', 'hono', 'zod'],
  site: [...STAGES, 'assess.ts', 'api', 'hono', 'zod'],
  'app.ts': ['mechanics', 'api', 'pages', 'site', 'hono'],
  'settings.ts': [],
  'patience.ts': [],
  'operator-files.ts': [...STAGES, 'api'],
  'rate-peers.ts': ['api', 'node:cluster'],
  'workers.ts': ['rate-peers.ts', 'node:cluster'],
  'http-server.ts': ['patience.ts', 'site', '@hono/node-server', 'node:http', 'node:stream'],
  'stopping.ts': ['api', 'node:http'],
  'server.ts': [
    ...[
      ...STAGES,
      'site',
      'app.ts',
      'settings.ts',
      'operator-files.ts',
      'workers.ts',
      'rate-peers.ts',
      'stopping.ts',
      'http-server.ts',
    ],
    ...['@hono/node-server', 'node:*'],
  ],
  edge: ['shared', 'app.ts', 'settings.ts', 'operator-files.ts', 'site', 'hono'],
  browser: ['shared'],
  tools: ['*'],
}

const root = fileURLToPath(new URL('..', import.meta.url))

interface Import {
  readonly file: string
  readonly target: string
  readonly typeOnly: boolean
}

function files(folder: string): string[] {
  return readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.(ts|mjs)$/.test(name))
    .map((name) => `${folder}/${name.replaceAll('\\', '/')}`)
    .sort()
}

const STATEMENT =
  /^\s*(?:import|export)\s+(type\s)?(?:[^'"`;]*?\sfrom\s+)?['"]([^'"]+)['"]|\bimport\(\s*['"]([^'"]+)['"]/gm

/** Every import of a file: a path below the project for its own files, a package's name otherwise. */
function importsOf(file: string): Import[] {
  const text = readFileSync(join(root, file), 'utf8').replace(/^\s*(\/\*\*| \*|\/\/).*$/gm, '')
  return [...text.matchAll(STATEMENT)].map((match) => {
    const named = (match[2] ?? match[3]) as string
    const target = named.startsWith('.') ? posix.join(dirname(file), named) : named
    return { file, target, typeOnly: match[1] !== undefined }
  })
}

/** The row of the table that a path belongs to; a package or data file is its own. */
function placeOf(path: string): string {
  const [top = '', next = ''] = path.split('/')
  if (top === 'src') return next
  if (top === 'shared') return top
  return path
}

function mayImport(from: string, to: string): boolean {
  return (ARROW[from] ?? []).some(
    (allowed) =>
      allowed === '*' ||
      (allowed.endsWith(':*') && to.startsWith(allowed.slice(0, -1))) ||
      to === allowed ||
      to.startsWith(`${allowed}/`),
  )
}

const all = [...files('src'), ...files('shared')]
const imports = all.flatMap(importsOf)

describe('the way of data', () => {
  it('reads the imports of every file', () => {
    expect(all.length).toBeGreaterThan(150)
    expect(imports.length).toBeGreaterThan(500)
    expect(importsOf('src/app.ts').map(({ target }) => target)).toContain('src/api/routes.ts')
    expect(importsOf('shared/fact-keys.ts')).toContainEqual({
      file: 'shared/fact-keys.ts',
      target: 'rules/facts.json',
      typeOnly: false,
    })
  })

  it('has a row for every folder and file at the top of src', () => {
    const places = new Set(all.map(placeOf))
    const rows = Object.keys(ARROW)
    expect([...places].filter((place) => !rows.includes(place))).toEqual([])
  })

  it('goes one way: no import against the arrow', () => {
    const against = imports
      .filter(({ file, target }) => placeOf(file) !== placeOf(target))
      .filter(({ file, target }) => !mayImport(placeOf(file), placeOf(target)))
      .map(({ file, target }) => `${file} imports ${target}`)
    expect(against).toEqual([])
  })

  it('has a table without a way back', () => {
    const rows = Object.keys(ARROW)
    const reach = (from: string, seen: Set<string>): Set<string> => {
      for (const to of ARROW[from] ?? []) {
        if (!rows.includes(to) || seen.has(to)) continue
        seen.add(to)
        reach(to, seen)
      }
      return seen
    }
    expect(rows.filter((row) => reach(row, new Set()).has(row))).toEqual([])
  })

  it('lets no two files need each other to load', () => {
    const needs = new Map<string, string[]>()
    for (const { file, target, typeOnly } of imports) {
      if (typeOnly || !all.includes(target)) continue
      needs.set(file, [...(needs.get(file) ?? []), target])
    }
    const looped = all.filter((file) => {
      const seen = new Set<string>()
      const open = [...(needs.get(file) ?? [])]
      for (let next = open.pop(); next !== undefined; next = open.pop()) {
        if (seen.has(next)) continue
        seen.add(next)
        open.push(...(needs.get(next) ?? []))
      }
      return seen.has(file)
    })
    expect(looped).toEqual([])
  })

  it.each([
    ['mechanics', 'shared'],
    ['shared', 'build'],
    ['build', 'facts'],
    ['rulebook', 'pages'],
    ['talk', 'pages'],
    ['pages', 'api'],
    ['api', 'site'],
    ['browser', 'pages'],
  ])('does not let %s import %s', (from, to) => expect(mayImport(from, to)).toBe(false))
})
