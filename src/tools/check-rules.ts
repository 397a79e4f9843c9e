import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { VocabularyError, vocabularyFromFiles } from '../answers/vocabulary-files.ts'
import { checkRulebook } from '../rulebook/check.ts'
import { buildSeeds, generateAnswers } from '../rulebook/generate-answers.ts'
import { loadRulebook, type Rulebook, RulebookError } from '../rulebook/load.ts'
import { readFolder } from '../rulebook/read-folder.ts'
import { conflictsOf } from './rules-conflicts.ts'
import { printReport, rulesReport } from './rules-report.ts'
import { sweepRules } from './rules-sweep.ts'

/** Builds that are tried when no number is given. */
const BUILDS = 20_000

/**
 * The command `npm run rules [-- builds [folder]]`: checks the whole rulebook, and
 * ends with exit code 1 when it has faults.
 */
async function main([given, folder]: readonly string[]): Promise<number> {
  const builds = given === undefined ? BUILDS : Number(given)
  if (!Number.isInteger(builds) || builds < 1) {
    process.stderr.write(`give a whole number of builds, not "${given}"\n`)
    return 1
  }
  const root = fileURLToPath(new URL('../..', import.meta.url))
  const rulebook = load(folder ?? process.env.RULES_DIR ?? join(root, 'rules'))
  if (!rulebook) return 1
  const seeds = buildSeeds(builds)
  const sweep = await sweepRules(rulebook, seeds.map(generateAnswers), conflictsOf)
  const report = rulesReport(rulebook, checkRulebook(rulebook), sweep)
  process.stdout.write(printReport(report))
  return report.faults.length > 0 ? 1 : 0
}

function load(folder: string): Rulebook | undefined {
  try {
    const files = readFolder(folder)
    vocabularyFromFiles(files)
    return loadRulebook(files)
  } catch (error) {
    if (!(error instanceof RulebookError || error instanceof VocabularyError)) throw error
    process.stderr.write(`${error.message}\n`)
    return undefined
  }
}

main(process.argv.slice(2)).then(
  (code) => {
    process.exitCode = code
  },
  (error: unknown) => {
    process.stderr.write(`${error instanceof Error ? error.stack : String(error)}\n`)
    process.exitCode = 1
  },
)
