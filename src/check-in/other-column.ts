import { median } from './median.ts'

/** Tables of sizes that are read in the same places, one beside the other on a sheet. */
export type Sized = 'housing' | 'journal'

/** A reading as it was typed, and what it comes to. */
export interface Like {
  readonly field: string
  readonly row: number
  readonly text: string
  /** m */
  readonly value: number
}

/** A reading that would be right in the other table. */
export interface InOtherColumn {
  /** The table that it fits. */
  readonly fits: Sized
  /** The reading that stands in its place there and fits here: the two were swapped. */
  readonly partner?: Like
}

const OTHER = { housing: 'journal', journal: 'housing' } as const

/**
 * Bores among the journals and journals among the bores: far from the middle of their own table
 * and near that of the other, which no bore or journal is that was only made wrong.
 *
 * @param far - how far from its likes a reading has to be, m
 * @param near - how near to the others it has to be, m
 * @returns what was found, by field
 * Source: common practice, no published source.
 */
export function inOtherColumn(
  likes: Readonly<Record<Sized, readonly Like[]>>,
  { far, near }: { readonly far: number; readonly near: number },
): ReadonlyMap<string, InOtherColumn> {
  const strays = (own: Sized): readonly Like[] => {
    const [here, there] = [own, OTHER[own]].map((table) => middleOf(likes[table as Sized]))
    if (here === undefined || there === undefined) return []
    return likes[own].filter(
      ({ value }) => Math.abs(value - here) > far && Math.abs(value - there) <= near,
    )
  }
  const found = { housing: strays('housing'), journal: strays('journal') }
  const entries = (['housing', 'journal'] as const).flatMap((own) => {
    const fits = OTHER[own]
    return found[own].map(({ field }): [string, InOtherColumn] => {
      const place = field.replace(own, fits)
      const partner = found[fits].find((one) => one.field === place)
      return [field, { fits, ...(partner && { partner }) }]
    })
  })
  return new Map(entries)
}

function middleOf(likes: readonly Like[]): number | undefined {
  return likes.length === 0 ? undefined : median(likes.map(({ value }) => value))
}
