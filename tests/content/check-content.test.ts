import { describe, expect, it } from 'vitest'
import { checkContent } from '../../src/pages/check-content.ts'
import { createContent } from '../../src/pages/markdown.ts'
import { content, readContent } from './read-content.ts'

describe('the check of content/', () => {
  it('takes the project’s own', () => {
    expect(() => checkContent(content)).not.toThrow()
  })

  it('misses a caution that sheets and posts say', () => {
    const without = createContent((path) => {
      const text = readContent(path)
      return path === 'safety.md' ? text?.replace(/^(on-sheet-2|end-of-post): .*\n/gm, '') : text
    })
    expect(() => checkContent(without)).toThrow(
      /safety\.md: its front matter has no end-of-post\n.*safety\.md: its front matter has no on-sheet-2$/,
    )
  })
})
