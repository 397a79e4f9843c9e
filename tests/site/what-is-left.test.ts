import { describe, expect, it } from 'vitest'
import { toQuery } from '../../shared/share-link.ts'
import { app, rulebook } from '../support/app.ts'

const links = rulebook.presets.map(({ id, answers }) => [
  id,
  toQuery(answers, rulebook.version),
]) as [string, string][]

async function textOf(path: string): Promise<string> {
  const html = await (await app.request(path)).text()
  return html.replace(/<[^>]+>/g, ' ').replace(/\s+/g, ' ')
}

/** Questions that the guide says are left, and figures that it says nobody knows. */
async function leftInGuide(link: string): Promise<number> {
  const text = await textOf(`/?${link}`)
  if (/None could change the (?:call|route)|All are answered/.test(text)) return 0
  const [, left, , unknown = '0'] =
    /(\d+) could still change the call(, beside (\d+) that you do not know)?/.exec(text) ?? []
  const [, allUnknown] = /0 to ask; (\d+) that you do not know/.exec(text) ?? []
  if (allUnknown) return Number(allUnknown)
  return Number(left) + Number(unknown)
}

/** Answers that the head of the call says are open, and those its list names. */
async function openInCall(link: string): Promise<{ head: number; listed: number }> {
  const html = await (await app.request(`/call?${link}`)).text()
  const [, count] = />(\d+) open answers</.exec(html) ?? []
  const one = /One open answer could still change (it|the route)/.test(html) ? 1 : 0
  const list = html.slice(html.indexOf('id="assumed"')).split(/<details|id="working"/)[0] ?? ''
  return { head: count ? Number(count) : one, listed: list.split('class="assumption"').length - 1 }
}

describe('what could still change a call', () => {
  it.each([
    ...links,
    ...links.map(([id, link]): [string, string] => [
      `${id}, a figure nobody knows`,
      `${link}&capHeight=unknown`,
    ]),
  ])(
    'counts the same in the guide, in the head of the call and in its list: %s',
    async (_, link) => {
      const { head, listed } = await openInCall(link)
      expect(listed).toBe(head)
      expect(await leftInGuide(link)).toBe(head)
      const sheet = await textOf(`/sheet?${link}`)
      if (head > 1) expect(sheet).toContain(`and ${head - 1} more that the call lists. Settle them`)
      else expect(sheet).not.toContain('more that the call lists')
    },
  )
})

describe('a call on answers that it needs and nobody knows', () => {
  const KNOWN =
    'bore=4.03in&capFastening=two-bolt&compressionRatio=9&layout=v8-cross-plane&stroke=3.48in'
  const GUESSED = `${KNOWN}&boost=unknown&induction=turbocharged&peakRpm=unknown&use=street`

  it('is named a first guess, with what it rests on', async () => {
    const call = await textOf(`/call?${GUESSED}`)
    expect(call).toMatch(
      /First guess .*rests on what a call needs and nobody knows: Highest boost , Highest engine speed/,
    )
    expect(await textOf(`/?${GUESSED}`)).toContain('First guess')
  })

  it('is likely or settled where they are known, whatever else is not', async () => {
    const known = GUESSED.replace('boost=unknown', 'boost=18psi').replace(
      'peakRpm=unknown',
      'peakRpm=6500rpm',
    )
    for (const path of [`/call?${known}&fuel=unknown`, `/?${known}&fuel=unknown`]) {
      expect(await textOf(path)).not.toContain('First guess')
    }
  })
})
