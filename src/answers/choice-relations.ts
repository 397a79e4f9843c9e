import { type FactKey, fact } from '../../shared/fact-keys.ts'
import type { ChoiceInput } from './choice-input.ts'
import type { Reading } from './findings.ts'
import type { Scopes } from './scopes.ts'

/** What only a machinist can say is said of others: "he says the webs are thick enough". */
export const SHOP_SAYS = new Set<FactKey>(['websAllowFourBolt', 'shopLineBores'])
/** Facts that a wish does not change: what is on the block today. */
const HARDWARE = new Set(['caps', 'fasteners'])

/** Whether a reading says what is, and of this engine. */
export function stands(reading: Reading, input: ChoiceInput): boolean {
  const { scopes, whatIf } = input
  const outside = scopes.outside[reading.to - 1] ?? scopes.outside[reading.from]
  if (outside === 'other') return SHOP_SAYS.has(reading.key)
  // What they have been through is asked of their past.
  if (outside === 'past') {
    if (reading.key !== 'capHistory') return false
    return reading.key === input.asking || !ofAnother(reading, input)
  }
  if (whatIf) return true
  if (outside === 'hypothetical') return false
  if (isWondered(reading, input)) return false
  if (SHOP_SAYS.has(reading.key) && input.asksAbout(reading.from)) return false
  return !(isHardware(reading.key) && scopes.planned[reading.from])
}

/** "The block I sold had walked caps": of another engine, where "they walked last time" is not. */
function ofAnother(
  { from }: Reading,
  { tokens, scopes: { sentence }, lexicon }: ChoiceInput,
): boolean {
  const { others, names } = lexicon.words.engines
  const another = (word: string): boolean => others.has(word) || names.has(word)
  // "I got this two bolt block, and last time apart the caps had been walking".
  const own = (at: number): boolean =>
    tokens.slice(Math.max(0, at - 4), at).some(({ text }) => THIS.has(text))
  return tokens.some(({ text }, at) => sentence[at] === sentence[from] && another(text) && !own(at))
}

const THIS = new Set(['this', 'these'])

/** "Iron caps? Not sure": a few words with a question mark right after them. */
function isWondered({ from, to }: Reading, { tokens, scopes }: ChoiceInput): boolean {
  return (
    tokens[to]?.text === '?' && (from < 3 || scopes.sentence[from - 3] !== scopes.sentence[from])
  )
}

/** Whether a fact is of what holds the crank today. */
export function isHardware(key: FactKey): boolean {
  return HARDWARE.has(fact(key).topic) || key === 'capFastening'
}

/** "On the street, and now and then the strip" is both. */
function withStrip(readings: readonly Reading[]): readonly Reading[] {
  const of = (...uses: string[]): Reading[] =>
    readings.filter(({ key, answer }) => key === 'use' && uses.includes(String(answer)))
  if (of('street-strip').length > 0) {
    return readings.filter((reading) => !of('street', 'drag').includes(reading))
  }
  const [street] = of('street')
  const [strip] = of('drag', 'street-strip')
  if (!street || !strip) return readings
  const both: Reading = {
    ...strip,
    answer: 'street-strip',
    from: Math.min(street.from, strip.from),
    to: Math.max(street.to, strip.to),
  }
  return [...readings.filter((reading) => !of('street', 'drag').includes(reading)), both]
}

/** Readings that go together: a turbo with a shot is turbocharged; "four bolt" beside "splayed" is splayed. */
export function settleRelated(readings: readonly Reading[], { clause }: Scopes): Reading[] {
  const has = (key: FactKey, value: string): boolean =>
    readings.some((reading) => reading.key === key && reading.answer === value)
  const sameClause = (value: string, at: number): boolean =>
    readings.some((reading) => reading.answer === value && clause[reading.from] === clause[at])
  const webs = new Set(
    readings.filter(({ key }) => key === 'websAllowFourBolt').map(({ from }) => clause[from]),
  )
  return withStrip(readings).filter(({ key, answer, from, to }) => {
    // "Webs are too thin for four bolts" counts no bolts.
    const counted = key === 'capFastening' || key === 'fastenerKind'
    if (counted && webs.has(clause[from])) return false
    // "No boost, just a 125 shot of nitrous".
    if (key === 'induction' && answer === 'naturally-aspirated') return !has('induction', 'nitrous')
    if (key === 'induction' && answer === 'nitrous') {
      return !has('induction', 'turbocharged') && !has('induction', 'supercharged')
    }
    if (key === 'capFastening' && (answer === 'four-bolt' || answer === 'two-bolt')) {
      const more = [
        'cross-bolted',
        'girdle',
        ...(answer === 'four-bolt' ? ['four-bolt-splayed'] : []),
      ]
      return !more.some((value) => has('capFastening', value))
    }
    // "Circuit racing, six hours at a time".
    if (key === 'use' && answer === 'track') return !sameClause('endurance', from)
    if (key === 'capMaterial' && answer === 'steel') return !sameClause('sintered-steel', from)
    // "First torque, and then 90 degrees".
    if (key === 'tightening' && answer === 'torque-wrench')
      return !has('tightening', 'torque-angle')
    // "Tows a boat".
    if (key === 'use' && answer === 'endurance') return !has('use', 'towing')
    // "98 octane race gas".
    const race = readings.some((one) => one.answer === 'race-gasoline' && one.from === to)
    if (key === 'fuel' && answer === 'pump-gasoline' && race) return false
    // "E85 from the pump".
    if (key === 'fuel' && answer === 'pump-gasoline')
      return !has('fuel', 'e85') || !sameClause('e85', from)
    if (key === 'layout' && answer === 'inline-4') return !has('layout', 'flat-4')
    if (key === 'layout' && answer === 'inline-6') return !has('layout', 'flat-6')
    if (key === 'layout' && answer === 'v8-cross-plane') return !has('layout', 'v8-flat-plane')
    return true
  })
}

/** "Cross bolted, no wait, mine is a four bolt": what a correction parts is not one of two. */
export function isTakenBack(
  { key, answer, from }: Reading,
  readings: readonly Reading[],
  { scopes }: ChoiceInput,
): boolean {
  const later = readings.filter(
    (one) => one.key === key && one.from > from && one.answer !== answer,
  )
  if (later.length === 0) return false
  return scopes.markers.some(
    (marker) =>
      marker.meanings.includes('correction') &&
      marker.from > from &&
      later.some((one) => one.from >= marker.from),
  )
}

/** "No one within a hundred miles can line bore it": a clause whose subject is nobody. */
export function isNobodys(
  at: number,
  { tokens, scopes: { clause }, lexicon }: ChoiceInput,
): boolean {
  const { nobody } = lexicon.words.persons
  for (let from = at - 1; from >= 0 && clause[from] === clause[at]; from -= 1) {
    const word = tokens[from]?.text ?? ''
    if (nobody.has(word) || nobody.has(`${word} ${tokens[from + 1]?.text}`)) return true
  }
  return false
}
