import { isFasteners } from './fastener-figures.ts'
import type { Findings } from './findings.ts'
import type { Parts } from './message-parts.ts'
import type { Pair } from './pairing.ts'
import type { Figure } from './plain-figure.ts'

/** "Head studs torqued to 80": the clause speaks of other fasteners, so the torque is theirs. */
export function otherFastener(
  { figure, use }: Pair,
  { figureMentions, choiceMentions, scopes, tokens, lexicon }: Parts,
): { from: number; to: number } | undefined {
  if (use.kind !== 'fact' || use.key !== 'fastenerTorque') return undefined
  const near = ({ from }: { from: number }): boolean =>
    scopes.clause[from] === scopes.clause[figure.from] && from < figure.from
  const takes = ({ to }: { to: number }): boolean =>
    lexicon.words.fasteners.takes.has(tokens[to]?.text ?? '')
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
  const after = otherAfter(figure, choiceMentions, tokens)
  if (after) return { from: figure.from, to: after.to }
  if (!last) return undefined
  const mains = choiceMentions.some(
    (mention) =>
      near(mention) &&
      mention.from > last.from &&
      mention.meanings.some((m) => m.kind === 'noun' && m.noun !== 'other') &&
      !takes(last),
  )
  // "Rod bolts get 45 and mains get 110".
  const named = tokens
    .slice(last.to, figure.from)
    .some(({ text }) => lexicon.words.fasteners.mains.has(text))
  return mains || named ? undefined : { from: last.from, to: figure.to }
}

/** "60 ft lb for the heads": what it is for stands after it. */
function otherAfter(
  { to }: Figure,
  mentions: Parts['choiceMentions'],
  tokens: Parts['tokens'],
): { to: number } | undefined {
  if (!['for', 'on', 'at'].includes(tokens[to]?.text ?? '')) return undefined
  const at = ['the', 'my', 'all'].includes(tokens[to + 1]?.text ?? '') ? to + 2 : to + 1
  return mentions.find(
    ({ from, meanings }) =>
      from === at &&
      meanings.some((m) => m.kind === 'shadow' || (m.kind === 'noun' && m.noun === 'other')),
  )
}

/** Whether main bolts, studs or a thread stand in the same sentence, a few clauses off at most. */
export function isFastened(figure: Figure, parts: Parts): boolean {
  const { from } = figure
  const { choiceMentions, scopes, tokens } = parts
  const here = scopes.sentence[from] ?? 0
  const alone = standsAlone(figure, parts)
  const near = (at: number): boolean => {
    const there = scopes.sentence[at] ?? 0
    if (alone) return there <= here && there >= here - 2
    // "Main studs. The box says moly and 100 foot pounds".
    if (there === here - 1) return true
    const clauses = Math.abs((scopes.clause[from] ?? 0) - (scopes.clause[at] ?? 0))
    return there === here && clauses <= 5
  }
  const named = choiceMentions.filter((mention) => near(mention.from) && isFasteners(mention))
  const others = choiceMentions.filter(
    (mention) =>
      near(mention.from) &&
      mention.meanings.some(
        (m) =>
          // The chromoly of studs is no part.
          (m.kind === 'shadow' && !isMetal(mention, parts)) ||
          (m.kind === 'noun' && m.noun === 'other'),
      ),
  )
  // "Rod bolts get stretched, mains are studs, 90 ft lbs": the last that were named.
  const last = named.filter(({ to }) => to <= from).at(-1)
  if (last && others.every((other) => other.to <= last.from)) return true
  const other = others.length > 0
  const lubed = choiceMentions.some(
    (mention) =>
      scopes.clause[mention.from] === scopes.clause[from] &&
      mention.meanings.some((m) => m.kind === 'choice' && m.fact === 'fastenerLubricant'),
  )
  const mains = ({ kind, text }: { kind: string; text: string }): boolean =>
    kind === 'thread' || parts.lexicon.words.parts.mains.has(text)
  const said = named.length > 0 || lubed || tokens.some((token, at) => mains(token) && near(at))
  return !other && said
}

function isMetal({ from, to }: { from: number; to: number }, { tokens, lexicon }: Parts): boolean {
  const said = tokens.slice(from, to).map(({ text }) => text)
  return said.every((word) => lexicon.words.fasteners.metals.has(word))
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

const GRADES: ReadonlyMap<number, string> = new Map([
  [8.8, 'iso-8.8'],
  [10.9, 'iso-10.9'],
  [12.9, 'iso-12.9'],
])

const LINKS_TO_GRADE = new Set(', are is : = be only just still a in of'.split(' '))

/** "M12x1.75 10.9", "bolts, 12.9": a strength class right after the fasteners. */
export function readGrade(
  figure: Figure,
  { tokens, choiceMentions, lexicon }: Parts,
  into: Findings,
): boolean {
  const answer = GRADES.get(figure.value)
  if (!answer || figure.unit || figure.ratio || figure.low !== undefined) return false
  let at = figure.from
  while (at > figure.from - 3 && LINKS_TO_GRADE.has(tokens[at - 1]?.text ?? '')) at -= 1
  const classed = lexicon.words.fasteners.grades.has(tokens[at - 1]?.text ?? '')
  const fastened =
    classed ||
    // "12.9 cap head bolts".
    choiceMentions.some((mention) => mention.from === figure.to && isFasteners(mention)) ||
    tokens[at - 1]?.kind === 'thread' ||
    choiceMentions.some(
      ({ to, meanings }) =>
        to === at &&
        meanings.some((m) => m.kind === 'noun' && (m.noun === 'bolts' || m.noun === 'studs')),
    )
  if (!fastened) return false
  into.readings.push({
    key: 'fastenerGrade',
    answer,
    from: figure.from,
    to: figure.to,
    strength: 3,
  })
  return true
}

/** "7/16-14 bolts, grade 8, oiled, 70": the bare figure that ends a list of what the fasteners are. */
export function readListedTorque(figure: Figure, parts: Parts, into: Findings): boolean {
  const { value, unit, decimal, ratio, from, to } = figure
  const { choiceMentions, scopes, tokens, input } = parts
  const like = !unit && !ratio && !decimal && value >= 40 && value <= 140 && value % 5 === 0
  const ends =
    (tokens[to]?.kind ?? 'mark') === 'mark' || ['w', 'with'].includes(tokens[to]?.text ?? '')
  const item = tokens[from - 1]?.text === ',' && ends
  // "M10x1.25 at 60".
  const wrenched = tokens[from - 1]?.text === 'at' && tokens[from - 2]?.kind === 'thread' && ends
  if (like && wrenched) {
    const answer = { value, unit: 'lb ft' }
    into.readings.push({ key: 'fastenerTorque', answer, from, to, strength: 1 })
    return true
  }
  if (!like || !item || input.money.said) return false
  const said = choiceMentions.filter(
    (mention) => scopes.sentence[mention.from] === scopes.sentence[from] && mention.to <= from,
  )
  const how = said.some(({ meanings }) =>
    meanings.some(
      (m) => m.kind === 'choice' && (m.fact === 'fastenerLubricant' || m.fact === 'fastenerGrade'),
    ),
  )
  if (!how || !said.some(isFasteners)) return false
  const answer = { value, unit: 'lb ft' }
  into.readings.push({ key: 'fastenerTorque', answer, from, to, strength: 1 })
  return true
}
