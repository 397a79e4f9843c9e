import { OPERATORS } from './schema.ts'

const JOINERS = ['all', 'any', 'not'] as const

/** Words of json-rules-engine that a rule may not use, and why. */
const REFUSED: Readonly<Record<string, string>> = {
  path: 'a fact is one flat value, so there is nothing for a path to reach into',
  params: 'facts take no parameters',
  priority: 'rules are sorted by id and each sees the same facts, so none comes before another',
  name: 'the rule carries the id; a part of it has none',
  condition: 'shared conditions are not used; write the condition out',
}

/**
 * What is wrong with the conditions of a rule as they stand in the file, in plain
 * words. The schema refuses the same shapes, but can only say that they do not fit;
 * json-rules-engine would take some of them (an empty `all` or `any` for true, an
 * unknown operator for never) without a word.
 *
 * @param json - the value of `conditions`
 * @returns one line for each fault, with the place within the conditions; none when all is well
 */
export function conditionFaults(json: unknown): string[] {
  const joined = isRecord(json) && ('all' in json || 'any' in json)
  if (!joined) return ['conditions: the root must have `all` or `any`']
  return faultsAt(json, 'conditions')
}

function faultsAt(json: unknown, place: string): string[] {
  if (!isRecord(json)) return [`${place}: must be a comparison, or \`all\`, \`any\` or \`not\``]
  const refused = Object.keys(json).flatMap((key) =>
    Object.hasOwn(REFUSED, key) ? [`${place}: \`${key}\` is refused: ${REFUSED[key]}`] : [],
  )
  const joiners = JOINERS.filter((key) => key in json)
  if (joiners.length === 0) return [...refused, ...leafFaults(json, place)]
  const strangers = Object.keys(json).filter(
    (key) => !joiners.some((joiner) => joiner === key) && !Object.hasOwn(REFUSED, key),
  )
  const mixed =
    joiners.length + strangers.length > 1
      ? [`${place}: has ${[...joiners, ...strangers].map(quoted).join(' and ')}; keep one of them`]
      : []
  return [...refused, ...mixed, ...joiners.flatMap((key) => partFaults(json[key], key, place))]
}

function partFaults(part: unknown, joiner: (typeof JOINERS)[number], place: string): string[] {
  if (joiner === 'not') return faultsAt(part, `${place}.not`)
  if (!Array.isArray(part)) return [`${place}.${joiner}: must be a list`]
  if (part.length === 0) {
    return [`${place}.${joiner}: is empty, which the engine would take for true`]
  }
  return part.flatMap((one, index) => faultsAt(one, `${place}.${joiner}.${index}`))
}

function leafFaults(json: Record<string, unknown>, place: string): string[] {
  const missing = ['fact', 'operator', 'value'].filter((key) => !(key in json))
  const { operator } = json
  const strange =
    operator !== undefined && !(OPERATORS as readonly unknown[]).includes(operator)
      ? [`${place}: no operator is called "${String(operator)}"; use ${OPERATORS.join(', ')}`]
      : []
  return [
    ...missing.map((key) => `${place}: \`${key}\` is missing`),
    ...strange,
    ...valueFaults(String(operator), json.value, place),
  ]
}

/** A list where one value is compared, or the other way round, would never be true. */
function valueFaults(operator: string, value: unknown, place: string): string[] {
  const lists = operator === 'in' || operator === 'notIn'
  const ordered = operator.startsWith('less') || operator.startsWith('greater')
  if (value === undefined) return []
  if (lists !== Array.isArray(value)) {
    return [`${place}: \`${operator}\` compares with ${lists ? 'a list' : 'one value'}`]
  }
  const figure = typeof value === 'number' || (isRecord(value) && 'fact' in value)
  return ordered && !figure ? [`${place}: \`${operator}\` compares with a figure or a fact`] : []
}

function quoted(key: string): string {
  return `\`${key}\``
}

function isRecord(json: unknown): json is Record<string, unknown> {
  return typeof json === 'object' && json !== null && !Array.isArray(json)
}
