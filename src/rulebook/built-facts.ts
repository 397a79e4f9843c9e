import { FACT_TABLE } from '../../shared/fact-keys.ts'
import { describeFound } from '../../shared/problem.ts'

const FILE = 'facts.json'
const HOW = 'facts are built in: change rules/facts.json of the project and start it with npm start'

/**
 * The dictionary of facts cannot be read anew: the types, the schemas and the browser's scripts
 * follow from the one that was built. Another one in the operator's folder is refused, so that no
 * edit is dropped unsaid.
 *
 * @param json - what rules/facts.json holds now; undefined when it could not be read
 * @returns the first place where it is another one, and what to do
 */
export function builtFactsFaults(json: unknown): string[] {
  const found = difference(json, FACT_TABLE, [])
  if (!found) return []
  const [now, built] = [found.now, found.built].map(words)
  return [
    `${FILE}: ${found.path.join('.') || 'entry'}: is ${now}, and was built as ${built}; ${HOW}`,
  ]
}

interface Difference {
  readonly path: readonly string[]
  readonly now: unknown
  readonly built: unknown
}

function difference(now: unknown, built: unknown, path: readonly string[]): Difference | undefined {
  if (!isParted(now) || !isParted(built) || Array.isArray(now) !== Array.isArray(built)) {
    return Object.is(now, built) ? undefined : { path, now, built }
  }
  const [keys, builtKeys] = [Object.keys(now), Object.keys(built)]
  for (const key of new Set([...builtKeys, ...keys])) {
    const at = (all: object) => (Object.hasOwn(all, key) ? all[key as keyof typeof all] : undefined)
    const inside = difference(at(now), at(built), [...path, key])
    if (inside) return inside
  }
  // Questions, links and pages keep the order of the dictionary.
  const moved = keys.find((key, at) => key !== builtKeys[at])
  return moved === undefined
    ? undefined
    : { path: [...path, moved], now: 'in another place', built: 'in its own' }
}

function isParted(value: unknown): value is object {
  return typeof value === 'object' && value !== null
}

function words(value: unknown): string {
  return value === undefined ? 'missing' : `“${describeFound(value)}”`
}
