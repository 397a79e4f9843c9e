import type { Contradiction, Finding, LiveFact, Source } from '../../shared/assessment.ts'
import { type FactTable, flat } from '../facts/live-facts.ts'
import { placesIn } from '../rulebook/places.ts'
import type { Rule, RuleSource } from '../rulebook/schema.ts'
import { decidingFacts } from './explain.ts'
import { fillPlaces } from './fill-places.ts'

/** A fired rule as a finding: its sentence with live numbers, and the facts that decided it. */
export function findingOf(rule: Rule, table: FactTable): Finding {
  const names = [...decidingFacts(rule, flat(table)), ...placesIn(rule.because)]
  const facts = [...new Set(names)].flatMap((name): LiveFact[] => {
    const found = table.get(name)
    return found && !name.endsWith('Said') ? [found] : []
  })
  return {
    rule: rule.id,
    title: rule.title,
    text: textOf(rule, table),
    severity: rule.severity,
    facts,
    source: sourceOf(rule.source),
  }
}

/** What a fired rule says, with live numbers; without the facts that decided it. */
export function textOf({ because, instead, except }: Rule, table: FactTable): string {
  return [because, instead ?? '', except ?? '']
    .filter(Boolean)
    .map((sentence) => fillPlaces(sentence, table))
    .join(' ')
}

/** A contradiction with its pair, its formula and the likelier slip. */
export function contradictionOf(rule: Rule, table: FactTable): Contradiction {
  const { outcome } = rule
  if (outcome.effect !== 'contradiction') throw new TypeError(`${rule.id} is no contradiction`)
  return {
    ...findingOf(rule, table),
    between: outcome.between.filter(
      (key) => key === outcome.likelierSlip || table.get(`${key}Said`)?.value === true,
    ),
    likelierSlip: outcome.likelierSlip,
    effect: outcome.call,
  }
}

/** A rule's source as pages and API show it; '' where it cites nothing. */
export function sourceOf({ kind, cite }: RuleSource): Source {
  return { kind, cite: cite ?? '' }
}

const SEVERITY = { danger: 0, caution: 1, note: 2 } as const

/** Gravest first, and otherwise in the order that they come in. */
export function gravestFirst<T extends Finding>(findings: readonly T[]): T[] {
  return [...findings].sort((a, b) => SEVERITY[a.severity] - SEVERITY[b.severity])
}

/** Gravest first, then by id: the same findings always stand in the same order. */
export function inOrder<T extends Finding>(findings: readonly T[]): T[] {
  return [...findings].sort(
    (a, b) => SEVERITY[a.severity] - SEVERITY[b.severity] || (a.rule < b.rule ? -1 : 1),
  )
}
