import type { Answers } from '../../shared/answers.ts'
import { type FactKey, fact } from '../../shared/fact-keys.ts'
import { candidateFor, type MoneyContext } from './candidates.ts'
import type { Findings } from './findings.ts'
import type { Lexicon } from './lexicon.ts'
import type { Negations } from './negation.ts'
import type { Pair } from './pairing.ts'
import type { Figure } from './plain-figure.ts'
import type { Scopes } from './scopes.ts'
import type { Token } from './tokens.ts'

export interface FigureInput {
  readonly tokens: readonly Token[]
  readonly lexicon: Lexicon
  readonly scopes: Scopes
  readonly negations: Negations
  /** Where the wheels are spoken of. */
  readonly wheels: readonly number[]
  readonly whatIf: boolean
  readonly money: MoneyContext
  readonly answers: Answers
}

/** A figure and its words to a reading of a fact, or to a doubt that says why not. */
export function readPair({ figure, mention, use }: Pair, input: FigureInput, into: Findings): void {
  const from = Math.min(figure.from, mention.from)
  const to = Math.max(figure.to, mention.to)
  if (use.kind === 'noise') {
    const why = use.unit ? `give it in ${use.what}` : `read as ${use.what}, which is not asked here`
    into.doubts.push({ from, to, why })
  } else if (use.kind === 'octane') {
    readOctane(figure, from, to, input, into)
  } else if ('answer' in use.candidate) {
    const limit = use.key === 'peakRpm' && namesLimit(mention.from, mention.to, input)
    const strength = limit ? 4 : use.weak ? 2 : 3
    into.readings.push({ key: use.key, answer: use.candidate.answer, from, to, strength })
  } else {
    const why = `${fact(use.key).short}: ${use.candidate.why}`
    into.doubts.push({ from, to, why })
  }
}

function namesLimit(from: number, to: number, { tokens, lexicon }: FigureInput): boolean {
  return tokens.slice(from, to).some(({ text }) => lexicon.words.figures.revLimits.has(text))
}

function readOctane(
  figure: Figure,
  from: number,
  to: number,
  { lexicon }: FigureInput,
  into: Findings,
): void {
  const { pumpTo, raceFrom } = lexicon.vocabulary.octane
  const answer =
    figure.value <= pumpTo
      ? 'pump-gasoline'
      : figure.value >= raceFrom
        ? 'race-gasoline'
        : undefined
  if (answer) into.readings.push({ key: 'fuel', answer, from, to, strength: 2 })
  else into.doubts.push({ from, to, why: 'pump or race gasoline? say which' })
}

/** The fact that a unit means when nothing else is said. */
const BY_UNIT: readonly (readonly [FactKey, readonly string[]])[] = [
  ['boost', ['psi', 'bar', 'kPa']],
  ['peakRpm', ['rpm']],
  ['targetPower', ['hp', 'kW']],
  ['displacement', ['cu in', 'L', 'cc']],
]

/** "400 inches" of an engine are cubic. */
function asVolume(figure: Figure): Figure {
  const { unit, value } = figure
  const inches = unit?.kind === 'unit' && unit.symbol === 'in' && value >= 150 && value <= 900
  return inches ? { ...figure, unit: { ...unit, symbol: 'cu in' } } : figure
}

/** A figure that no words name: by its unit, or undefined when that says nothing. */
export function defaultKey(figure: Figure): FactKey | undefined {
  if (figure.ratio) return 'compressionRatio'
  if (asVolume(figure) !== figure) return 'displacement'
  if (figure.unit?.kind === 'shot') return 'nitrousPower'
  const symbol = figure.unit?.kind === 'unit' ? figure.unit.symbol : undefined
  if (symbol === undefined) return undefined
  return BY_UNIT.find(([, symbols]) => symbols.includes(symbol))?.[0]
}

/** Right before the speed of a peak. */
const PEAKS_AT = new Set(['at', 'by', 'of'])

/** "720 hp at 6800 rpm", "400 lb ft at 4200": where it peaks, not how far it revs. */
export function isPeakSpeed(
  figure: Figure,
  before: Figure | undefined,
  { tokens, lexicon }: Pick<FigureInput, 'tokens' | 'lexicon'>,
): boolean {
  const { peaks, about } = lexicon.words.figures
  const symbol = before?.unit?.kind === 'unit' ? before.unit.symbol : before?.unit?.kind
  if (!before || !['hp', 'kW', 'lb ft', 'N m', 'wheel'].includes(symbol ?? '')) return false
  const between = tokens.slice(before.to, figure.from).map(({ text }) => text)
  const links = (word: string): boolean => PEAKS_AT.has(word) || about.has(word)
  const near = between.every((word) => links(word) || word === 'the' || peaks.has(word))
  return between.length <= 4 && near && links(between.at(-1) ?? '')
}

/** A slower speed by itself is of a cruise or of a converter. */
const LEAST_REDLINE = 3800

/** "3200 rpm tops". */
function isMost({ to, from }: Figure, { tokens, lexicon }: FigureInput): boolean {
  const { most } = lexicon.words.figures
  const [before, after] = [tokens[from - 1]?.text ?? '', tokens[to]?.text ?? '']
  return most.has(after) || most.has(before)
}

/** Read a figure by its unit alone; says whether it did. */
export function readByUnit(figure: Figure, input: FigureInput, into: Findings): boolean {
  const key = defaultKey(figure)
  const found = key && candidateFor(key, asVolume(figure), input.money)
  if (
    !key ||
    !found ||
    (key === 'peakRpm' && figure.value < LEAST_REDLINE && !isMost(figure, input))
  )
    return false
  const { from, to } = figure
  if ('answer' in found) into.readings.push({ key, answer: found.answer, from, to, strength: 1 })
  else into.doubts.push({ from, to, why: `${fact(key).short}: ${found.why}` })
  return true
}

/** The trade's "pounds" beside a turbo or a blower: boost. */
export function readPounds(
  figure: Figure,
  boosted: boolean,
  input: FigureInput,
  into: Findings,
): boolean {
  const pounds = figure.unit?.kind === 'unit' && figure.unit.symbol === 'lb'
  if (!pounds || !boosted || figure.value < 4 || figure.value > 58) return false
  const found = candidateFor('boost', figure, input.money)
  if (!found || !('answer' in found)) return false
  into.readings.push({
    key: 'boost',
    answer: found.answer,
    from: figure.from,
    to: figure.to,
    strength: 1,
  })
  return true
}

/** "Raise it from 9.5 to 10.5": only where it ends up counts. */
export function afterChange(figures: readonly Figure[], input: FigureInput): Figure[] {
  const { tokens, scopes } = input
  const changing = scopes.markers.filter(({ meanings }) => meanings.includes('changing'))
  const changes = (figure: Figure): boolean =>
    figure.afterFrom &&
    changing.some(
      ({ to }) => to <= figure.from && scopes.sentence[to - 1] === scopes.sentence[figure.from],
    )
  return figures.flatMap((figure, i) => {
    if (!changes(figure)) return [figure]
    if (figure.high !== undefined) {
      const { low: _low, high, ...rest } = figure
      return [{ ...rest, value: high, afterFrom: false }]
    }
    const next = figures[i + 1]
    const given = next && tokens[figure.to]?.text === 'to' && next.from === figure.to + 1
    return given ? [] : [figure]
  })
}
