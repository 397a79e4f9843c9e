import type { Answers } from '../../shared/answers.ts'
import { currencyOf } from './candidates.ts'
import { isEngineSize } from './engine-size.ts'
import { isFastenerSize, isFasteners } from './fastener-figures.ts'
import { figuresIn } from './figures.ts'
import type { ChoiceMeaning, FigureMeaning, Lexicon } from './lexicon.ts'
import { coverage, type Mention, mentionsIn } from './mentions.ts'
import { withMovingParts } from './moving-parts.ts'
import { negationsOf } from './negation.ts'
import type { PlainText } from './normalise-text.ts'
import { type OverFrom, overFromIn } from './overbore.ts'
import { type Pair, pairFigures } from './pairing.ts'
import { longestAt } from './phrases.ts'
import type { Figure } from './plain-figure.ts'
import { afterChange, type FigureInput } from './read-figures.ts'
import { type Request, requestsIn } from './requests.ts'
import { type Scopes, scopesOf } from './scopes.ts'
import type { Token } from './tokens.ts'

/** A message taken apart, before anything is decided. */
export interface Parts {
  readonly plain: PlainText
  readonly tokens: readonly Token[]
  readonly lexicon: Lexicon
  readonly scopes: Scopes
  readonly requests: readonly Request[]
  readonly figures: readonly Figure[]
  /** "Thirty over from 4.000": read as one; its figures are in no pair. */
  readonly overFrom: readonly OverFrom[]
  readonly figureMentions: readonly Mention<FigureMeaning>[]
  readonly choiceMentions: readonly Mention<ChoiceMeaning>[]
  readonly pairs: readonly Pair[]
  readonly input: FigureInput
}

/** Find the figures, the words that name them, the choices, whose engine it is and what is asked. */
export function takeApart(
  plain: PlainText,
  tokens: readonly Token[],
  answers: Answers,
  lexicon: Lexicon,
): Parts {
  const choiceMentions = mentionsIn(lexicon.choices, tokens)
  const phrases = [...choiceMentions, ...mentionsIn(lexicon.figures, tokens)]
  const long = phrases.filter(({ from, to }) => to - from > 1)
  const inLong = coverage(tokens.length, long)
  const scopes = scopesOf(tokens, lexicon, (at) => inLong[at] ?? false)
  const named = scopes.markers.filter(
    ({ from, to, meanings }) => to - from > 1 && meanings.includes('ownPerson'),
  )
  const all = plainFigures(tokens, [...phrases, ...named], lexicon)
  const requests = requestsIn(tokens, lexicon, scopes)
  const input: FigureInput = {
    tokens,
    lexicon,
    scopes,
    negations: negationsOf(tokens, scopes, [...choiceMentions, ...all], lexicon),
    wheels: tokens.flatMap((_, at) =>
      longestAt(lexicon.units.tree, tokens, at)?.meanings[0]?.kind === 'wheel' ? [at] : [],
    ),
    whatIf: requests.some(({ intent, opens }) => intent === 'what-if' && opens),
    money: currencyOf(answers, all, tokens, lexicon),
    answers,
  }
  const read = nameFigures(afterChange(all, input), choiceMentions, input)
  return { plain, tokens, lexicon, scopes, requests, choiceMentions, input, ...read }
}

function plainFigures(
  tokens: readonly Token[],
  phrases: readonly { readonly from: number; readonly to: number }[],
  { vocabulary, units }: Lexicon,
): Figure[] {
  const inPhrase = coverage(tokens.length, phrases)
  const reader = { words: vocabulary.numbers, units }
  return figuresIn(tokens, reader, (at) => inPhrase[at] ?? false)
}

/** "Tyres 195/50, power 210": what follows a slash is no next item's. */
function isSecondOfSlash({ from }: Figure, tokens: readonly Token[]): boolean {
  return (
    tokens[from - 1]?.text === '/' &&
    tokens[from]?.gap === 'none' &&
    tokens[from - 2]?.kind === 'number'
  )
}

function isUnboosted({ meanings }: Mention<ChoiceMeaning>): boolean {
  // Nor does the juice of "corn juice".
  return meanings.some(
    (m) => m.kind === 'choice' && (m.value === 'naturally-aspirated' || m.value === 'e85'),
  )
}

/** The jet of "jet boat" is none of a carburettor. */
function isInChoice(
  { from, to, meanings }: Mention<FigureMeaning>,
  choices: readonly Mention<ChoiceMeaning>[],
): boolean {
  return (
    meanings.every(({ kind }) => kind === 'noise') &&
    choices.some(
      (one) =>
        one.from <= from &&
        to <= one.to &&
        to - from < one.to - one.from &&
        one.meanings.some(({ kind }) => kind === 'choice'),
    )
  )
}

/** Nor are the head bolts of "cap head bolts" of the heads. */
function isCapHead(
  mention: Mention<ChoiceMeaning>,
  tokens: readonly Token[],
  { words }: Lexicon,
): boolean {
  const { from, to } = mention
  return isFasteners(mention) && to - from >= 3 && words.parts.heads.has(tokens[to - 2]?.text ?? '')
}

function nameFigures(
  figures: readonly Figure[],
  choiceMentions: readonly Mention<ChoiceMeaning>[],
  input: FigureInput,
): Pick<Parts, 'figures' | 'overFrom' | 'figureMentions' | 'pairs'> {
  const { tokens, lexicon, money } = input
  const inFigure = coverage(tokens.length, figures)
  // The spray of "without boost or spray" names no shot.
  const denied = coverage(
    tokens.length,
    choiceMentions.filter((mention) => isUnboosted(mention) || isCapHead(mention, tokens, lexicon)),
  )
  const figureMentions = withMovingParts(
    mentionsIn(lexicon.figures, tokens, (at) => (inFigure[at] ?? false) || (denied[at] ?? false)),
    tokens,
    lexicon,
  ).filter((mention) => !isInChoice(mention, choiceMentions))
  const overFrom = overFromIn(figures, tokens, lexicon, money)
  const single = new Set(overFrom.flatMap(({ over, base }) => [over, base]))
  const open = figures.filter(
    (figure) =>
      !single.has(figure) &&
      !isFastenerSize(figure, tokens, choiceMentions) &&
      !input.negations.denies(figure) &&
      !isSecondOfSlash(figure, tokens) &&
      !isEngineSize(figure, tokens, lexicon),
  )
  return { figures, overFrom, figureMentions, pairs: pairFigures(open, figureMentions, input) }
}
