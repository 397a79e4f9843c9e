import { type Answer, readAnswer } from '../../shared/answers.ts'
import type { FactKey } from '../../shared/fact-keys.ts'
import type { RouteId } from '../../shared/route-ids.ts'
import type { Lexicon } from './lexicon.ts'
import { addPhrases, type PhraseTree, phraseTree } from './phrases.ts'
import type { WordSets } from './small-words.ts'
import type { Vocabulary } from './vocabulary.ts'

/** Words after a price that make it the price of a part of the job. */
export function inPartTree({ units }: Vocabulary): PhraseTree<true> {
  const tree = phraseTree<true>()
  addPhrases(tree, units.inPart, true)
  return tree
}

/** Work and parts, by the fact that their price is. */
export function pricedTree({ units }: Vocabulary): PhraseTree<FactKey> {
  const tree = phraseTree<FactKey>()
  for (const [key, phrases] of Object.entries(units.pricedAs)) {
    addPhrases(tree, phrases, key as FactKey)
  }
  return tree
}

/** Words that are a figure by themselves; that each answer fits its fact was checked when they were read. */
export function fixedTree({ units }: Vocabulary): Lexicon['fixed'] {
  const tree = phraseTree<{ fact: FactKey; answer: Answer }>()
  for (const { fact: key, answer, phrases } of units.fixedFigures) {
    const read = readAnswer(key as FactKey, answer)
    if ('ok' in read) addPhrases(tree, phrases, { fact: key as FactKey, answer: read.ok })
  }
  return tree
}

/** What people call the routes. */
export function routeTree({ routesAsked }: Vocabulary): PhraseTree<RouteId> {
  const tree = phraseTree<RouteId>()
  for (const [id, phrases] of Object.entries(routesAsked)) {
    addPhrases(tree, phrases, id as RouteId)
  }
  return tree
}

/** What makes a question one about the job. */
export function jobQuestionTree({ jobQuestions }: Vocabulary): Lexicon['jobQuestions'] {
  const tree = phraseTree<'holds' | 'wants'>()
  addPhrases(tree, jobQuestions.holds, 'holds')
  addPhrases(tree, jobQuestions.wants, 'wants')
  return tree
}

/** The small words, as sets. */
export function wordSets({ words }: Vocabulary): WordSets {
  const groups = Object.entries(words).map(([group, lists]) => [
    group,
    Object.fromEntries(Object.entries(lists).map(([name, list]) => [name, new Set(list)])),
  ])
  return Object.fromEntries(groups) as WordSets
}

/** Phrases that only are there or not. */
export function plainTree(list: readonly string[]): PhraseTree<true> {
  const tree = phraseTree<true>()
  addPhrases(tree, list, true)
  return tree
}
