import { type FactKey, fact } from '../../shared/fact-keys.ts'
import { askedFigure, isReported } from './answer-asked.ts'
import { readBoreByStroke } from './bore-by-stroke.ts'
import { candidateFor } from './candidates.ts'
import { readContrast } from './contrast.ts'
import { readSizeBefore } from './engine-size.ts'
import { isFastenerSize, isFasteners, readAngle, readTorque } from './fastener-figures.ts'
import type { Findings } from './findings.ts'
import { isOfForeignPart } from './foreign-subject.ts'
import type { Parts } from './message-parts.ts'
import { readOverbore } from './overbore.ts'
import type { Pair } from './pairing.ts'
import type { Figure } from './plain-figure.ts'
import { isPriceOfWork, keyOfLast, readPriceOfLast } from './price-of-last.ts'
import { isPeakSpeed, readByUnit, readPair, readPounds, setAside } from './read-figures.ts'
import { readSpecList } from './spec-list.ts'
import { readWheelPower } from './wheel-power.ts'

/** Read every figure of a message: as a fact, or as a doubt that says why not. */
export function readAllFigures(parts: Parts, asking: FactKey | undefined, into: Findings): void {
  const { figures, input, overFrom } = parts
  const converted = readWheelPower(parts, into)
  const open = figures.filter((figure) => {
    if (converted.includes(figure)) return false
    const told = isQuoted(figure, parts) || isToldPrice(figure, asking, parts)
    const why = told ? undefined : setAside(figure, input)
    if (why) into.doubts.push({ from: figure.from, to: figure.to, why })
    return why === undefined
  })
  const done = new Set<Figure>()
  for (const alternative of alternativesIn(open, parts)) {
    done.add(alternative)
    into.doubts.push({ ...figureWords(alternative), why: 'one of two: say which' })
  }
  for (const { over, base, answer } of overFrom) {
    done.add(over).add(base)
    if (!open.includes(over) || !open.includes(base)) continue
    into.readings.push({ key: 'bore', answer, from: over.from, to: base.to, strength: 3 })
  }
  readNamed(parts, open, done, into)
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

/** "He said 400, 450 tops", to the question of a price. */
function isToldPrice(
  figure: Figure,
  asking: FactKey | undefined,
  { scopes, input, tokens }: Parts,
): boolean {
  if (!asking || input.negations.denies(figure)) return false
  const outside = scopes.outside[figure.to - 1]
  if (outside === 'other' && fact(asking).topic === 'money') return true
  return (outside === 'other' || outside === 'past') && isReported(tokens)
}

/** "He said $500 to line bore it": a quote is always somebody else's; what a friend paid is none. */
function isQuoted(figure: Figure, parts: Parts): boolean {
  const { scopes, tokens, input, pairs } = parts
  if (scopes.outside[figure.to - 1] !== 'other' || figure.unit?.kind !== 'money') return false
  const use = pairs.find((pair) => pair.figure === figure)?.use
  const key = use ? (use.kind === 'fact' ? use.key : undefined) : keyOfLast(figure, parts)
  if (!key || !isPriceOfWork(key)) return false
  if (input.negations.denies(figure)) return false
  return !tokens.some(
    ({ text }, at) => scopes.sentence[at] === scopes.sentence[figure.from] && PAID.has(text),
  )
}

const PAID = new Set(
  'paid spent gave charged customer buddy brother friend cousin mate neighbor'.split(' '),
)

function readNamed(parts: Parts, open: readonly Figure[], done: Set<Figure>, into: Findings): void {
  const { pairs, tokens, input } = parts
  const noisy = new Set(
    pairs
      .filter((pair) => pair.use.kind === 'noise' && !isAcrossComma(pair, parts))
      .map(({ figure }) => figure),
  )
  for (const figure of readBoreByStroke(open, tokens, input.money, into, noisy)) done.add(figure)
  for (const pair of pairs) {
    if (!open.includes(pair.figure) || done.has(pair.figure)) continue
    done.add(pair.figure)
    readAngle(pair.figure, parts, into)
    const other = otherFastener(pair, parts)
    const wrench = pair.use.kind === 'noise' && pair.use.what === 'engine torque'
    if (wrench && readTorque(pair.figure, isFastened(pair.figure, parts), input, into)) continue
    if (other === undefined) readPair(pair, input, into)
    else into.doubts.push({ ...other, why: 'read as the torque of other fasteners' })
  }
}

/** "60 degree V6, 93 x 86 mm": the degree is another item's. */
function isAcrossComma({ figure, mention }: Pair, { tokens }: Parts): boolean {
  const [from, to] = [Math.min(figure.to, mention.to), Math.max(figure.from, mention.from)]
  return tokens.slice(from, to).some(({ text }) => text === ',')
}

/** "Head studs torqued to 80": the clause speaks of other fasteners, so the torque is theirs. */
function otherFastener(
  { figure, use }: Pair,
  { figureMentions, choiceMentions, scopes, tokens }: Parts,
): { from: number; to: number } | undefined {
  if (use.kind !== 'fact' || use.key !== 'fastenerTorque') return undefined
  const near = ({ from }: { from: number }): boolean =>
    scopes.clause[from] === scopes.clause[figure.from] && from < figure.from
  const takes = ({ to }: { to: number }): boolean =>
    ['get', 'gets', 'take', 'takes'].includes(tokens[to]?.text ?? '')
  const others = [
    ...figureMentions.filter(({ meanings }) =>
      meanings.some((m) => m.kind === 'noise' && m.fits.includes('torque')),
    ),
    ...choiceMentions.filter(
      (mention) =>
        takes(mention) && mention.meanings.some((m) => m.kind === 'noun' && m.noun === 'other'),
    ),
  ].filter(near)
  const last = others.at(-1)
  if (!last) return undefined
  const mains = choiceMentions.some(
    (mention) =>
      near(mention) &&
      mention.from > last.from &&
      mention.meanings.some((m) => m.kind === 'noun' && m.noun !== 'other') &&
      !takes(last),
  )
  return mains ? undefined : { from: last.from, to: figure.to }
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
    loose = askedFigure(asking, loose, tokens, input.money, correctionsIn(parts), into)
  }
  const unnamed = loose.filter((figure) => {
    const why = asideOf(figure, parts)
    if (why) into.doubts.push({ ...figureWords(figure), why })
    if (why || readCorrected(figure, parts, into) || readContrast(figure, parts, into)) return false
    if (isOfForeignPart(figure, parts)) {
      into.doubts.push({ ...figureWords(figure), why: 'read as about another part' })
      return false
    }
    return !readPriceOfLast(figure, parts, into) && !readByKind(figure, parts, into)
  })
  for (const figure of readSpecList(unnamed, parts, into)) {
    const said = tokens[figure.from]?.kind === 'number' || figure.unit || figure.value > 12
    if (said) into.doubts.push({ ...figureWords(figure), why: 'not clear what this figure is' })
  }
  for (const figure of over) readOverbore(figure, input.answers, into)
}

