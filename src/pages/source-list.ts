import { z } from 'zod'
import { readJsonFile } from '../../shared/json-text.ts'
import { each, type Html, html, NOTHING } from './html.ts'

/** One source of the mechanics, the rules or the explanations, as in rules/sources/. */
const sourceRecord = z.strictObject({
  id: z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*$/),
  /** `memory`: a work is named, but was not at hand when its figures were written down. */
  kind: z.enum(['published', 'practice', 'memory']),
  topic: z.enum(['gas', 'crank', 'joint', 'strength', 'machining', 'chance', 'money', 'general']),
  author: z.string(),
  title: z.string().min(1),
  edition: z.string(),
  /** Equation, table or section. */
  place: z.string(),
  usedFor: z.string().min(1),
  /** How it was read. */
  seen: z.string(),
})
export type SourceRecord = z.infer<typeof sourceRecord>

/**
 * The records of rules/sources/, one file a topic, in the order of their ids.
 *
 * @param files - path below rules/ → text; other files are passed over
 * @throws {Error} naming the file, and the record and field that does not fit
 */
export function readSources(files: ReadonlyMap<string, string>): readonly SourceRecord[] {
  const texts = [...files].filter(([name]) => name.startsWith('sources/'))
  if (texts.length === 0) throw new Error('sources/: the files are missing')
  const records = texts.flatMap(([name, text]) => {
    const json = readJsonFile(text)
    if ('fault' in json) throw new Error(`${name}: ${json.fault}`)
    try {
      return z.array(sourceRecord).parse(json.value)
    } catch (error) {
      throw new Error(`${name}: ${(error as Error).message}`, { cause: error })
    }
  })
  return records.sort((a, b) => (a.id < b.id ? -1 : 1))
}

export const KIND_WORDS = {
  published: 'published',
  memory: 'from memory',
  practice: 'common practice, no published source',
} as const

/** Author, title and edition of the work. */
function workWords({ author, title, edition }: SourceRecord): Html {
  return html`${author === '' ? NOTHING : html`${author}, `}<cite>${title}</cite>${edition === '' ? NOTHING : `, ${edition}`}`
}

/** Sources as a list, each work once: the places in it, what each is used for, how it was read. */
export function sourceList(records: readonly SourceRecord[]): Html {
  const workOf = ({ author, title, edition }: SourceRecord) => `${author}|${title}|${edition}`
  const works = [...new Set(records.map(workOf))]
  return html`<ul class="sources">
${each(works, (work) => workItem(records.filter((record) => workOf(record) === work)))}</ul>`
}

function workItem(records: readonly SourceRecord[]): Html {
  const [first] = records
  if (!first) return NOTHING
  if (records.length === 1)
    return html`<li>${workWords(first)}${first.place === '' ? NOTHING : `, ${first.place}`}. ${useWords(first)}</li>
`
  return html`<li>${workWords(first)}<ul>${each(
    records,
    (record) => html`<li>${sentenceStart(record.place)}. ${useWords(record)}</li>`,
  )}</ul></li>
`
}

function useWords(record: SourceRecord): Html {
  return html`<span class="soft">For: ${record.usedFor}.</span> <span class="tag">${kindAndReading(record)}</span>`
}

function sentenceStart(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`
}

function kindAndReading({ kind, seen }: SourceRecord): string {
  const words = KIND_WORDS[kind]
  return seen === '' ? words : `${words}; ${seen}`
}

/** The records of a document's front-matter line `sources: a, b`, in its order; unknown ids left out. */
export function sourcesNamed(
  line: string | undefined,
  records: readonly SourceRecord[],
): SourceRecord[] {
  const ids = (line ?? '').split(',').map((id) => id.trim())
  return ids.flatMap((id) => records.filter((record) => record.id === id))
}
