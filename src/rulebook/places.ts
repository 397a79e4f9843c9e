import { z } from 'zod'

const PLACE = /\{\{(\w+)\}\}/g

/** The {{places}} of a sentence, without braces. */
export function placesIn(sentence: string): string[] {
  return [...sentence.matchAll(PLACE)].map((match) => match[1] as string)
}

/** A sentence with each of its {{places}} filled by what its name gives. */
export function fillEach(sentence: string, value: (name: string) => string): string {
  return sentence.replace(PLACE, (_, name: string) => value(name))
}

/**
 * A sentence of an operator's file in which only these {{places}} may stand; its type names them,
 * so that whoever says it has to fill each.
 */
export function wording<N extends string = never>(...names: readonly N[]) {
  return wordsOf(10, names)
}

/** A name, or a part of a sentence, with its places checked likewise. */
export function phrase<N extends string = never>(...names: readonly N[]) {
  return wordsOf(2, names)
}

function wordsOf<N extends string>(least: number, names: readonly N[]) {
  const known = names.map((name) => `{{${name}}}`).join(', ') || 'none'
  return z
    .string()
    .min(least)
    .superRefine((text, context) => {
      const strange = placesIn(text).filter((name) => !names.some((one) => one === name))
      for (const name of strange) {
        context.addIssue({
          code: 'custom',
          message: `no place is called {{${name}}}; there is ${known}`,
        })
      }
      if (/\{\{|\}\}/.test(text.replace(PLACE, ''))) {
        context.addIssue({ code: 'custom', message: 'write a place as {{name}}' })
      }
    })
    .transform((text) => text as Wording<N>)
}

/** A sentence that has been checked to have no other places than these. */
export type Wording<N extends string = never> = string & { readonly places?: { [name in N]: true } }

/** The sentence with its places filled. */
export function say<N extends string>(
  text: Wording<N>,
  values: Readonly<Record<N, string>>,
): string {
  return fillEach(text, (name) => values[name as N])
}
