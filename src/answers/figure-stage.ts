import type { FactKey } from '../../shared/fact-keys.ts'
import { askedFigure } from './answer-asked.ts'
import { isOfBoost } from './boost-in-pounds.ts'
import { readBoreByStroke } from './bore-by-stroke.ts'
import { isPartPrice, readBudgetFor } from './budget-for.ts'
import { candidateFor } from './candidates.ts'
import { readContrast } from './contrast.ts'
import { correctionsIn, mends, readCorrected, turnsIn } from './corrected-figures.ts'
import { readSizeBefore } from './engine-size.ts'
import { isFastened, otherFastener, readGrade, readListedTorque } from './fastened.ts'
import { isFastenerSize, readAngle, readTorque } from './fastener-figures.ts'
import type { Findings } from './findings.ts'
import { isOfForeignPart } from './foreign-subject.ts'
import { mentionsIn } from './mentions.ts'
import type { Parts } from './message-parts.ts'
import { isAcrossComma, isAnswerWith, isNoiseApart } from './named-figures.ts'
import { readOverbore } from './overbore.ts'
import type { Figure } from './plain-figure.ts'
import { readPriceOfLast } from './price-of-last.ts'
import { isTold } from './quotes.ts'
import { isPeakSpeed, readByUnit, readPair, readPounds } from './read-figures.ts'
import { setAside } from './set-aside.ts'
import { readSpecList } from './spec-list.ts'
import { readStagedTorque } from './staged-torque.ts'
import { readTorquePeak } from './torque-peak.ts'
import { readWheelPower } from './wheel-power.ts'

/** Read every figure of a message: as a fact, or as a doubt that says why not. */
export function readAllFigures(parts: Parts, asking: FactKey | undefined, into: Findings): void {
  const { figures, input, overFrom } = parts
  const converted = readWheelPower(parts, into)
  const open = figures.filter((figure) => {
    if (converted.includes(figure)) return false
    const why = isTold(figure, asking, parts) ? undefined : setAside(figure, input)
    if (why) into.doubts.push({ from: figure.from, to: figure.to, why })
    return why === undefined
  })
  for (const { from, to, meanings } of mentionsIn(parts.lexicon.fixed, parts.tokens)) {
    if (parts.scopes.outside[from]) continue
    for (const { fact: key, answer } of meanings) {
      into.readings.push({ key, answer, from, to, strength: 2 })
    }
  }
  const done = new Set<Figure>()
  for (const alternative of alternativesIn(open, parts)) {
    done.add(alternative)
    into.doubts.push({ ...figureWords(alternative), why: 'one of two: say which' })
  }
  for (const { over, base, answer } of overFrom) {
    done.add(over).add(base)
    // "The standard bore was 4.000, they took it thirty over": as it was, and as it is.
    const past = ({ from }: Figure): boolean => parts.scopes.outside[from] === 'past'
    const grown = base.from < over.from && (past(over) || (past(base) && open.includes(over)))
    if (!grown && !(open.includes(over) && open.includes(base))) continue
    const [from, to] = [Math.min(over.from, base.from), Math.max(over.to, base.to)]
    into.readings.push({ key: 'bore', answer, from, to, strength: 3 })
  }
  for (const figure of readStagedTorque(open, asking === 'fastenerTorque', parts, into))
    done.add(figure)
  readNamed(parts, open, done, asking, into)
  readLoose(
    parts,
    open.filter((figure) => !done.has(figure)),
    asking,
    into,
  )
}

/** "Either 9.5 or 10.5 to one": neither is settled. */
function alternativesIn(figures: readonly Figure[], { tokens }: Parts): Figure[] {
  return figures.flatMap((figure, i) => {
    const other = figures[i + 1]
    const either = tokens[figure.from - 1]?.text === 'either'
    return either && other && tokens[other.from - 1]?.text === 'or' ? [figure, other] : []
  })
}

function readNamed(
  parts: Parts,
  open: readonly Figure[],
  done: Set<Figure>,
  asking: FactKey | undefined,
  into: Findings,
): void {
  const { pairs, tokens, input } = parts
  const noisy = new Set(
    pairs
      .filter((pair) => pair.use.kind === 'noise' && !isAcrossComma(pair, parts))
      .map(({ figure }) => figure),
  )
  for (const figure of readBoreByStroke(
    open,
    tokens,
    parts.lexicon.words.parts,
    input.money,
    into,
    noisy,
  ))
    done.add(figure)
  for (const pair of pairs) {
    if (!open.includes(pair.figure) || done.has(pair.figure)) continue
    if (asking && isAnswerWith(pair, parts)) continue
    done.add(pair.figure)
    if (isPartPrice(pair) && readBudgetFor(pair.figure, parts, into)) continue
    if (isNoiseApart(pair, parts)) {
      if (readCorrected(pair.figure, parts, into)) continue
      // "12 psi, no wait, I swapped the wastegate spring, 14 psi": read after the one it mends.
      if (mends(pair.figure, open, parts)) {
        done.delete(pair.figure)
        continue
      }
    }
    readAngle(pair.figure, parts, into)
    const fits = pair.use.kind === 'fact' && 'answer' in pair.use.candidate
    if (!fits && readTorquePeak(pair.figure, parts, into)) continue
    const other = otherFastener(pair, parts)
    const wrench = pair.use.kind === 'noise' && pair.use.what === 'engine torque'
    if (wrench && readTorque(pair.figure, isFastened(pair.figure, parts), input, into)) continue
    if (other === undefined) readPair(pair, input, into)
    else into.doubts.push({ ...other, why: 'read as the torque of other fasteners' })
  }
}

