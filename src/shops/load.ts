import { readJsonFile } from '../../shared/json-text.ts'
import type { CostTable } from '../rulebook/schema-cost.ts'
import { type Shop, shopSchema } from './schema.ts'

/** Faults in shops' files: which file, where in it, and what would fit. */
export class ShopError extends Error {
  readonly faults: readonly string[]
  constructor(faults: readonly string[]) {
    super(`the shop profiles cannot be used:\n  ${faults.join('\n  ')}`)
    this.name = 'ShopError'
    this.faults = faults
  }
}

/**
 * Shops from the texts of their files, sorted by id.
 *
 * @param files - file name → text; `ridge.json` holds the shop `ridge`
 * @param cost - prices and currencies that a profile may name
 * @throws {ShopError} naming file, field and what would fit for every fault found
 */
export function loadShops(
  files: ReadonlyMap<string, string>,
  cost: Pick<CostTable, 'items' | 'rates'>,
): readonly Shop[] {
  const faults: string[] = []
  const shops = [...files.keys()]
    .filter((name) => name.endsWith('.json'))
    .sort()
    .flatMap((name) => readShop(name, files.get(name) as string, cost, faults))
  if (faults.length > 0) throw new ShopError(faults)
  return shops
}

function readShop(
  name: string,
  text: string,
  cost: Pick<CostTable, 'items' | 'rates'>,
  faults: string[],
): Shop[] {
  const json = readJsonFile(text)
  if ('fault' in json) {
    faults.push(`${name}: ${json.fault}`)
    return []
  }
  const parsed = shopSchema.safeParse(json.value)
  if (!parsed.success) {
    for (const { path, message } of parsed.error.issues) {
      faults.push(`${name}: ${path.map(String).join('.') || 'file'}: ${message}`)
    }
    return []
  }
  const shop = parsed.data
  const found = referenceFaults(name, shop, cost)
  faults.push(...found)
  return found.length > 0 ? [] : [shop]
}

function referenceFaults(
  name: string,
  { id, prices, currency }: Shop,
  { items, rates }: Pick<CostTable, 'items' | 'rates'>,
): string[] {
  const ids = items.map((item) => item.id)
  const unknown = Object.keys(prices).filter((key) => !ids.includes(key))
  return [
    ...(name === `${id}.json` ? [] : [`${name}: id: must be the file's own name, not ${id}`]),
    ...unknown.map((key) => `${name}: prices.${key}: no such item; use ${ids.join(', ')}`),
    ...(Object.hasOwn(rates, currency)
      ? []
      : [`${name}: currency: use one of ${Object.keys(rates).join(', ')}`]),
  ]
}
