import { readAnswers } from '../../shared/answers.ts'
import { buildFromAnswers } from '../../src/build/from-answers.ts'
import { type CheckInReport, checkIn } from '../../src/check-in/check-in.ts'
import { loadRulebook } from '../../src/rulebook/load.ts'
import { readFolder } from '../../src/rulebook/read-folder.ts'
import { type EngineCase, engineCase } from '../../src/shop-sheet/engine-case.ts'
import type { Measured } from '../../src/shop-sheet/link-code.ts'
import { loadShopRules } from '../../src/shop-sheet/shop-rules.ts'

const files = readFolder(new URL('../../rules', import.meta.url).pathname)
export const rulebook = loadRulebook(files)
export const shopRules = loadShopRules(files)

/** An invented V8 with five mains of 2.44845 in, housings of 2.6406 to 2.6415 in. */
export const ANSWERS: Readonly<Record<string, string>> = {
  layout: 'v8-cross-plane',
  bore: '4in',
  stroke: '3.5in',
  rodLength: '6in',
  compressionRatio: '10',
  mainJournalDiameter: '2.44845in',
  blockMaterial: 'gray-iron',
  capMaterial: 'gray-iron',
  use: 'street',
}

export function engineOf(answers: Readonly<Record<string, string>> = ANSWERS): EngineCase {
  const read = readAnswers(answers)
  if (read.problems.length > 0) throw new Error(JSON.stringify(read.problems))
  return engineCase(buildFromAnswers(rulebook, read.answers), 'steel-caps', rulebook)
}

const HOUSING = ['fv', 'fl', 'fr', 'rv', 'rl', 'rr']
const JOURNAL = ['fv', 'fh', 'rv', 'rh']

/** Five mains, every one as it should be: clearance 0.00215 in upright, eccentric by 0.0006 in. */
export function goodBlock(changes: Readonly<Record<string, string>> = {}): Measured {
  const fields: Record<string, string> = { housingLow: '2.6406', housingHigh: '2.6415' }
  for (let main = 1; main <= 5; main++) {
    for (const column of HOUSING) fields[`housing.${main}.${column}`] = '2.6412'
    for (const column of JOURNAL) fields[`journal.${main}.${column}`] = '2.44845'
    for (const column of ['uc', 'lc']) fields[`shell.${main}.${column}`] = '.0953'
    for (const column of ['up', 'lp']) fields[`shell.${main}.${column}`] = '.0950'
    fields[`line.${main}.y`] = '0'
  }
  return { unit: 'in', fields: { ...fields, ...changes } }
}

export function check(measured: Measured, engine: EngineCase = engineOf()): CheckInReport {
  return checkIn(measured, engine, shopRules, 'us')
}

/** One measure of one main, or of the whole engine when no main is named. */
export function measure(report: CheckInReport, id: string, main?: number) {
  const judged =
    main === undefined
      ? report.whole.flatMap((part) => part.judged)
      : (report.mains[main - 1]?.judged ?? [])
  const found = judged.find((one) => one.id === id)
  if (!found) throw new Error(`${id} was not measured`)
  return found
}
