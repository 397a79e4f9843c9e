import answers from '../../rules/vocabulary/answers.json' with { type: 'json' }
import blockChoices from '../../rules/vocabulary/choices-block.json' with { type: 'json' }
import capChoices from '../../rules/vocabulary/choices-caps.json' with { type: 'json' }
import engineChoices from '../../rules/vocabulary/choices-engine.json' with { type: 'json' }
import fastenerChoices from '../../rules/vocabulary/choices-fasteners.json' with { type: 'json' }
import planChoices from '../../rules/vocabulary/choices-plan.json' with { type: 'json' }
import clues from '../../rules/vocabulary/clues.json' with { type: 'json' }
import geometryCues from '../../rules/vocabulary/cues-geometry.json' with { type: 'json' }
import moneyCues from '../../rules/vocabulary/cues-money.json' with { type: 'json' }
import planCues from '../../rules/vocabulary/cues-plan.json' with { type: 'json' }
import intents from '../../rules/vocabulary/intents.json' with { type: 'json' }
import markers from '../../rules/vocabulary/markers.json' with { type: 'json' }
import names from '../../rules/vocabulary/names.json' with { type: 'json' }
import noise from '../../rules/vocabulary/noise.json' with { type: 'json' }
import numbers from '../../rules/vocabulary/numbers.json' with { type: 'json' }
import parts from '../../rules/vocabulary/parts.json' with { type: 'json' }
import questions from '../../rules/vocabulary/questions.json' with { type: 'json' }
import shadows from '../../rules/vocabulary/shadows.json' with { type: 'json' }
import spelling from '../../rules/vocabulary/spelling.json' with { type: 'json' }
import units from '../../rules/vocabulary/units.json' with { type: 'json' }
import words from '../../rules/vocabulary/words.json' with { type: 'json' }
import { readVocabulary, type Vocabulary } from './vocabulary.ts'

/** The trade's words as the rulebook ships them, before they are checked: a shop adds to a copy. */
export const SHIPPED_VOCABULARY = {
  ...answers,
  ...intents,
  choices: {
    ...engineChoices,
    ...blockChoices,
    ...capChoices,
    ...fastenerChoices,
    ...planChoices,
  },
  clues,
  cues: [...geometryCues, ...planCues, ...moneyCues],
  markers,
  names,
  noise,
  numbers,
  parts: { ...parts, shadows },
  questions,
  spelling,
  units,
  words,
}

/** The trade's words as the rulebook ships them. */
export function defaultVocabulary(): Vocabulary {
  return readVocabulary(SHIPPED_VOCABULARY)
}
