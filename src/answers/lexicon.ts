import type { Answer } from '../../shared/answers.ts'
import { FACT_KEYS, type Fact, type FactKey, fact } from '../../shared/fact-keys.ts'
import type { RouteId } from '../../shared/route-ids.ts'
import { type Clue, clueTree } from './clues.ts'
import { addPhrase, addPhrases, type PhraseTree, phraseTree } from './phrases.ts'
import { type QuestionWords, questionWords } from './question-words.ts'
import {
  fixedTree,
  inPartTree,
  jobQuestionTree,
  plainTree,
  pricedTree,
  routeTree,
  wordSets,
} from './small-trees.ts'
import type { WordSets } from './small-words.ts'
import { type Speller, speller } from './spelling.ts'
import { type UnitReader, unitReader } from './units-in-text.ts'
import type { MarkerVocabulary, Vocabulary } from './vocabulary.ts'

/** What names a figure, or takes it out of the running. */
export type FigureMeaning =
  | {
      readonly kind: 'cue'
      readonly fact: FactKey
      readonly weak: boolean
      readonly needsUnit: boolean
      readonly before?: boolean
      readonly beside?: ReadonlySet<string>
      readonly notBeside?: ReadonlySet<string>
    }
  | {
      readonly kind: 'noise'
      readonly what: string
      readonly fits: readonly string[]
      readonly most: number
      readonly counted: boolean
      readonly unit: boolean
    }
  | { readonly kind: 'octane' }

/** What settles a choice, or may. */
export type ChoiceMeaning =
  | { readonly kind: 'choice'; readonly fact: FactKey; readonly value: string }
  | { readonly kind: 'noun'; readonly noun: string }
  | {
      readonly kind: 'attribute'
      readonly of: Readonly<Record<string, Readonly<Record<string, string>>>>
    }
  | { readonly kind: 'ambiguous'; readonly why: string; readonly unless?: FactKey }
  | { readonly kind: 'shadow' }

export type Marker = Exclude<keyof MarkerVocabulary, 'fillers'>
export type IntentName = keyof Vocabulary['intents']

/** A vocabulary made ready to read with. */
export interface Lexicon {
  readonly vocabulary: Vocabulary
  readonly units: UnitReader
  readonly figures: PhraseTree<FigureMeaning>
  readonly choices: PhraseTree<ChoiceMeaning>
  /** What is described rather than named. */
  readonly clues: PhraseTree<Clue>
  readonly inPart: PhraseTree<true>
  /** Words that are a figure by themselves. */
  readonly fixed: PhraseTree<{ fact: FactKey; answer: Answer }>
  /** Work and parts that have a price. */
  readonly priced: PhraseTree<FactKey>
  readonly denied: PhraseTree<{ fact: FactKey; value: string }>
  readonly asked: ReadonlyMap<FactKey, PhraseTree<string>>
  /** Names of facts, for "why" and "I don't know". */
  readonly names: PhraseTree<FactKey>
  readonly markers: PhraseTree<Marker>
  readonly intents: PhraseTree<IntentName>
  readonly keeping: PhraseTree<true>
  readonly leaving: PhraseTree<true>
  readonly routesAsked: PhraseTree<RouteId>
  /** What makes a question one about the job. */
  readonly jobQuestions: PhraseTree<'holds' | 'wants'>
  readonly questions: QuestionWords
  readonly fillers: ReadonlySet<string>
  readonly between: ReadonlySet<string>
  readonly speller: Speller
  readonly words: WordSets
  /** Small words before a request that do not change it. */
  readonly leads: ReadonlySet<string>
}

/** Make a vocabulary ready; done once for each vocabulary. */
export function lexiconOf(vocabulary: Vocabulary): Lexicon {
  const { asking } = vocabulary.words
  const markers = phraseTree<Marker>()
  for (const [name, phrases] of Object.entries(vocabulary.markers)) {
    if (name !== 'fillers') addPhrases(markers, phrases, name as Marker)
  }
  const intents = phraseTree<IntentName>()
  for (const [name, phrases] of Object.entries(vocabulary.intents)) {
    addPhrases(intents, phrases, name as IntentName)
  }
  return {
    vocabulary,
    units: unitReader(vocabulary),
    figures: figureTree(vocabulary),
    choices: choiceTree(vocabulary),
    clues: clueTree(vocabulary),
    inPart: inPartTree(vocabulary),
    fixed: fixedTree(vocabulary),
    priced: pricedTree(vocabulary),
    denied: deniedTree(vocabulary),
    asked: askedTrees(vocabulary),
    names: nameTree(vocabulary),
    markers,
    intents,
    jobQuestions: jobQuestionTree(vocabulary),
    keeping: plainTree(vocabulary.keeping),
    leaving: plainTree(vocabulary.leaving),
    routesAsked: routeTree(vocabulary),
    questions: questionWords(vocabulary.questions),
    fillers: new Set(vocabulary.markers.fillers),
    between: new Set(vocabulary.parts.between),
    speller: speller(vocabulary),
    words: wordSets(vocabulary),
    leads: new Set([...asking.openers, ...asking.leads]),
  }
}

