import { defineConfig } from 'vitest/config'

export default defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/browser/**', 'node_modules/**'],
    setupFiles: ['tests/support/setup.ts'],
    expect: { requireAssertions: true },
    // Tests assert no wall-clock time; this only ends a hung one on a busy machine.
    testTimeout: 120_000,
    hookTimeout: 120_000,
  },
})
