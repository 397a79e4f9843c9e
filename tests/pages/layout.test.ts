import { describe, expect, it } from 'vitest'
import { html } from '../../src/pages/html.ts'
import { type PageView, page } from '../../src/pages/layout.ts'
import { pageHref } from '../../src/pages/page-href.ts'

const view: PageView = {
  title: 'The guide',
  description: 'How should the crank be held?',
  path: '/',
  units: 'us',
  link: 'v=1&bore=4.03in',
  body: html`<h1>Body</h1>`,
}

describe('page', () => {
  it('begins with the doctype, so that browsers keep to the standard', async () => {
    expect(String(await page(view))).toMatch(/^<!doctype html>\n<html lang="en">/)
  })

  it('has what the strict content policy allows and nothing else', async () => {
    const text = String(await page({ ...view, scripts: ['conversation.js'] }))
    expect(text).toContain('<script src="/assets/conversation.js" defer></script>')
    expect(text).not.toMatch(/<script(?![^>]*\ssrc=)/)
    expect(text).not.toMatch(/\sstyle=|<style|\son\w+=|javascript:/)
    expect(text).not.toMatch(/(?:src|href)="(?:https?:)?\/\//)
  })

  it('escapes what it is given', async () => {
    const text = String(
      await page({ ...view, title: '<b>&', description: '"><i>', link: 'x="><u>' }),
    )
    expect(text).not.toMatch(/<b>|<i>|<u>/)
    expect(text).toContain('<title>&lt;b&gt;&amp; · Mainstay</title>')
  })

  it('keeps the case in every link of the header', async () => {
    const text = String(await page(view))
    const header = text.slice(text.indexOf('<header'), text.indexOf('</header>'))
    const links = [...header.matchAll(/href="([^"]+)"/g)].map(([, href]) => href)
    expect(links.length).toBeGreaterThan(5)
    for (const href of links) expect(href).toContain('?v=1&amp;bore=4.03in')
  })

  it('marks the section and the units that a person is in', async () => {
    const text = String(await page({ ...view, path: '/learn/cap-walk', units: 'metric' }))
    expect(text).toMatch(/aria-current="true">Learn</)
    expect(text).not.toMatch(/aria-current="(?:page|true)">Guide</)
    expect(text).toMatch(/aria-current="true"><span class="unseen">Show figures in <\/span>Metric/)
  })

  it('asks search engines to pass over a page only when told to', async () => {
    expect(String(await page(view))).not.toContain('noindex')
    expect(String(await page({ ...view, noindex: true }))).toContain('content="noindex"')
  })
})

describe('pageHref', () => {
  it.each([
    ['/', '', 'us', {}, '/'],
    ['/', 'v=1', 'us', {}, '/?v=1'],
    ['/call', '', 'metric', {}, '/call?units=metric'],
    ['/', 'v=1&bore=4in', 'metric', { ask: 'bore' }, '/?v=1&bore=4in&ask=bore&units=metric'],
    ['/call#loads', 'v=1', 'us', {}, '/call?v=1#loads'],
  ] as const)('%s with %s in %s', (path, link, units, own, expected) => {
    expect(pageHref(path, link, units, own)).toBe(expected)
  })
})
