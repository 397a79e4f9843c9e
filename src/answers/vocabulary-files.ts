import type { z } from 'zod'
import { readJsonFile } from '../../shared/json-text.ts'
import { phrases } from './phrase-list.ts'
import { type Vocabulary, vocabularySchema } from './vocabulary.ts'

const { shape } = vocabularySchema

/** What each file of rules/vocabulary/ holds; the parts of a list that has no name stand alone. */
const FILES = {
  'answers.json': vocabularySchema.pick({ asked: true, denied: true, ambiguous: true }),
  'clues.json': shape.clues,
  'intents.json': vocabularySchema.pick({
    intents: true,
    keeping: true,
    leaving: true,
    jobQuestions: true,
    routesAsked: true,
    explainMiddle: true,
    octane: true,
  }),
  'markers.json': shape.markers,
  'names.json': shape.names,
  'noise.json': shape.noise,
  'numbers.json': shape.numbers,
  'parts.json': shape.parts.omit({ shadows: true }),
  'questions.json': shape.questions,
  'shadows.json': phrases,
  'spelling.json': shape.spelling,
  'units.json': shape.units,
  'words.json': shape.words,
} as const
type FileName = keyof typeof FILES

/** Choices and cues stand in as many files as there are topics; a shop may add one of its own. */
const CHOICES = /^choices-[\w-]+\.json$/
const CUES = /^cues-[\w-]+\.json$/
/** Their topics in the order in which they count: where two phrases fit alike, the first does. */
const TOPICS = ['engine', 'geometry', 'block', 'caps', 'fasteners', 'plan', 'money']
/** Of these at least one must be there. */
const SEVERAL = [
  ['choices-*.json', CHOICES],
  ['cues-*.json', CUES],
] as const

const FOLDER = 'vocabulary/'

/** A fault in the words of the trade: which files, where in them, and what is wrong. */
export class VocabularyError extends Error {
  override readonly name = 'VocabularyError'

  constructor(readonly faults: readonly string[]) {
    super(`the vocabulary cannot be used:\n  ${faults.join('\n  ')}`)
  }
}

/**
 * The words of the trade from the texts of the files in rules/.
 *
 * @param files - path below rules/ → text; order does not matter, others are left aside
 * @throws {VocabularyError} naming file, place and reason of every fault found
 */
export function vocabularyFromFiles(files: ReadonlyMap<string, string>): Vocabulary {
  const own = [...files].flatMap(([path, text]): [string, string][] =>
    path.startsWith(FOLDER) ? [[path.slice(FOLDER.length), text]] : [],
  )
  const texts = new Map(own.sort(([a], [b]) => (a < b ? -1 : 1)))
  const faults: string[] = missing(texts)
  const read = new Map([...texts].map(([name, text]) => [name, readFile(name, text, faults)]))
  if (faults.length > 0) throw new VocabularyError(faults)
  const file = <N extends FileName>(name: N) => read.get(name) as z.output<(typeof FILES)[N]>
  const inOrder = [...read].sort(([a], [b]) => topicRank(a) - topicRank(b))
  const several = <T>(pattern: RegExp) =>
    inOrder.flatMap(([name, part]) => (pattern.test(name) ? [part as T] : []))
  return {
    ...file('answers.json'),
    ...file('intents.json'),
    choices: merged(several<Vocabulary['choices']>(CHOICES)),
    clues: file('clues.json'),
    cues: several<Vocabulary['cues']>(CUES).flat(),
    markers: file('markers.json'),
    names: file('names.json'),
    noise: file('noise.json'),
    numbers: file('numbers.json'),
    parts: { ...file('parts.json'), shadows: file('shadows.json') },
    questions: file('questions.json'),
    spelling: file('spelling.json'),
    units: file('units.json'),
    words: file('words.json'),
  }
}

/** A shop's own topics come last, by name. */
function topicRank(name: string): number {
  const place = TOPICS.indexOf(/^\w+-(.*)\.json$/.exec(name)?.[1] ?? '')
  return place < 0 ? TOPICS.length : place
}

function missing(texts: ReadonlyMap<string, string>): string[] {
  const names = [...texts.keys()]
  return [
    ...Object.keys(FILES).filter((name) => !texts.has(name)),
    ...SEVERAL.flatMap(([name, pattern]) => (names.some((one) => pattern.test(one)) ? [] : [name])),
  ].map((name) => `${FOLDER}${name}: the file is missing`)
}

function schemaOf(name: string): z.ZodType | undefined {
  if (CHOICES.test(name)) return shape.choices
  if (CUES.test(name)) return shape.cues
  return Object.hasOwn(FILES, name) ? FILES[name as FileName] : undefined
}

function readFile(name: string, text: string, faults: string[]): unknown {
  const place = `${FOLDER}${name}`
  const schema = schemaOf(name)
  if (!schema) {
    const known = [...Object.keys(FILES), ...SEVERAL.map(([one]) => one)].join(', ')
    faults.push(`${place}: no file of the vocabulary is called that; use ${known}`)
    return undefined
  }
  const json = readJsonFile(text)
  if ('fault' in json) {
    faults.push(`${place}: ${json.fault}`)
    return undefined
  }
  const parsed = schema.safeParse(json.value)
  if (parsed.success) return parsed.data
  for (const issue of parsed.error.issues) {
    // What is wrong with a key stands inside of it.
    const why = issue.code === 'invalid_key' ? (issue.issues[0] ?? issue) : issue
    faults.push(`${place}: ${issue.path.join('.') || 'the whole file'}: ${why.message}`)
  }
  return undefined
}

/** Words of one choice from several files are all of them. */
function merged(parts: readonly Vocabulary['choices'][]): Vocabulary['choices'] {
  const all: Record<string, Record<string, string[]>> = {}
  for (const [key, values] of parts.flatMap((part) => Object.entries(part))) {
    const into = all[key] ?? {}
    all[key] = into
    for (const [value, words] of Object.entries(values)) {
      into[value] = [...(into[value] ?? []), ...words]
    }
  }
  return all
}
