import choices from '../../rules/vocabulary/choices.json' with { type: 'json' }
import cues from '../../rules/vocabulary/cues.json' with { type: 'json' }
import intents from '../../rules/vocabulary/intents.json' with { type: 'json' }
import markers from '../../rules/vocabulary/markers.json' with { type: 'json' }
import names from '../../rules/vocabulary/names.json' with { type: 'json' }
import noise from '../../rules/vocabulary/noise.json' with { type: 'json' }
import numbers from '../../rules/vocabulary/numbers.json' with { type: 'json' }
import parts from '../../rules/vocabulary/parts.json' with { type: 'json' }
import spelling from '../../rules/vocabulary/spelling.json' with { type: 'json' }
import units from '../../rules/vocabulary/units.json' with { type: 'json' }
import { readVocabulary, type Vocabulary } from './vocabulary.ts'

/** The trade's words as the rulebook ships them; a shop may add to a copy. */
export function defaultVocabulary(): Vocabulary {
  return readVocabulary({
    ...choices,
    ...intents,
    cues,
    markers,
    names,
    noise,
    numbers,
    parts,
    spelling,
    units,
  })
}