/** Figures that no words name: the asked fact's, else by their unit, else a doubt. */
function readLoose(
  parts: Parts,
  figures: readonly Figure[],
  asking: FactKey | undefined,
  into: Findings,
): void {
  const { tokens, input } = parts
  const over = figures.filter(({ unit }) => unit?.kind === 'over')
  let loose = figures.filter(({ unit }) => unit?.kind !== 'over')
  if (asking && !into.readings.some(({ key }) => key === asking)) {
    loose = askedFigure(
      asking,
      loose,
      tokens,
      parts.lexicon,
      input.money,
      [...correctionsIn(parts), ...turnsIn(parts)],
      into,
    )
  }
  const unnamed = loose.filter((figure) => {
    if (readAngle(figure, parts, into) || readTorquePeak(figure, parts, into)) return false
    const why = asideOf(figure, parts)
    if (why) into.doubts.push({ ...figureWords(figure), why })
    if (why || readCorrected(figure, parts, into) || readContrast(figure, parts, into)) return false
    if (isOfForeignPart(figure, parts)) {
      into.doubts.push({ ...figureWords(figure), why: 'read as about another part' })
      return false
    }
    if (readBudgetFor(figure, parts, into)) return false
    return !readPriceOfLast(figure, parts, into) && !readByKind(figure, parts, into)
  })
  for (const figure of readSpecList(unnamed, parts, into)) {
    const said = tokens[figure.from]?.kind === 'number' || figure.unit || figure.value > 12
    if (said) into.doubts.push({ ...figureWords(figure), why: 'not clear what this figure is' })
  }
  for (const figure of over) readOverbore(figure, input.answers, into)
}

/** Why a figure without a name is no fact, or undefined when it may be one. */
function asideOf(figure: Figure, parts: Parts): string | undefined {
  const { figures, tokens, choiceMentions } = parts
  const before = figures[figures.indexOf(figure) - 1]
  if (isPeakSpeed(figure, before, parts)) return 'the speed of a peak; how far does it rev?'
  if (isPassing(figure, parts)) return 'a speed in passing; how far does it rev?'
  if (isFastenerSize(figure, tokens, choiceMentions)) return 'a thread needs its pitch too: 1/2-13'
  return undefined
}

/** Read a figure by its unit, its size and what stands near; says whether it did. */
function readByKind(figure: Figure, parts: Parts, into: Findings): boolean {
  const { choiceMentions, input } = parts
  if (readStake(figure, parts, into)) return true
  if (readGrade(figure, parts, into) || readByUnit(figure, input, into)) return true
  if (figure.unit && readPounds(figure, isOfBoost(figure, parts), input, into)) return true
  if (figure.unit && readTorque(figure, isFastened(figure, parts), input, into)) return true
  if (readListedTorque(figure, parts, into) || readTops(figure, parts, into)) return true
  const layouts = new Set(
    choiceMentions
      .filter(({ meanings }) => meanings.some((m) => m.kind === 'choice' && m.fact === 'layout'))
      .map(({ from }) => from),
  )
  return readSizeBefore(figure, (at) => layouts.has(at), input, into)
}

/** "Already 14k in": what somebody has in the engine. */
function readStake(figure: Figure, { tokens, lexicon, input }: Parts, into: Findings): boolean {
  const { from, to, unit, scaled, value } = figure
  const money = unit ? unit.kind === 'money' : scaled || value >= 1000
  const [before, next] = [tokens[from - 1]?.text ?? '', tokens[to + 1]]
  const { figures, prices } = lexicon.words
  const has = figures.about.has(before) || prices.stakes.has(before)
  if (!money || !has || tokens[to]?.text !== 'in' || (next && next.kind !== 'mark')) return false
  const found = candidateFor('invested', figure, input.money)
  if (!found || !('answer' in found)) return false
  into.readings.push({ key: 'invested', answer: found.answer, from, to: to + 1, strength: 2 })
  return true
}

/** "7k tops": as far as it revs. */
function readTops(figure: Figure, { tokens, lexicon, input }: Parts, into: Findings): boolean {
  const { value, unit, ratio, from, to } = figure
  const most = lexicon.words.figures.most.has(tokens[to]?.text ?? '')
  if (unit || ratio || !most || value < 3000 || value > 12000) return false
  const found = candidateFor('peakRpm', figure, input.money)
  if (!found || !('answer' in found)) return false
  into.readings.push({ key: 'peakRpm', answer: found.answer, from, to: to + 1, strength: 1 })
  return true
}

/** "Knocks at 4000 rpm": something that happens on the way, not how far it revs. */
function isPassing(
  { from, unit }: Figure,
  { tokens, lexicon, choiceMentions, figures, input }: Parts,
): boolean {
  if (input.whatIf || unit?.kind !== 'unit' || unit.symbol !== 'rpm') return false
  if (tokens[from - 1]?.text !== 'at') return false
  const before = tokens[from - 2]
  if (before?.kind !== 'word' || lexicon.fillers.has(before.text)) return false
  const named = [...choiceMentions, ...figures].some(({ to }) => to === from - 1)
  return !named && tokens[from - 1]?.gap === 'space'
}

function figureWords({ from, to }: Figure): { from: number; to: number } {
  return { from, to }
}
