import type { FactKey } from '../../shared/fact-keys.ts'
import { isAttribute, isNoun, nounOf } from './attributes.ts'
import type { ChoiceInput } from './choice-input.ts'
import type { Reading } from './findings.ts'
import type { ChoiceMeaning, Marker } from './lexicon.ts'
import type { Mention } from './mentions.ts'
import { longestAt } from './phrases.ts'

/** Parts that a lone word may be said of. */
const OWNERS = new Set(['caps', 'block', 'bolts', 'studs', 'register'])
/** Those that a lone word is said of only right after them. */
const NEAR_ONLY = new Set(['bolts', 'studs', 'register'])
/** "They're gray iron": said of the caps spoken of before. */
const THEY = new Set(['they', 'theyre', 'these', 'those'])

/**
 * "V8, aluminium, 11:1", "splayed caps, billet steel": a material in a clause of its
 * own is the caps' if caps were just spoken of, else the block's; after any other part
 * it is nobody's.
 */
export function aloneReadings(
  mentions: readonly Mention<ChoiceMeaning>[],
  i: number,
  mention: Mention<ChoiceMeaning>,
  input: ChoiceInput,
): Reading[] {
  const { from, to } = mention
  if (!isAttribute(mention) || input.negations.denies(mention)) return []
  const ofCaps = besideAsked(mentions, mention, input)
  if (ofCaps.length > 0 || (from === 0 && !opensList(mention, input))) return ofCaps
  const alone = standsAlone(mention, input)
  const head = listHead(mentions, i, input)
  const part = input.wrenched(from)
    ? 'bolts'
    : alone && partSpokenOf(mentions, head, alone === 'pointed', input)
  if (!part || speaksOfOther(from, input)) return []
  return mention.meanings.flatMap((meaning) =>
    meaning.kind === 'attribute'
      ? Object.entries(meaning.of[part] ?? ofCapsOnly(meaning.of, mentions[i - 1])).map(
          ([key, value]) => ({
            key: key as FactKey,
            answer: value,
            from,
            to,
            strength: 2 as const,
          }),
        )
      : [],
  )
}

/** "Splayed 4 bolt, steel": a material that no block is of, after the number of bolts. */
function ofCapsOnly(
  of: Readonly<Record<string, Readonly<Record<string, string>>>>,
  before: Mention<ChoiceMeaning> | undefined,
): Readonly<Record<string, string>> {
  const bolts = before?.meanings.some((m) => m.kind === 'choice' && m.fact === 'capFastening')
  return bolts && of.caps?.capMaterial ? { capMaterial: of.caps.capMaterial } : {}
}

/** Most items of a list that are looked back over. */
const LONGEST_LIST = 4

/** "Two bolt caps, gray iron, factory": where the list starts in which a lone word stands. */
function listHead(
  mentions: readonly Mention<ChoiceMeaning>[],
  i: number,
  input: ChoiceInput,
): number {
  const { clause } = input.scopes
  let head = i
  while (head > 0 && i - head < LONGEST_LIST) {
    const [before, here] = [mentions[head - 1], mentions[head]] as [
      Mention<ChoiceMeaning>,
      Mention<ChoiceMeaning>,
    ]
    const next = clause[before.from] === (clause[here.from] ?? 0) - 1
    if (!next || !isAttribute(before) || isNoun(before) || !standsAlone(before, input)) break
    head -= 1
  }
  return head
}

/** Questions that are about the caps. */
const OF_CAPS = new Set<FactKey>(['capMaterial', 'capOrigin', 'capHistory', 'registerFit'])
/** What an answer to one of them may say of the caps besides. */
const BESIDE = new Set(['capMaterial', 'capOrigin'])
/** Longest answer, in words, that speaks of what was asked throughout. */
const SHORT = 15

/** "Nodular, bought replacements", to the question what the caps are: no other part is spoken of. */
function besideAsked(
  mentions: readonly Mention<ChoiceMeaning>[],
  { from, to, meanings }: Mention<ChoiceMeaning>,
  { asking, tokens, lexicon }: ChoiceInput,
): Reading[] {
  const caps = ({ meanings: all }: Mention<ChoiceMeaning>): boolean =>
    all.every(
      (m) => m.kind === 'attribute' || (m.kind === 'noun' && ['caps', 'ones'].includes(m.noun)),
    )
  if (asking === undefined || !OF_CAPS.has(asking)) return []
  if (tokens.length > SHORT || !mentions.every(caps)) return []
  // "They are original", to the question of their past, answers that.
  const tree = lexicon.asked.get(asking)
  if (tree && longestAt(tree, tokens, from)) return []
  return meanings.flatMap((meaning) =>
    meaning.kind === 'attribute'
      ? Object.entries(meaning.of.caps ?? {})
          .filter(([key]) => BESIDE.has(key) && key !== asking)
          .map(([key, answer]) => ({ key: key as FactKey, answer, from, to, strength: 2 as const }))
      : [],
  )
}

const JOINING = new Set([',', 'and', 'but', 'mine', 'mines'])

