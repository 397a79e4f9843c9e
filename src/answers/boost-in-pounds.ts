import type { Parts } from './message-parts.ts'
import type { Figure } from './plain-figure.ts'

/** Whether pounds are of boost: beside a turbo or a blower, or run. */
export function isOfBoost(figure: Figure, parts: Parts): boolean {
  return isBoosted(figure, parts) || isRun(figure, parts)
}

function isBoosted({ from }: Figure, { choiceMentions, scopes }: Parts): boolean {
  return choiceMentions.some(
    (mention) =>
      scopes.sentence[mention.from] === scopes.sentence[from] &&
      mention.meanings.some(
        (m) => m.kind === 'choice' && (m.value === 'turbocharged' || m.value === 'supercharged'),
      ),
  )
}

/** "What if I only ran 8 pounds": pounds that are run are of boost. */
function isRun({ from, to }: Figure, { tokens, lexicon }: Parts): boolean {
  const before = [tokens[from - 1]?.text ?? '', tokens[from - 2]?.text ?? '']
  const after = tokens[to]?.text ?? ''
  return (
    before.some((word) => lexicon.words.figures.runs.has(word)) &&
    !lexicon.words.figures.weighed.has(after)
  )
}
