import type { Answers } from '../../shared/answers.ts'
import type { RouteId } from '../../shared/route-ids.ts'
import type { Rulebook } from '../rulebook/load.ts'
import type { Rule } from '../rulebook/schema.ts'
import type { Change } from '../rulebook/schema-tables.ts'
import { whatIf } from './quick-call.ts'

/** What has become of a link that was made with an older rulebook. */
export interface SinceVersion {
  readonly from: string
  readonly to: string
  /** False when this rulebook does not list the link's version: nothing can be compared. */
  readonly known: boolean
  /** What changed since, oldest first. */
  readonly changes: readonly Change[]
  /** The call by the older rules, as far as the changes say what those were. */
  readonly then: RouteId | null
  readonly now: RouteId | null
  /** Rules any one of which, put back as it was, gives the older call again. */
  readonly because: readonly { readonly version: string; readonly rule: string }[]
}

/**
 * Whether the call of a link has changed since the rulebook that it was made with,
 * and by which rule.
 *
 * @param version - the rulebook version in the link
 * @param rulebook - the present one; its changes say how each changed rule was before
 * @returns undefined when the link is of this version or of none
 */
export async function sinceVersion(
  answers: Answers,
  version: string | undefined,
  rulebook: Rulebook,
): Promise<SinceVersion | undefined> {
  if (version === undefined || version === rulebook.version) return undefined
  const known = rulebook.changes.some((change) => change.version === version)
  const changes = known ? rulebook.changes.filter((change) => isLater(change.version, version)) : []
  const call = async (rules: readonly Rule[]): Promise<RouteId | null> =>
    (await whatIf({ ...rulebook, rules })(answers))?.route ?? null
  const now = await call(rulebook.rules)
  const then = changes.length > 0 ? await call(undoAll(rulebook.rules, changes)) : now
  const because = then === now ? [] : await tipping(rulebook, changes, now, call)
  return { from: version, to: rulebook.version, known, changes, then, now, because }
}

/** Rules as they were before a list of changes: the newest is undone first. */
function undoAll(rules: readonly Rule[], changes: readonly Change[]): readonly Rule[] {
  return changes.toReversed().reduce((left, { was = {} }) => undo(left, was), rules)
}

function undo(rules: readonly Rule[], was: Readonly<Record<string, Rule | null>>): readonly Rule[] {
  const kept = rules.filter(({ id }) => !Object.hasOwn(was, id))
  const back = Object.values(was).filter((rule) => rule !== null)
  return [...kept, ...back].sort((a, b) => (a.id < b.id ? -1 : 1))
}

async function tipping(
  rulebook: Rulebook,
  changes: readonly Change[],
  now: RouteId | null,
  call: (rules: readonly Rule[]) => Promise<RouteId | null>,
): Promise<SinceVersion['because']> {
  const found: { version: string; rule: string }[] = []
  for (const { version, was = {} } of changes) {
    for (const [rule, before] of Object.entries(was)) {
      if ((await call(undo(rulebook.rules, { [rule]: before }))) !== now)
        found.push({ version, rule })
    }
  }
  return found
}

function isLater(one: string, other: string): boolean {
  const [left, right] = [one, other].map((text) => text.split('.').map(Number))
  for (let part = 0; part < 3; part++) {
    const difference = (left?.[part] ?? 0) - (right?.[part] ?? 0)
    if (difference !== 0) return difference > 0
  }
  return false
}

/** Whether the call has changed, in a sentence or two. */
export function sinceText(
  { known, then, now, because }: SinceVersion,
  { routes, rules }: Pick<Rulebook, 'routes' | 'rules'>,
): string {
  if (!known) return 'That version is not listed here: the call may differ from the one you saw.'
  if (then === now) return 'The call is the same by both.'
  const title = (id: RouteId | null): string =>
    id === null ? 'no call' : `“${routes.find((route) => route.id === id)?.title ?? id}”`
  const named = because.map(({ rule, version }) => {
    const words = rules.find(({ id }) => id === rule)?.title ?? rule
    return `“${words}” (${version})`
  })
  const cause =
    named.length > 0
      ? `What changed it: ${named.join('; ')}.`
      : 'No one rule alone changed it; several did together.'
  return `The call was ${title(then)} and is now ${title(now)}. ${cause}`
}
