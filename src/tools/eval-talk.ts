import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { type Answer, type Answers, readAnswer, readAnswers } from '../../shared/answers.ts'
import type { FactKey } from '../../shared/fact-keys.ts'
import { createReader, type MessageReader } from '../answers/read-message.ts'
import type { Understanding } from '../answers/understanding.ts'
import { vocabularyFromFiles } from '../answers/vocabulary-files.ts'
import { readFolder } from '../rulebook/read-folder.ts'

/** A message with what a careful builder would understand of it. */
export interface TalkCase {
  readonly text: string
  readonly asking?: FactKey
  readonly answers?: Readonly<Record<string, unknown>>
  /** Facts in any form that an answer may have. */
  readonly facts: Readonly<Record<string, unknown>>
  readonly intent: Understanding['intent']
  readonly topic?: string
  /** Holds figures or parts that are not to be taken for facts. */
  readonly trap?: boolean
}

/** How many messages were read rightly, and how many facts of those there were. */
export interface TalkScore {
  readonly messages: number
  readonly exact: number
  readonly rightFacts: number
  readonly foundFacts: number
  readonly expectedFacts: number
  readonly rightIntents: number
  readonly misses: readonly string[]
}

/** Every case of the evaluation set, by file. */
export function talkCases(
  folder = new URL('../../tests/talk/', import.meta.url),
): Map<string, TalkCase[]> {
  const files = readdirSync(folder)
    .filter((name) => name.endsWith('.json'))
    .sort()
  return new Map(
    files.map((name) => [
      name,
      JSON.parse(readFileSync(new URL(name, folder), 'utf8')) as TalkCase[],
    ]),
  )
}

/** Read every case and count. */
export function scoreTalk(cases: readonly TalkCase[], { read }: MessageReader): TalkScore {
  let [exact, rightFacts, foundFacts, expectedFacts, rightIntents] = [0, 0, 0, 0, 0]
  const misses: string[] = []
  for (const talk of cases) {
    const found = read(talk.text, context(talk))
    const expected = expectedOf(talk)
    const right = [...expected].filter(([key, answer]) => same(found.facts[key], answer)).length
    const got = Object.keys(found.facts).length
    const intentRight =
      found.intent === talk.intent && (talk.topic === undefined || found.topic === talk.topic)
    rightFacts += right
    foundFacts += got
    expectedFacts += expected.size
    if (intentRight) rightIntents += 1
    if (intentRight && right === expected.size && right === got) exact += 1
    else misses.push(missed(talk, expected, found))
  }
  return {
    messages: cases.length,
    exact,
    rightFacts,
    foundFacts,
    expectedFacts,
    rightIntents,
    misses,
  }
}

function context({ asking, answers }: TalkCase): { asking?: FactKey; answers?: Answers } {
  return {
    ...(asking ? { asking } : {}),
    ...(answers ? { answers: readAnswers(answers).answers } : {}),
  }
}

function expectedOf({ facts, text }: TalkCase): Map<FactKey, Answer> {
  const expected = new Map<FactKey, Answer>()
  for (const [key, raw] of Object.entries(facts)) {
    const read = readAnswer(key as FactKey, raw)
    if ('problem' in read)
      throw new Error(`"${text}": ${key} is ${read.problem.found}; ${read.problem.fits}`)
    expected.set(key as FactKey, read.ok)
  }
  return expected
}

function same(a: Answer | undefined, b: Answer): boolean {
  if (typeof a !== 'object' || typeof b !== 'object') return a === b
  const [left, right] = [Object.entries(a).sort(), Object.entries(b).sort()]
  return JSON.stringify(left) === JSON.stringify(right)
}

function missed(
  talk: TalkCase,
  expected: ReadonlyMap<FactKey, Answer>,
  found: Understanding,
): string {
  const wanted = JSON.stringify(Object.fromEntries(expected))
  const intents = `${talk.intent}${talk.topic ? ` (${talk.topic})` : ''} / ${found.intent}${found.topic ? ` (${found.topic})` : ''}`
  return `${talk.text}\n    wanted ${wanted}\n    found  ${JSON.stringify(found.facts)}\n    intent ${intents}`
}

function percent(part: number, whole: number): string {
  return whole === 0 ? '–' : `${((100 * part) / whole).toFixed(2)} %`
}

function print(name: string, score: TalkScore): void {
  console.log(
    `${name}: ${score.messages} messages, exact ${percent(score.exact, score.messages)}, ` +
      `fact precision ${percent(score.rightFacts, score.foundFacts)}, ` +
      `recall ${percent(score.rightFacts, score.expectedFacts)}, ` +
      `intent ${percent(score.rightIntents, score.messages)}`,
  )
  for (const miss of score.misses) console.log(`  ${miss}`)
}

if (process.argv[1]?.endsWith('eval-talk.ts')) {
  const all = talkCases()
  const rules = fileURLToPath(new URL('../../rules', import.meta.url))
  const reader = createReader(vocabularyFromFiles(readFolder(rules)))
  for (const [name, cases] of all) print(name, scoreTalk(cases, reader))
  print('all', { ...scoreTalk([...all.values()].flat(), reader), misses: [] })
}
