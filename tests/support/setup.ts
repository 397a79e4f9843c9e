import { afterEach, beforeEach, expect, vi } from 'vitest'

/** Any console output from the code under test is a fault: answers must never be logged. */
const methods = ['log', 'info', 'warn', 'error', 'debug'] as const

beforeEach(() => {
  for (const method of methods) vi.spyOn(console, method)
})

afterEach(() => {
  for (const method of methods) expect(console[method]).not.toHaveBeenCalled()
  vi.restoreAllMocks()
})
