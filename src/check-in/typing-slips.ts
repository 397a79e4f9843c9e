/** A slip of the fingers that would explain a figure. */
export interface TypingSlip {
  readonly kind: 'digits-swapped' | 'digit-dropped' | 'digit-doubled' | 'digit-wrong'
  /** The text as it would be without the slip. */
  readonly meant: string
}

const KINDS: readonly TypingSlip['kind'][] = [
  'digits-swapped',
  'digit-dropped',
  'digit-doubled',
  'digit-wrong',
]

/**
 * Slips of one key that would bring a typed figure near to where it should be: two digits
 * swapped, one left out, one typed too many, or one wrong.
 *
 * @param text - a figure as typed, such as `2.4612`
 * @param distance - how far a figure is from where it should be; undefined when it cannot be read
 * @param near - how near is near enough, in the unit of `distance`
 * @returns the likeliest kind first, in each kind the nearest; none when no such slip explains it
 * Source: common practice, no published source.
 */
export function typingSlips(
  text: string,
  distance: (text: string) => number | undefined,
  near: number,
): TypingSlip[] {
  return KINDS.flatMap((kind) => {
    const nearest = [...new Set(undone(kind, text))]
      .flatMap((meant) => {
        const away = distance(meant)
        return away === undefined || away > near ? [] : [{ kind, meant, away }]
      })
      .sort((one, other) => one.away - other.away)[0]
    return nearest ? [{ kind, meant: nearest.meant }] : []
  })
}

const DIGITS = [...'0123456789']

function undone(kind: TypingSlip['kind'], text: string): string[] {
  const places = [...text].map((_, place) => place)
  const isDigit = (place: number) => /\d/.test(text[place] ?? '')
  if (kind === 'digit-dropped') {
    return [...places, text.length].flatMap((place) =>
      DIGITS.map((digit) => text.slice(0, place) + digit + text.slice(place)),
    )
  }
  if (kind === 'digits-swapped') {
    return places
      .filter((place) => isDigit(place) && isDigit(place + 1))
      .map((p) => `${text.slice(0, p)}${text[p + 1]}${text[p]}${text.slice(p + 2)}`)
  }
  const digits = places.filter(isDigit)
  if (kind === 'digit-doubled') {
    return digits.map((place) => text.slice(0, place) + text.slice(place + 1))
  }
  return digits.flatMap((place) =>
    DIGITS.map((digit) => text.slice(0, place) + digit + text.slice(place + 1)),
  )
}
