import type { FactKey } from '../../shared/fact-keys.ts'
import type { ChoiceMeaning, Lexicon } from './lexicon.ts'
import type { Mention } from './mentions.ts'
import type { Negations } from './negation.ts'
import type { Scopes } from './scopes.ts'
import type { Token } from './tokens.ts'

/** What the reading of choices looks at beside the phrases themselves. */
export interface ChoiceInput {
  readonly tokens: readonly Token[]
  readonly lexicon: Lexicon
  readonly scopes: Scopes
  readonly negations: Negations
  /** The fact that the last question asked for. */
  readonly asking: FactKey | undefined
  /** Take hypotheticals as said: the message asks what would be. */
  readonly whatIf: boolean
  /** Parts that a price was given for: they are not yet on the engine. */
  readonly priced: (mention: Mention<ChoiceMeaning>) => boolean
  /** Whether a torque stands right before, with only small words between. */
  readonly wrenched: (at: number) => boolean
  /** Whether its sentence asks something: "can they line bore?" */
  readonly asksAbout: (at: number) => boolean
  /** Words inside the name of a measure: the bolts of "bolt span". */
  readonly measured: (mention: Mention<ChoiceMeaning>) => boolean
}
