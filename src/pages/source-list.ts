import { z } from 'zod'
import { each, type Html, html, NOTHING } from './html.ts'

/** One source of the mechanics, the rules or the explanations, as in rules/sources.json. */
export const sourceRecord = z.strictObject({
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
 * The records of rules/sources.json.
 *
 * @throws {ZodError} naming the record and the field that does not fit
 */
export function readSources(json: string): readonly SourceRecord[] {
  return z.array(sourceRecord).parse(JSON.parse(json))
}

export const KIND_WORDS = {
  published: 'published',
  memory: 'from memory',
  practice: 'common practice, no published source',
} as const

/** Author, title, edition, place. */
export function citation({ author, title, edition, place }: SourceRecord): Html {
  const tail = [edition, place].filter((part) => part !== '').join(', ')
  return html`${author === '' ? NOTHING : html`${author}, `}<cite>${title}</cite>${tail === '' ? NOTHING : `, ${tail}`}`
}

/** Sources as a list: what each is used for and how it was read. */
export function sourceList(records: readonly SourceRecord[]): Html {
  return html`<ul class="sources">
${each(
  records,
  (
    record,
  ) => html`<li id="source-${record.id}">${citation(record)}. <span class="soft">For: ${record.usedFor}.</span> <span class="tag">${kindAndReading(record)}</span></li>
`,
)}</ul>`
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
