/** One colour written `#rrggbb`. */
const WRITTEN = /^#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/i

/**
 * Relative luminance of a colour, 0 (black) to 1 (white).
 *
 * @param colour - `#rrggbb`, sRGB
 * @throws {RangeError} if it is written any other way
 * @see W3C, Web Content Accessibility Guidelines 2.2, "relative luminance"
 */
export function luminance(colour: string): number {
  const match = WRITTEN.exec(colour)
  if (!match) throw new RangeError(`a colour is written #rrggbb, not "${colour}"`)
  const [red = 0, green = 0, blue = 0] = match.slice(1).map((part) => linear(parseInt(part, 16)))
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue
}

function linear(channel: number): number {
  const share = channel / 255
  return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4
}

/**
 * Contrast of two colours, 1 to 21; 4.5 is enough for words.
 *
 * @see W3C, Web Content Accessibility Guidelines 2.2, "contrast ratio" and criterion 1.4.3
 */
export function contrast(one: string, other: string): number {
  const [light = 0, dark = 0] = [luminance(one), luminance(other)].sort((a, b) => b - a)
  return (light + 0.05) / (dark + 0.05)
}
