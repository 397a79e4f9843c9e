import type { Answers } from '../../shared/answers.ts'
import type { Assessment, Finding } from '../../shared/assessment.ts'
import type { CaseComparison } from '../../shared/comparison.ts'
import { FACT_KEYS, fact } from '../../shared/fact-keys.ts'
import { printAnswer } from '../../shared/print.ts'

/** One of two cases. */
export interface ComparedCase {
  readonly answers: Answers
  readonly assessment: Assessment
}

/** Two cases side by side: answers, numbers, call and reasons. Nothing is computed anew. */
export function compareCases(a: ComparedCase, b: ComparedCase): CaseComparison {
  return {
    sameCall: a.assessment.call.route === b.assessment.call.route,
    a: calledIn(a.assessment),
    b: calledIn(b.assessment),
    answers: answerRows(a.answers, b.answers),
    numbers: numberRows(a.assessment, b.assessment),
    reasons: findingRows(a.assessment.call.reasons, b.assessment.call.reasons),
    cautions: findingRows(a.assessment.cautions, b.assessment.cautions),
  }
}

function calledIn({ call, link }: Assessment): CaseComparison['a'] {
  const { route, title, sentence, confidence } = call
  return { route, title, sentence, confidence, link }
}

function answerRows(a: Answers, b: Answers): CaseComparison['answers'] {
  return FACT_KEYS.flatMap((key) => {
    const [one, other] = [a[key], b[key]]
    if (one === undefined && other === undefined) return []
    const text = (answer: typeof one) => (answer === undefined ? null : printAnswer(key, answer))
    const same = JSON.stringify(one) === JSON.stringify(other)
    return [{ fact: key, label: fact(key).label, a: text(one), b: text(other), same }]
  })
}

interface NumberOf {
  readonly value: number | null
  readonly unit: string
}

/** Figures that a builder would lay side by side, in the order of the arrow. */
const NUMBERS: readonly {
  readonly id: string
  readonly label: string
  readonly of: (assessment: Assessment) => NumberOf
}[] = [
  {
    id: 'peakPressure',
    label: 'Peak cylinder pressure',
    of: ({ loads }) => ({ value: loads.peakPressure.value, unit: 'bar' }),
  },
  { id: 'power', label: 'Power', of: ({ loads }) => ({ value: loads.power.value, unit: 'kW' }) },
  {
    id: 'worstPull',
    label: 'Worst pull on a cap',
    of: ({ loads }) => ({ value: loads.worstPull.pull, unit: 'kN' }),
  },
  {
    id: 'worstSide',
    label: 'Worst side push',
    of: ({ loads }) => ({ value: loads.worstSide.side, unit: 'kN' }),
  },
  { id: 'holdsAsItIs', label: 'As it is, holds in', of: keepHolds },
  { id: 'holdsAsCalled', label: 'As called, holds in', of: calledHolds },
  { id: 'cost', label: 'Likely cost of the call', of: likelyCost },
  {
    id: 'stake',
    label: 'Money at stake',
    of: ({ cost }) => ({ value: cost.stake, unit: cost.currency }),
  },
]

function keepHolds({ routes }: Assessment): NumberOf {
  const keep = routes.find(({ id }) => id === 'keep-caps-and-bolts')
  return { value: keep?.holdsIn ?? null, unit: 'of 100' }
}

function calledHolds({ routes, call }: Assessment): NumberOf {
  const called = routes.find(({ id }) => id === call.route)
  return { value: called?.holdsIn ?? null, unit: 'of 100' }
}

function likelyCost({ cost, call }: Assessment): NumberOf {
  return { value: call.route === null ? null : cost.likely, unit: cost.currency }
}

function numberRows(a: Assessment, b: Assessment): CaseComparison['numbers'] {
  return NUMBERS.map(({ id, label, of }) => {
    const [one, other] = [of(a), of(b)]
    return { id, label, a: one.value, b: other.value, unitA: one.unit, unitB: other.unit }
  })
}

/** Findings by rule: in both first, then in one. */
function findingRows(a: readonly Finding[], b: readonly Finding[]): CaseComparison['reasons'] {
  const has = (list: readonly Finding[], { rule }: Finding) => list.some((one) => one.rule === rule)
  const row = (where: 'a' | 'b' | 'both') => (one: Finding) => ({
    rule: one.rule,
    title: one.title,
    in: where,
  })
  return [
    ...a.filter((one) => has(b, one)).map(row('both')),
    ...a.filter((one) => !has(b, one)).map(row('a')),
    ...b.filter((one) => !has(a, one)).map(row('b')),
  ]
}