function correctionsIn({ scopes }: Parts): number[] {
  return scopes.markers
    .filter(({ meanings }) => meanings.includes('correction'))
    .map(({ from }) => from)
}

/** Why a figure without a name is no fact, or undefined when it may be one. */
function asideOf(figure: Figure, parts: Parts): string | undefined {
  const { figures, tokens, choiceMentions } = parts
  const before = figures[figures.indexOf(figure) - 1]
  if (isPeakSpeed(figure, before, tokens)) return 'the speed of a peak; how far does it rev?'
  if (isPassing(figure, parts)) return 'a speed in passing; how far does it rev?'
  if (isFastenerSize(figure, tokens, choiceMentions)) return 'a thread needs its pitch too: 1/2-13'
  return undefined
}

/** Read a figure by its unit, its size and what stands near; says whether it did. */
function readByKind(figure: Figure, parts: Parts, into: Findings): boolean {
  const { choiceMentions, input } = parts
  if (readGrade(figure, parts, into) || readByUnit(figure, input, into)) return true
  if (
    figure.unit &&
    readPounds(figure, isBoosted(figure, parts) || isRun(figure, parts), input, into)
  )
    return true
  if (figure.unit && readTorque(figure, isFastened(figure, parts), input, into)) return true
  const layouts = new Set(
    choiceMentions
      .filter(({ meanings }) => meanings.some((m) => m.kind === 'choice' && m.fact === 'layout'))
      .map(({ from }) => from),
  )
  return readSizeBefore(figure, (at) => layouts.has(at), input, into)
}

