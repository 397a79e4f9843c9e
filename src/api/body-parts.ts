import { z } from 'zod'
import { FACT_KEYS } from '../../shared/fact-keys.ts'

/** Parts that several bodies share. */
export const unitsPart = z
  .enum(['us', 'metric'], 'use us or metric')
  .default('us')
  .meta({ description: 'Units in which sentences count.' })

/** The key of a fact. */
export const factKey = z.enum(FACT_KEYS, 'use a fact key; GET /api/facts lists them')

/** A person's own words. */
export const messageText = z
  .string('give the words as a text')
  .regex(/\S/, 'give some words')
  .meta({ description: 'What a person typed. At most 2,000 characters are read.' })
