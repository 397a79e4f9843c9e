import { defineConfig } from 'vitest/config'

/** The tests that judge the mechanics alone, for the mutation of it: no pages, no server. */
export default defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    include: ['tests/mechanics/**/*.test.ts', 'tests/published/**/*.test.ts'],
    testTimeout: 300_000,
  },
})
