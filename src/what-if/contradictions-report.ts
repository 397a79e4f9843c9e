import type { Answers } from '../../shared/answers.ts'
import type { Contradiction } from '../../shared/assessment.ts'
import { printAnswer } from '../../shared/print.ts'
import type { Decision } from '../call/decide.ts'
import { contradictionOf, inOrder } from '../findings/collect.ts'
import type { AskWhatIf } from './quick-call.ts'
import { slipsThatMend, slipText } from './slips.ts'

/**
 * The contradictions of a case, gravest first, each with the slips that would
 * explain it. Where the slips point at one fact alone, that is the likelier slip.
 */
export async function contradictionsReport(
  { buildRules, buildTable }: Decision,
  answers: Answers,
  ask: AskWhatIf,
): Promise<Contradiction[]> {
  const standing = inOrder(
    buildRules
      .filter(({ outcome }) => outcome.effect === 'contradiction')
      .map((rule) => contradictionOf(rule, buildTable)),
  )
  const explained: Contradiction[] = []
  for (const one of standing) explained.push(await withSlips(one, answers, ask))
  return explained
}

async function withSlips(
  contradiction: Contradiction,
  answers: Answers,
  ask: AskWhatIf,
): Promise<Contradiction> {
  const of = async (changed: Answers) => (await ask(changed))?.contradictions
  const slips = await slipsThatMend(contradiction, answers, of)
  const first = slips[0]
  if (!first) return contradiction
  const facts = new Set(slips.map(({ key }) => key))
  return {
    ...contradiction,
    text: `${contradiction.text} ${slipText(first)}`,
    likelierSlip: facts.size === 1 ? first.key : contradiction.likelierSlip,
    slips: slips.map(({ key, kind, meant }) => ({
      fact: key,
      kind,
      meant: printAnswer(key, meant),
    })),
  }
}
