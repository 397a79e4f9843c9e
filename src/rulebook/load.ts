import { z } from 'zod'
import { FACT_KEYS } from '../../shared/fact-keys.ts'
import { readJsonFile } from '../../shared/json-text.ts'
import { builtFactsFaults } from './built-facts.ts'
import { conditionFaults } from './check-conditions.ts'
import { checkReferences } from './references.ts'
import { type Route, type Rule, routesSchema, ruleSchema } from './schema.ts'
import { type CallWords, callSchema } from './schema-call.ts'
import { type CostTable, costSchema } from './schema-cost.ts'
import {
  type AssumptionRule,
  assumptionSchema,
  type Change,
  type ComputedFact,
  changeSchema,
  computedFactSchema,
  type Fastening,
  type FollowOn,
  fasteningSchema,
  followOnSchema,
  forEachChoice,
  type Holding,
  holdingSchema,
  type JointConstants,
  jointSchema,
  type LoadCases,
  loadCasesSchema,
  type Preset,
  presetSchema,
  type Question,
  questionSchema,
  type Relevance,
  relevanceSchema,
  type ScatterRule,
  scatterSchema,
} from './schema-tables.ts'

/** All of rules/, validated. Nothing in it changes after it is loaded. */
export interface Rulebook {
  readonly version: string
  /** Sorted by id. */
  readonly rules: readonly Rule[]
  /** Which file each rule stands in, for the rule pages. */
  readonly fileOf: ReadonlyMap<string, string>
  readonly routes: readonly Route[]
  readonly assumptions: Readonly<Record<string, AssumptionRule>>
  readonly relevance: Readonly<Record<string, Relevance>>
  readonly scatter: readonly ScatterRule[]
  readonly cost: CostTable
  readonly fastenings: Readonly<Record<string, Fastening>>
  readonly holding: Holding
  readonly callWords: CallWords
  readonly joint: JointConstants
  readonly loadCases: LoadCases
  readonly questions: readonly Question[]
  readonly presets: readonly Preset[]
  readonly changes: readonly Change[]
  readonly computedFacts: Readonly<Record<string, ComputedFact>>
  readonly followOn: Readonly<Record<string, FollowOn>>
}

/** More faults than these say that it is another folder. */
const MOST_NAMED = 60

/** No rule needs more lists and objects in each other. */
const DEEPEST = 32

/** A fault in an operator's file: which file, where in it, and what is wrong. */
export class RulebookError extends Error {
  readonly faults: readonly string[]
  constructor(faults: readonly string[]) {
    const left = faults.length - MOST_NAMED
    const named = [...faults.slice(0, MOST_NAMED), ...(left > 0 ? [`and ${left} more`] : [])]
    super(`the rulebook cannot be used:\n  ${named.join('\n  ')}`)
    this.name = 'RulebookError'
    this.faults = faults
  }
}

const DATA = {
  'assumptions.json': z.record(z.string(), assumptionSchema),
  'changes.json': z.array(changeSchema).min(1),
  'computed-facts.json': z.record(z.string(), computedFactSchema),
  'call.json': callSchema,
  'cost.json': costSchema,
  'fastenings.json': forEachChoice('capFastening', fasteningSchema),
  'follow-on.json': z.record(z.string(), followOnSchema),
  'holding.json': holdingSchema,
  'joint.json': jointSchema,
  'load-cases.json': loadCasesSchema,
  'presets.json': z.array(presetSchema),
  'questions.json': z.array(questionSchema),
  'relevance.json': z.record(z.string(), relevanceSchema),
  'routes.json': routesSchema,
  'scatter.json': z.array(scatterSchema),
}

/** The dictionary of facts, which was built in. */
const FACTS = 'facts.json'
/** Files in rules/ that other parts of the project read. */
const ELSEWHERE = /^(check-in|limits|parts|sheet)\.json$|^(sources|vocabulary)\//

/**
 * Make the rulebook from the texts of the files in rules/.
 *
 * @param files - path below rules/ → text; order does not matter
 * @throws {RulebookError} naming file, entry and field of every fault found
 */
