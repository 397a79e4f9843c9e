import { toQuery } from '../../shared/share-link.ts'
import type { Checked } from '../rulebook/check.ts'
import type { Rulebook } from '../rulebook/load.ts'
import type { Sweep } from './rules-sweep.ts'

/** What the rulebook check found. */
export interface RulesReport {
  readonly faults: readonly string[]
  readonly notes: readonly string[]
  readonly figures: readonly string[]
}

/** Put together what was found by reading the rulebook and by trying it on builds. */
export function rulesReport(rulebook: Rulebook, checked: Checked, sweep: Sweep): RulesReport {
  const tried = `in ${sweep.builds} builds`
  const silent = rulebook.rules
    .filter(({ id }) => sweep.fired.get(id) === 0)
    .map(({ id }) => `${rulebook.fileOf.get(id)}: ${id}: never fires ${tried}`)
  const uncalled = [...sweep.called]
    .filter(([, count]) => count === 0)
    .map(([route]) => `routes.json: ${route}: never called ${tried}`)
  const conflicts = [...sweep.conflicts].map(
    ([what, { count, example }]) =>
      `contradictory outcomes: ${what} (${count} builds, such as ${toQuery(example)})`,
  )
  return {
    faults: [...checked.faults, ...silent, ...uncalled, ...conflicts],
    notes: checked.notes,
    figures: figures(rulebook, sweep),
  }
}

function figures(rulebook: Rulebook, sweep: Sweep): string[] {
  const share = (count: number): string => `${((100 * count) / sweep.builds).toFixed(1)} %`
  const rarest = [...sweep.fired].sort(([a, x], [b, y]) => x - y || (a < b ? -1 : 1)).slice(0, 5)
  return [
    `rulebook ${rulebook.version}: ${rulebook.rules.length} rules, ${rulebook.routes.length} routes`,
    `${sweep.builds} builds tried, ${sweep.refused} more refused by the mechanics as out of range`,
    ...[...sweep.called].map(([route, count]) => `called: ${route} ${share(count)}`),
    `withheld for a contradiction: ${share(sweep.withheld)}`,
    `stepped up as insurance: ${share(sweep.steppedUp)}`,
    `rarest rules: ${rarest.map(([id, count]) => `${id} ${count}`).join(', ')}`,
  ]
}

/** The report as text, faults last so that they stay on the screen. */
export function printReport({ faults, notes, figures }: RulesReport): string {
  const lines = (title: string, list: readonly string[]): string =>
    list.length === 0 ? '' : `${title}\n${list.map((line) => `  ${line}\n`).join('')}`
  const verdict =
    faults.length === 0
      ? 'No faults.\n'
      : `${faults.length} fault${faults.length > 1 ? 's' : ''}.\n`
  return [lines('Figures', figures), lines('Notes', notes), lines('Faults', faults), verdict].join(
    '',
  )
}