function figureTree(vocabulary: Vocabulary): PhraseTree<FigureMeaning> {
  const tree = phraseTree<FigureMeaning>()
  for (const { fact: key, phrases, weak = false, needsUnit = false, ...place } of vocabulary.cues) {
    addPhrases(tree, phrases, {
      kind: 'cue',
      fact: key as FactKey,
      weak,
      needsUnit,
      ...(place.before ? { before: true } : {}),
      ...(place.beside ? { beside: new Set(place.beside) } : {}),
      ...(place.notBeside ? { notBeside: new Set(place.notBeside) } : {}),
    })
  }
  for (const {
    what,
    phrases,
    fits,
    most = Infinity,
    counted = false,
    unit = false,
  } of vocabulary.noise) {
    addPhrases(tree, phrases, { kind: 'noise', what, fits, most, counted, unit })
  }
  addPhrases(tree, vocabulary.octane.words, { kind: 'octane' })
  for (const key of FACT_KEYS) {
    const entry = fact(key)
    if (entry.kind === 'choice' || entry.kind === 'thread') continue
    const listed = new Set(
      vocabulary.cues.filter((cue) => cue.fact === key).flatMap((cue) => cue.phrases),
    )
    for (const name of [entry.label, entry.short].filter(
      (each) => !listed.has(each.toLowerCase()),
    )) {
      addPhrase(tree, name, { kind: 'cue', fact: key, weak: false, needsUnit: false })
    }
  }
  return tree
}

function nameTree({ cues, names }: Vocabulary): PhraseTree<FactKey> {
  const tree = phraseTree<FactKey>()
  for (const { fact: key, phrases, weak, needsUnit, beside } of cues) {
    if (!weak && !needsUnit && !beside) addPhrases(tree, phrases, key as FactKey)
  }
  for (const [key, phrases] of Object.entries(names)) addPhrases(tree, phrases, key as FactKey)
  for (const key of FACT_KEYS) addPhrases(tree, [fact(key).label, fact(key).short], key)
  return tree
}

function choiceTree({ choices, ambiguous, parts, asked }: Vocabulary): PhraseTree<ChoiceMeaning> {
  const tree = phraseTree<ChoiceMeaning>()
  for (const [key, values] of Object.entries(choices)) {
    for (const [value, phrases] of Object.entries(values)) {
      addPhrases(tree, phrases, { kind: 'choice', fact: key as FactKey, value })
    }
  }
  for (const { phrases, why, unless } of ambiguous) {
    const meaning = { kind: 'ambiguous' as const, why }
    addPhrases(tree, phrases, unless ? { ...meaning, unless: unless as FactKey } : meaning)
  }
  for (const [noun, phrases] of Object.entries(parts.nouns)) {
    addPhrases(tree, phrases, { kind: 'noun', noun })
  }
  for (const { phrases, of } of parts.attributes)
    addPhrases(tree, phrases, { kind: 'attribute', of })
  addPhrases(tree, parts.shadows, { kind: 'shadow' })
  for (const key of FACT_KEYS) addNamed(tree, fact(key), asked[key] ?? {})
  return tree
}

/** "induction: Turbocharged", "cap fastening two-bolt": a fact's name before any of its choices. */
function addNamed(
  tree: PhraseTree<ChoiceMeaning>,
  entry: Fact,
  asked: Readonly<Record<string, readonly string[]>>,
): void {
  if (entry.kind !== 'choice') return
  for (const [value, label] of Object.entries(entry.choices)) {
    for (const name of [entry.short, entry.label]) {
      for (const said of [value, label]) {
        const meaning = { kind: 'choice' as const, fact: entry.key, value }
        addPhrases(tree, [`${name} ${said}`, `${name}: ${said}`, `${name} is ${said}`], meaning)
      }
      // "Fuel: pump": a word that answers the question answers it by name too.
      const words = asked[value] ?? []
      const meaning = { kind: 'choice' as const, fact: entry.key, value }
      addPhrases(
        tree,
        words.map((word) => `${name}: ${word}`),
        meaning,
      )
    }
  }
}

function deniedTree({ denied }: Vocabulary): Lexicon['denied'] {
  const tree = phraseTree<{ fact: FactKey; value: string }>()
  for (const [key, values] of Object.entries(denied)) {
    for (const [value, phrases] of Object.entries(values)) {
      addPhrases(tree, phrases, { fact: key as FactKey, value })
    }
  }
  return tree
}

function askedTrees({ asked, choices }: Vocabulary): Lexicon['asked'] {
  const trees = new Map<FactKey, PhraseTree<string>>()
  for (const key of FACT_KEYS) {
    const entry = fact(key)
    if (entry.kind !== 'choice') continue
    const tree = phraseTree<string>()
    for (const [value, label] of Object.entries(entry.choices)) {
      const words = [...(asked[key]?.[value] ?? []), ...(choices[key]?.[value] ?? [])]
      for (const phrase of [value, label, ...words]) addPhrase(tree, phrase, value)
    }
    trees.set(key, tree)
  }
  return trees
}
