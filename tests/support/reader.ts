import { createReader, type MessageReader } from '../../src/answers/read-message.ts'
import { vocabularyFromFiles } from '../../src/answers/vocabulary-files.ts'
import { ruleTexts } from './rulebook.ts'

/** A reader of the project's own vocabulary. */
export const reader = createReader(vocabularyFromFiles(ruleTexts()))

/** Reads a message by it. */
export const readMessage = reader.read

/** A file of the vocabulary as it stands, for a test to change. */
export function vocabularyFile<T>(name: string): T {
  return JSON.parse(ruleTexts().get(`vocabulary/${name}`) as string) as T
}

/** The texts of rules/ with files of the vocabulary written anew, or added. */
export function withVocabulary(files: Readonly<Record<string, unknown>>): Map<string, string> {
  const texts = ruleTexts()
  for (const [name, json] of Object.entries(files)) {
    texts.set(`vocabulary/${name}`, JSON.stringify(json))
  }
  return texts
}

/** What reads by such a vocabulary. */
export function readerWith(files: Readonly<Record<string, unknown>>): MessageReader['read'] {
  return createReader(vocabularyFromFiles(withVocabulary(files))).read
}