export function loadRulebook(files: ReadonlyMap<string, string>): Rulebook {
  const faults: string[] = []
  const data = new Map<string, unknown>()
  const rules: Rule[] = []
  const fileOf = new Map<string, string>()
  for (const name of [...files.keys()].sort()) {
    if (!name.endsWith('.json') || ELSEWHERE.test(name)) continue
    const read = readJsonFile(files.get(name) as string)
    if ('fault' in read) {
      faults.push(`${name}: ${read.fault}`)
      continue
    }
    const json = read.value
    if (name === FACTS) faults.push(...builtFactsFaults(json))
    else if (Object.hasOwn(DATA, name)) {
      data.set(name, check(name, DATA[name as keyof typeof DATA], json, faults))
    } else {
      for (const rule of readRules(name, json, faults)) {
        if (fileOf.has(rule.id))
          faults.push(`${name}: ${rule.id}: id: used twice, also in ${fileOf.get(rule.id)}`)
        fileOf.set(rule.id, name)
        rules.push(rule)
      }
    }
  }
  for (const name of [FACTS, ...Object.keys(DATA)])
    if (!files.has(name)) faults.push(`${name}: the file is missing`)
  if (faults.length > 0) throw new RulebookError(faults)
  const rulebook = assemble(data, rules, fileOf)
  const references = checkReferences(rulebook, FACT_KEYS)
  if (references.length > 0) throw new RulebookError(references)
  return rulebook
}

function assemble(
  data: ReadonlyMap<string, unknown>,
  rules: readonly Rule[],
  fileOf: ReadonlyMap<string, string>,
): Rulebook {
  const part = <K extends keyof typeof DATA>(name: K) =>
    data.get(name) as z.output<(typeof DATA)[K]>
  const changes = part('changes.json')
  return {
    version: (changes.at(-1) as Change).version,
    rules: [...rules].sort((a, b) => (a.id < b.id ? -1 : 1)),
    fileOf,
    routes: part('routes.json'),
    assumptions: part('assumptions.json'),
    relevance: part('relevance.json'),
    scatter: part('scatter.json'),
    cost: part('cost.json'),
    fastenings: part('fastenings.json'),
    holding: part('holding.json'),
    callWords: part('call.json'),
    joint: part('joint.json'),
    loadCases: part('load-cases.json'),
    questions: part('questions.json'),
    presets: part('presets.json'),
    changes,
    computedFacts: part('computed-facts.json'),
    followOn: part('follow-on.json'),
  }
}

function readRules(name: string, json: unknown, faults: string[]): Rule[] {
  if (!Array.isArray(json)) {
    faults.push(`${name}: must be an array of rules`)
    return []
  }
  return json.flatMap((entry, index) => {
    const named = typeof entry?.id === 'string' ? entry.id : `entry ${index + 1}`
    const place = `${name}: ${named}`
    // What walks conditions goes down with them.
    if (isDeeperThan(DEEPEST, entry)) {
      faults.push(`${place}: is nested deeper than ${DEEPEST}`)
      return []
    }
    const plain = conditionFaults(entry?.conditions).map((fault) => `${place}: ${fault}`)
    faults.push(...plain)
    // The schema would say the same of the conditions again, in fewer words.
    const said = plain.length > 0 ? (field: string) => field === 'conditions' : () => false
    return check(place, ruleSchema, entry, faults, said) ?? []
  })
}

/** Whether lists and objects stand in each other more than so many deep. */
function isDeeperThan(most: number, value: unknown): boolean {
  if (typeof value !== 'object' || value === null) return false
  return most === 0 || Object.values(value).some((part) => isDeeperThan(most - 1, part))
}

function check<S extends z.ZodType>(
  place: string,
  schema: S,
  json: unknown,
  faults: string[],
  saidAlready: (field: string) => boolean = () => false,
): z.output<S> | undefined {
  const parsed = schema.safeParse(json)
  if (parsed.success) return parsed.data
  for (const issue of parsed.error.issues) {
    if (saidAlready(String(issue.path[0]))) continue
    faults.push(`${place}: ${issue.path.join('.') || 'entry'}: ${issue.message}`)
  }
  return undefined
}
