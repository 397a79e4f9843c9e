import type { z } from 'zod'
import { readJsonFile } from '../../shared/json-text.ts'
import { type CheckInRules, checkInFile } from './check-in-rules.ts'
import { limitsFile } from './limit-rules.ts'
import { partsFile } from './part-rules.ts'
import { type SheetRules, sheetFile } from './sheet-rules.ts'

/**
 * What the shop sheet and the check-in decide by and say: limits of measures and gauges, the parts,
 * work and questions that are often forgotten, and the sentences of both. All of it is data in
 * rules/limits.json, rules/parts.json, rules/sheet.json and rules/check-in.json, each fact of the
 * trade with its source.
 */
export type ShopRules = z.infer<typeof limitsFile> & {
  readonly often: z.infer<typeof partsFile>
  readonly sheet: SheetRules
  readonly checkIn: CheckInRules
}

/** Faults in these files: file, field and what is wrong. */
export class ShopRulesError extends Error {
  constructor(readonly faults: readonly string[]) {
    super(`the shop's rules cannot be used:\n  ${faults.join('\n  ')}`)
    this.name = 'ShopRulesError'
  }
}

/**
 * Read limits, parts and sentences from the texts of rules/.
 *
 * @param files - path below rules/ → text, as `readFolder` gives it
 * @throws {ShopRulesError} naming file and field of every fault found
 */
export function loadShopRules(files: ReadonlyMap<string, string>): ShopRules {
  const faults: string[] = []
  const limits = readFile(files, 'limits.json', limitsFile, faults)
  const often = readFile(files, 'parts.json', partsFile, faults)
  const sheet = readFile(files, 'sheet.json', sheetFile, faults)
  const checkIn = readFile(files, 'check-in.json', checkInFile, faults)
  if (!limits || !often || !sheet || !checkIn) throw new ShopRulesError(faults)
  return { ...limits, often, sheet, checkIn }
}

function readFile<S extends z.ZodType>(
  files: ReadonlyMap<string, string>,
  name: string,
  schema: S,
  faults: string[],
): z.output<S> | undefined {
  const text = files.get(name)
  if (text === undefined) return void faults.push(`${name}: the file is missing`)
  const json = readJsonFile(text)
  if ('fault' in json) return void faults.push(`${name}: ${json.fault}`)
  const parsed = schema.safeParse(json.value)
  if (parsed.success) return parsed.data
  for (const { path, message } of parsed.error.issues) {
    faults.push(`${name}: ${path.join('.') || 'file'}: ${message}`)
  }
  return undefined
}
