/** In a V the two foremost cylinders share a throw: the side of the one that is counted from. */
const SIDES: Readonly<Record<string, 'left' | 'right'>> = {
  'v6-60': 'left',
  'v6-90': 'right',
  'v8-cross-plane': 'right',
  'v8-flat-plane': 'left',
  'v10-90': 'right',
  'v12-60': 'left',
}

/**
 * What crank angles are measured from, in a sentence: the mechanics count them from firing top
 * dead centre of the layout's first cylinder, which is one at the front.
 *
 * @param layout - an answer to the fact `layout`; one that is not known gets no side
 */
export function crankZero(layout: unknown): string {
  const side = SIDES[String(layout)]
  const which = side === undefined ? '' : `, the one in the ${side} bank as seen from the front`
  return `Angles are degrees of crank after firing top dead centre of the foremost cylinder${which}; 720° make the cycle, and the crank turns clockwise as drawn.`
}
