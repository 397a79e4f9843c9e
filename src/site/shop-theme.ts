import type { Shop } from '../shops/schema.ts'

/**
 * A shop's accent as a stylesheet. It dyes the plate and the main buttons, whose words
 * were checked against it when the profile was read; nothing else can be themed.
 * Printing and forced colours keep the guide's own.
 */
export function shopTheme({ accent }: Pick<Shop, 'accent'>): string {
  if (accent === undefined) return ''
  return `@media screen and (forced-colors: none) {
  :root {
    --plate: ${accent};
    --plate-deep: ${accent};
  }
}
`
}
