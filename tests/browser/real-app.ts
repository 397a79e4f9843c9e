import type { Browser, BrowserContextOptions, Page } from 'playwright-core'
import { afterAll, beforeAll } from 'vitest'
import { createApp } from '../../src/app.ts'
import { realDeps } from '../support/app.ts'
import { launchBrowser, openPage, type Served, serveApp } from './support.ts'

/** Steps of the real app are slow on a loaded machine; nothing is asserted of time. */
const PATIENCE = 60_000

export interface RealApp {
  readonly origin: string
  open(
    path: string,
    options?: BrowserContextOptions,
  ): Promise<{ page: Page; faults: string[]; close(): Promise<void> }>
}

/** The whole app with the real rulebook behind one browser, for the tests of a file. */
export function realApp(): RealApp {
  let browser: Browser
  let served: Served
  beforeAll(async () => {
    browser = await launchBrowser()
    served = await serveApp(createApp(realDeps()))
  })
  afterAll(async () => {
    await browser.close()
    await served.close()
  })
  return {
    get origin() {
      return served.origin
    },
    async open(path, options) {
      const opened = await openPage(browser, options)
      opened.page.setDefaultTimeout(PATIENCE)
      await opened.page.goto(`${served.origin}${path}`, { waitUntil: 'load' })
      return opened
    },
  }
}
