/**
 * What a shop sheet is made of. Page and PDF draw the same blocks; a null value is a blank to be
 * filled by hand, and nothing else ever stands in for what is not known.
 */
export type Block =
  | { readonly kind: 'text'; readonly text: string; readonly tone?: 'note' | 'caution' }
  | { readonly kind: 'ticks'; readonly items: readonly Tick[]; readonly numbered?: boolean }
  | { readonly kind: 'pairs'; readonly rows: readonly Pair[] }
  | { readonly kind: 'table'; readonly table: SheetTable }
  | { readonly kind: 'cap-map'; readonly map: CapMap }
  | { readonly kind: 'sign-off'; readonly lines: readonly string[] }

/** A line with a box to tick. */
export interface Tick {
  readonly text: string
  readonly note?: string
  /** Label of a line to write on, after the text. */
  readonly fill?: string
}

/** A label with its value, or a blank to fill. */
export interface Pair {
  readonly label: string
  /** Null: a blank. */
  readonly value: string | null
  /** Unit printed behind a blank, or nothing. */
  readonly unit?: string
  /** Why, where from, or what the guide took for its estimate. */
  readonly note?: string
}

/** A table of the sheet. */
export interface SheetTable {
  readonly caption: string
  readonly head: readonly string[]
  /** The first cell names the row; null cells are blanks. */
  readonly rows: readonly (readonly (string | null)[])[]
  /** Columns of amounts, from the right edge. */
  readonly numbers?: boolean
}

/** Places of the caps, from the front. */
export interface CapMap {
  readonly mains: number
  /** Upright fasteners of one cap. */
  readonly fasteners: number
  readonly splitCase: boolean
  /** Stamps from front to rear; null is a blank. */
  readonly stamps: readonly (string | null)[]
}

/** A part of the sheet under its heading. */
export interface SheetSection {
  readonly id: string
  readonly title: string
  readonly blocks: readonly Block[]
}

/** The whole sheet. */
export interface ShopSheet {
  readonly title: string
  /** The call in a sentence. */
  readonly sentence: string
  /** Said where the call asks nothing of a shop. */
  readonly nothingToDo?: string
  readonly sections: readonly SheetSection[]
  /** Printed with the code that leads back to this case. */
  readonly rulebook: string
}
