/** `npm run --silent ask -- "<free text>"`: the call with its numbers, for people who live in a terminal. */
import { fileURLToPath } from 'node:url'
import { createReader } from '../answers/read-message.ts'
import { vocabularyFromFiles } from '../answers/vocabulary-files.ts'
import { loadRulebook } from '../rulebook/load.ts'
import { readFolder } from '../rulebook/read-folder.ts'
import { askAnswer } from './ask-answer.ts'
import { ASK_USAGE, readAskArguments } from './ask-arguments.ts'

// A reader such as `head` may leave before all is written; that is no fault.
process.stdout.on('error', () => process.exit())

const read = readAskArguments(process.argv.slice(2))
if ('fault' in read) {
  console.error(`ask: ${read.fault}\n\n${ASK_USAGE}`)
  process.exitCode = 2
} else {
  const rules = process.env.RULES_DIR || fileURLToPath(new URL('../../rules', import.meta.url))
  const known = knownFrom(rules)
  const { out, notes, code } = known
    ? await askAnswer(known, read.ok)
    : { out: '', notes: [], code: 1 }
  for (const note of notes) console.error(`ask: ${note}`)
  if (out !== '') console.log(out)
  process.exitCode = code
}

/** Rules and words of a folder; undefined, and said why, when they cannot be used. */
function knownFrom(folder: string) {
  try {
    const files = readFolder(folder)
    return { rulebook: loadRulebook(files), reader: createReader(vocabularyFromFiles(files)) }
  } catch (error) {
    console.error(`ask: ${(error as Error).message}`)
    return undefined
  }
}
