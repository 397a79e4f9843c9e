import { choicesOf } from '../../shared/answers.ts'
import { fact } from '../../shared/fact-keys.ts'
import type { Rulebook } from '../rulebook/load.ts'
import { singleField } from './fields.ts'
import { LIMIT_IDS } from './limit-rules.ts'
import { type ShopRules, ShopRulesError } from './shop-rules.ts'

/**
 * Refuse names in the shop's rules that point nowhere: an entry under such a name would never
 * come to be used, and nobody would see it.
 *
 * @throws {ShopRulesError} naming file, entry and name of every fault found
 */
export function checkShopReferences(
  rules: ShopRules,
  { cost, followOn }: Pick<Rulebook, 'cost' | 'followOn'>,
): void {
  const items = new Set(cost.items.map(({ id }) => id))
  const strangers = (place: string, names: readonly string[] = []): string[] =>
    names
      .filter((name) => !items.has(name))
      .map((name) => `${place}: "${name}" is not in cost.json`)
  const { often, sheet } = rules
  const { works, otherwise } = sheet.order
  const before = [...Object.values(works), otherwise].flatMap((work) => work.before ?? [])
  const asked = [...often.parts, ...often.questions, ...often.before, ...often.after]
  const faults = [
    ...LIMIT_IDS.flatMap((id) => limitFaults(id, rules)),
    ...asked.flatMap(({ id, when }) => [
      ...strangers(`parts.json: ${id}: when.work`, when?.work),
      ...strangers(`parts.json: ${id}: when.parts`, when?.parts),
    ]),
    ...before
      .filter((step) => !Object.hasOwn(followOn, step))
      .map((step) => `sheet.json: order: before: "${step}" is not in follow-on.json`),
    ...strangers('sheet.json: order.works', Object.keys(sheet.order.works)),
    ...strangers('sheet.json: order.toldBy', Object.keys(sheet.order.toldBy)),
    ...Object.entries(sheet.order.toldBy)
      .filter(([, step]) => !Object.hasOwn(followOn, step))
      .map(
        ([work, step]) => `sheet.json: order.toldBy.${work}: "${step}" is not in follow-on.json`,
      ),
  ]
  if (faults.length > 0) throw new ShopRulesError(faults)
}

function limitFaults(id: (typeof LIMIT_IDS)[number], { limits }: ShopRules): string[] {
  const { service = {}, uses = {} } = limits[id]
  const fields = Object.values<string | undefined>(service).filter((name) => name !== undefined)
  const known = choicesOf(fact('use'))
  return [
    ...fields
      .filter((name) => singleField(name) === undefined)
      .map((name) => `limits.json: limits.${id}.service: no field is called "${name}"`),
    ...Object.keys(uses)
      .filter((use) => !Object.hasOwn(known, use))
      .map((use) => `limits.json: limits.${id}.uses: "${use}" is no choice of use`),
  ]
}
