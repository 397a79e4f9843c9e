import type { FactKey } from '../../shared/fact-keys.ts'
import type { Problem } from '../../shared/problem.ts'
import type { Preview } from './layout.ts'
import type { OlderLink } from './older-link.ts'
import type { UnitSystem } from './page-href.ts'

/** One question that was asked and how it was answered. */
export interface Exchange {
  readonly fact: FactKey
  /** As it was asked. */
  readonly question: string
  /** As the person said it. */
  readonly answer: string
  /** `helper`: set by whoever made the link, a helper or a shop, and not changed since. */
  readonly origin: 'said' | 'unknown' | 'helper'
  /** Who set it, when its origin is `helper`: "your helper", a shop's name. */
  readonly setBy?: string | undefined
  readonly changeHref: string
}

export interface KnownFact {
  readonly key: string
  readonly short: string
  readonly text: string
  readonly state: 'said' | 'derived' | 'assumed' | 'parked'
  /** Who set it, when it was not the person: "your helper", a shop's name. */
  readonly setBy?: string | undefined
  readonly because?: string | undefined
  readonly changeHref: string
}

export interface Question {
  readonly fact: FactKey
  /** The question in words. */
  readonly ask: string
  readonly why: string
  /** "If you don't know, the guide takes 5.9 in because …" */
  readonly assumes: string
  readonly help: string
  readonly measure: string
  /** Step by step how to find it. */
  readonly learnHref?: string | undefined
  /** The explanation with a drawing that goes with it. */
  readonly explained?: { readonly title: string; readonly href: string } | undefined
  /** What was typed or what stands, when an answer is changed. */
  readonly value?: string | undefined
  readonly unit?: string | undefined
  readonly problem?: Problem | undefined
}

/** What a free text message was understood to say. */
export interface Heard {
  readonly accepted: readonly {
    readonly key: string
    readonly short: string
    readonly text: string
    /** The words it came from. */
    readonly words: string
  }[]
  readonly unclear: readonly { readonly text: string; readonly why: string }[]
  /** The guide's own words: safe HTML, already sanitised. */
  readonly reply?: string | undefined
  /** Where nothing was taken: what the guide can use at this point. */
  readonly canUse?: string | undefined
}

export interface SoFar {
  readonly sentence: string
  readonly confidence: 'settled' | 'likely' | 'withheld'
  /** Whether it rests on assumed answers that a call needs. */
  readonly isGuess: boolean
  /** Which open answers move a lowered target. */
  readonly targetMoves?: string | undefined
  readonly href: string
}

export interface Preset {
  readonly id: string
  readonly title: string
  readonly summary: string
  readonly href: string
}

/** A what-if beside the present call; nothing of it is taken until the person says so. */
export interface Comparison {
  readonly title: string
  /** The call as it stands, in a sentence. */
  readonly present: string
  /** The call with the change, in a sentence. */
  readonly other: string
  /** Sides that are no call yet, because answers that a call rests on are open. */
  readonly notYet?: 'both' | 'present' | 'other' | undefined
  readonly rows: readonly { readonly label: string; readonly now: string; readonly other: string }[]
  /** The case with the change, as a link without units. */
  readonly keepLink: string
}

/** Whoever set answers of a link before the person opened it. */
export interface Helper {
  readonly kind: 'helper' | 'shop'
  readonly who: string
  /** Plain text in the helper's own words; '' when there is none. */
  readonly note: string
  /** Whether the person has not answered anything yet. */
  readonly isStart: boolean
}

export interface ConversationView {
  readonly units: UnitSystem
  /** The present state as a query string. */
  readonly link: string
  readonly exchanges: readonly Exchange[]
  readonly known: readonly KnownFact[]
  readonly question: Question | null
  readonly heard?: Heard | undefined
  readonly sofar: SoFar | null
  /** How many questions can still change the call, this one included. */
  readonly left: number
  /** How many figures that can still change the call were answered with “I don’t know”. */
  readonly givenUp: number
  /** Questions without whose answer no call may show. */
  readonly needed: number
  readonly contradictions: readonly { readonly title: string; readonly text: string }[]
  /** Parts of the link that could not be read. */
  readonly problems: readonly Problem[]
  /** Who set some of the answers, or left a note. */
  readonly helper?: Helper | undefined
  /** When the link was made with another rulebook: its version, and what has changed since. */
  readonly older?: OlderLink | undefined
  readonly preview?: Preview | undefined
  /** Shown on the empty start only. */
  readonly presets: readonly Preset[]
  readonly compare?: Comparison | undefined
  /** Whether the last turn can be taken back. */
  readonly canUndo?: boolean
  /** What was typed into the free text box, when it could not be taken. */
  readonly typed?: string | undefined
}