/** "Bore 4.030, no wait, 4.040": a bare figure after a correction is the last fact's. */
function readCorrected(figure: Figure, { scopes, input }: Parts, into: Findings): boolean {
  if (figure.unit || figure.ratio) return false
  const corrected = scopes.markers.some(
    ({ meanings, to }) =>
      meanings.includes('correction') && to <= figure.from && figure.from - to <= 3,
  )
  const last = into.readings
    .filter(({ to }) => to <= figure.from)
    .sort((a, b) => a.to - b.to)
    .at(-1)
  const found = corrected && last ? candidateFor(last.key, figure, input.money) : undefined
  if (!last || !found || !('answer' in found)) return false
  into.readings.push({ ...last, answer: found.answer, from: figure.from, to: figure.to })
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

const GRADES: ReadonlyMap<number, string> = new Map([
  [8.8, 'iso-8.8'],
  [10.9, 'iso-10.9'],
  [12.9, 'iso-12.9'],
])

const LINKS_TO_GRADE = new Set(', are is : = be only just still a'.split(' '))

/** "M12x1.75 10.9", "bolts, 12.9": a strength class right after the fasteners. */
function readGrade(figure: Figure, { tokens, choiceMentions }: Parts, into: Findings): boolean {
  const answer = GRADES.get(figure.value)
  if (!answer || figure.unit || figure.ratio || figure.low !== undefined) return false
  let at = figure.from
  while (at > figure.from - 3 && LINKS_TO_GRADE.has(tokens[at - 1]?.text ?? '')) at -= 1
  const classed = ['class', 'grade', 'strength', 'quality'].includes(tokens[at - 1]?.text ?? '')
  const fastened =
    classed ||
    tokens[at - 1]?.kind === 'thread' ||
    choiceMentions.some(
      ({ to, meanings }) =>
        to === at &&
        meanings.some((m) => m.kind === 'noun' && (m.noun === 'bolts' || m.noun === 'studs')),
    )
  if (!fastened) return false
  into.readings.push({ key: 'fastenerGrade', answer, ...figureWords(figure), strength: 3 })
  return true
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
function isRun({ from, to }: Figure, { tokens }: Parts): boolean {
  const before = [tokens[from - 1]?.text ?? '', tokens[from - 2]?.text ?? '']
  const after = tokens[to]?.text ?? ''
  return before.some((word) => RUN.has(word)) && !WEIGHED.has(after)
}

const RUN = new Set('run runs ran running push pushes pushing boost crank turn'.split(' '))
const WEIGHED = new Set(
  'of car truck trailer on per seat open spring force pressure oil fuel'.split(' '),
)

/** Whether main bolts, studs or a thread stand in the same sentence, a few clauses off at most. */
function isFastened(figure: Figure, parts: Parts): boolean {
  const { from } = figure
  const { choiceMentions, scopes, tokens } = parts
  const here = scopes.sentence[from] ?? 0
  const alone = standsAlone(figure, parts)
  const near = (at: number): boolean => {
    const there = scopes.sentence[at] ?? 0
    if (alone) return there <= here && there >= here - 2
    const clauses = Math.abs((scopes.clause[from] ?? 0) - (scopes.clause[at] ?? 0))
    return there === here && clauses <= 5
  }
  const named = choiceMentions.some((mention) => near(mention.from) && isFasteners(mention))
  const other = choiceMentions.some(
    (mention) =>
      near(mention.from) &&
      mention.meanings.some(
        (m) => m.kind === 'shadow' || (m.kind === 'noun' && m.noun === 'other'),
      ),
  )
  const mains = ({ kind, text }: { kind: string; text: string }): boolean =>
    kind === 'thread' || text === 'mains' || text === 'threads'
  return !other && (named || tokens.some((token, at) => mains(token) && near(at)))
}

/** "Studs, moly lube. 80 ft lbs.": a sentence that is a figure and no more goes on about the last. */
function standsAlone({ from, to }: Figure, { tokens, scopes, lexicon }: Parts): boolean {
  const { sentence } = scopes
  for (let at = 0; at < tokens.length; at += 1) {
    if (sentence[at] !== sentence[from] || (at >= from && at < to)) continue
    const { kind, text } = tokens[at] as { kind: string; text: string }
    if (kind !== 'mark' && !lexicon.fillers.has(text)) return false
  }
  return true
}

function figureWords({ from, to }: Figure): { from: number; to: number } {
  return { from, to }
}
