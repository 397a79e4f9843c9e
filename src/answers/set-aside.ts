import { longestAt } from './phrases.ts'
import type { Figure } from './plain-figure.ts'
import type { FigureInput } from './read-figures.ts'

const OUTSIDE = {
  other: 'read as about another engine',
  hypothetical: 'read as a thought, not as the plan',
  past: 'read as how it used to be',
} as const

/** Why a figure says nothing of this engine, or undefined when it may. */
export function setAside(figure: Figure, input: FigureInput): string | undefined {
  const outside = input.scopes.outside[figure.to - 1]
  if (outside && !(outside === 'hypothetical' && input.whatIf)) return OUTSIDE[outside]
  if (input.negations.denies(figure)) return 'denied in the same words'
  if (isYear(figure, input)) return 'read as a year'
  if (isGear(figure, input)) return 'read as gearing, which is not asked here'
  if (figure.unit?.kind === 'wheel' || isAtWheels(figure, input)) {
    return 'power at the wheels: give it at the crank, or say what loss to count'
  }
  if (figure.unit?.kind === 'money' && longestAt(input.lexicon.inPart, input.tokens, figure.to)) {
    return 'the price of a part of it: give the whole'
  }
  if (isOnTheRoad(figure, input)) return 'a speed on the road; how far does it rev?'
  if (isSpent(figure, input) && isForOther(figure, input)) return 'the price of something else'
  return undefined
}

/** A bare figure below this is no power that an engine is told by. */
const LEAST_POWER = 100

/** "Power on wheels 320 hp", "600, but that's at the tyres": what is said of a power speaks of the wheels. */
function isAtWheels(
  { from, to, unit, value }: Figure,
  { tokens, scopes, wheels }: FigureInput,
): boolean {
  if (unit && (unit.kind !== 'unit' || !['hp', 'kW'].includes(unit.symbol))) return false
  // "86 x 86, 8.5 to 1, made 710 whp".
  if (!unit && value < LEAST_POWER) return false
  const goesOn = (at: number): boolean =>
    at > to &&
    at - to <= 5 &&
    scopes.sentence[at] === scopes.sentence[from] &&
    tokens.slice(to, at).some(({ text }) => THATS.has(text)) &&
    tokens.slice(to, at).every(({ kind }) => kind !== 'number')
  return wheels.some((at) => scopes.clause[at] === scopes.clause[from] || goesOn(at))
}

const THATS = new Set(['thats', 'that', 'its', 'which', 'this'])

/** "She turns 2,600 rpm at 70 mph". */
function isOnTheRoad({ from, unit }: Figure, { tokens, scopes, lexicon }: FigureInput): boolean {
  const { roadSpeeds } = lexicon.words.figures
  if (unit?.kind !== 'unit' || unit.symbol !== 'rpm') return false
  return tokens.some(
    ({ text }, at) => scopes.clause[at] === scopes.clause[from] && roadSpeeds.has(text),
  )
}

/** An amount of money, or a bare one that was spent: "spent 350 on a cam". */
function isSpent({ unit, from }: Figure, { tokens }: FigureInput): boolean {
  return unit ? unit.kind === 'money' : ['spent', 'paid'].includes(tokens[from - 1]?.text ?? '')
}

const ARTICLES = new Set(['the', 'a', 'an', 'my', 'these', 'those'])

/** "Spent $650 on pistons", "1200 on the heads": what was paid for one other part. */
function isForOther({ to }: Figure, { tokens, lexicon }: FigureInput): boolean {
  // "Four hundred quid carbs on it".
  const own = longestAt(lexicon.choices, tokens, to)
  if (own?.meanings.some((m) => m.kind === 'noun' && m.noun === 'other')) return true
  if (!['on', 'for'].includes(tokens[to]?.text ?? '')) return false
  let at = to + 1
  const small = (word: string): boolean =>
    ARTICLES.has(word) || lexicon.words.prices.beforeParts.has(word)
  while (small(tokens[at]?.text ?? '')) at += 1
  const found = longestAt(lexicon.choices, tokens, at)
  if (found) return found.meanings.some((m) => m.kind === 'noun' && m.noun === 'other')
  // "Set aside $600 for paint": a thing that the vocabulary does not know.
  const word = tokens[at]
  if (word?.kind !== 'word') return false
  return !lexicon.speller.known.has(word.text) || lexicon.words.prices.otherThings.has(word.text)
}

/** "3.73s in a nine inch axle": two decimals in the plural are of gears. */
function isGear({ value, unit, to }: Figure, { tokens }: FigureInput): boolean {
  const [last, next] = [tokens[to - 1]?.text ?? '', tokens[to]]
  const plural = next?.text === 's' && next.gap === 'none' && /\.\d\d$/.test(last)
  return plural && !unit && value >= 2.5 && value <= 6.5
}

/** "Line bored in 2015", "built 1994". */
function isYear(
  { value, unit, decimal, scaled, from }: Figure,
  { tokens, lexicon }: FigureInput,
): boolean {
  // "Back in '98".
  if (!unit && !decimal && value < 100 && tokens[from - 1]?.text === "'") {
    return tokens[from]?.gap === 'none'
  }
  const bare = !unit && !decimal && !scaled && value >= 1900 && value <= 2100
  return bare && lexicon.words.times.years.has(tokens[from - 1]?.text ?? '')
}
