import { z } from 'zod'
import { expandPattern } from './phrase-patterns.ts'

/**
 * Phrases, several to a line with bars between: `["bore | bore size", "cylinder bore"]`;
 * a phrase may be a pattern: `two bolts {on,per} {each,every} cap`.
 */
export const phrases = z.array(z.string().min(1)).transform((lines, context) => {
  try {
    const all = lines.flatMap((line) => line.split('|').flatMap((one) => expandPattern(one.trim())))
    if (!all.includes('')) return all
    context.addIssue({
      code: 'custom',
      message: 'a phrase without a word would be found everywhere',
    })
    return z.NEVER
  } catch (fault) {
    context.addIssue({ code: 'custom', message: (fault as RangeError).message })
    return z.NEVER
  }
})