/** "Grey iron, 4 bolt, 6 grand rev limit": the first item of a list. */
function opensList({ to }: Mention<ChoiceMeaning>, { tokens, asking }: ChoiceInput): boolean {
  return asking === undefined && tokens[to]?.text === ',' && tokens.length > to + 2
}

const TURNS: ReadonlySet<Marker> = new Set(['correction', 'present'])

/** Whether its clause holds nothing else; "pointed" when it opens on "they're". */
function standsAlone(
  { from, to }: Mention<ChoiceMeaning>,
  { tokens, scopes, lexicon }: ChoiceInput,
): 'alone' | 'pointed' | undefined {
  const own = (at: number): boolean => scopes.clause[at] === scopes.clause[from]
  // "Turns out they are steel".
  const turns = (at: number): boolean =>
    scopes.markers.some(
      (one) => one.from <= at && at < one.to && one.meanings.some((m) => TURNS.has(m)),
    )
  let found: 'alone' | 'pointed' = 'alone'
  for (let at = from - 1; at >= 0 && own(at); at -= 1) {
    const text = tokens[at]?.text ?? ''
    if (THEY.has(text)) found = 'pointed'
    else if (turns(at)) continue
    else if (!JOINING.has(text) && !lexicon.fillers.has(text)) return undefined
  }
  return isFollowed(to, own, tokens, lexicon) ? undefined : found
}

/** Whether its clause goes on; not by another lone word, as in "factory and all matched". */
function isFollowed(
  to: number,
  own: (at: number) => boolean,
  tokens: ChoiceInput['tokens'],
  lexicon: ChoiceInput['lexicon'],
): boolean {
  const goesOn = (at: number): boolean =>
    at < tokens.length && own(at) && tokens[at]?.kind !== 'mark'
  if (!goesOn(to)) return false
  if (!JOINING.has(tokens[to]?.text ?? '')) return true
  let at = to + 1
  while (goesOn(at) && lexicon.fillers.has(tokens[at]?.text ?? '')) at += 1
  const next = longestAt(lexicon.choices, tokens, at)
  return !next || goesOn(next.to) || !next.meanings.every(({ kind }) => kind === 'attribute')
}

/** The part that it is said of, by the part spoken of just before. */
function partSpokenOf(
  mentions: readonly Mention<ChoiceMeaning>[],
  i: number,
  pointed: boolean,
  input: ChoiceInput,
): string | undefined {
  const from = mentions[i]?.from ?? 0
  const before = spokenOf(mentions, i, input)
  const nouns = before?.meanings.map((meaning) => nounOf(meaning, before, input)) ?? []
  const noun = nouns.find((found) => found !== undefined) ?? 'block'
  const { clause } = input.scopes
  const near = before !== undefined && clause[before.from] === (clause[from] ?? 0) - 1
  if (near && isNoun(before) && !OWNERS.has(noun)) return undefined
  if (near && NEAR_ONLY.has(noun)) return pointed ? undefined : noun
  if (noun === 'caps' && (near || pointed)) return 'caps'
  return pointed ? undefined : 'block'
}

/** Parts that are only measured at: "ends at the crank centerline", "380 hp at the wheels". */
function isMeasure(at: number, { tokens, lexicon }: ChoiceInput): boolean {
  if (lexicon.words.parts.centerline.has(tokens[at + 1]?.text ?? '')) return true
  return tokens[at - 1]?.text === 'the' && AT.has(tokens[at - 2]?.text ?? '')
}

/** The part last named in the clause before, else whatever was. */
function spokenOf(
  mentions: readonly Mention<ChoiceMeaning>[],
  i: number,
  input: ChoiceInput,
): Mention<ChoiceMeaning> | undefined {
  const { clause } = input.scopes
  const here = clause[mentions[i]?.from ?? 0] ?? 0
  for (let j = i - 1; j >= 0 && i - j <= LONGEST_LIST; j -= 1) {
    const before = mentions[j] as Mention<ChoiceMeaning>
    if (clause[before.from] !== here - 1) break
    if (isMeasure(before.from, input)) continue
    if (before.meanings.some((meaning) => nounOf(meaning, before, input) !== undefined))
      return before
  }
  const last = mentions[i - 1]
  return last && !isMeasure(last.from, input) ? last : undefined
}

const AT = new Set(['at', 'to', 'on'])

/** Whether the clause before names another part: "crank, forged steel". */
function speaksOfOther(from: number, input: ChoiceInput): boolean {
  const { tokens, scopes, lexicon } = input
  const clause = (scopes.clause[from] ?? 0) - 1
  for (let at = from - 1; at >= 0 && (scopes.clause[at] ?? 0) >= clause; at -= 1) {
    if (isMeasure(at, input)) continue
    // Of "5.7 rods" only the length is told.
    const measured = tokens[at - 1]?.kind === 'number'
    if (measured && lexicon.words.parts.rods.has(tokens[at]?.text ?? '')) continue
    const found = longestAt(lexicon.choices, tokens, at)
    if (!found || found.to > from) continue
    // What stands nearest decides: "pulled the pan and it's a two bolt. Iron."
    return found.meanings.some(
      (m) => m.kind === 'shadow' || (m.kind === 'noun' && m.noun === 'other'),
    )
  }
  return false
}
