import type { Page } from 'playwright-core'

/**
 * What a first-time builder knows: the label of a quick reply, or what goes into the
 * field and the unit pressed. Anything else is answered "I don't know".
 */
export type Knows = Readonly<
  Record<string, string | { readonly type: string; readonly unit?: string }>
>

const IRON_TWO_BOLT: Knows = {
  layout: 'V8, cross-plane crank',
  stroke: { type: '3.48', unit: 'in' },
  capFastening: 'Two bolts each',
  capMaterial: 'Gray cast iron',
  capHistory: 'Original to the block, never moved',
  capOrigin: 'Factory',
  blockMaterial: 'Gray cast iron',
  fastenerKind: 'Bolts',
  fastenerLubricant: 'Engine oil',
  fastenerThread: { type: '1/2-13' },
  fastenerTorque: { type: '85', unit: 'lb ft' },
  shopLineBores: 'Yes',
}

/** What the builders of the presets' three main engines know of them. */
export const BUILDERS = {
  'mild-street': {
    ...IRON_TWO_BOLT,
    bore: { type: '4.03', unit: 'in' },
    compressionRatio: { type: '9.5' },
    induction: 'Naturally aspirated',
    fuel: 'Pump gasoline',
    peakRpm: { type: '5,800' },
    use: 'Street',
    invested: { type: '3500' },
  },
  'high-compression-race': {
    ...IRON_TWO_BOLT,
    bore: { type: '4.06', unit: 'in' },
    compressionRatio: { type: '13.4' },
    induction: 'Naturally aspirated',
    fuel: 'Race gasoline',
    peakRpm: { type: '7600' },
    use: 'Drag racing',
    invested: { type: '9000' },
  },
  'twin-turbo': {
    ...IRON_TWO_BOLT,
    bore: { type: '4.03', unit: 'in' },
    stroke: { type: '3.75', unit: 'in' },
    compressionRatio: { type: '9.2' },
    induction: 'Turbocharged',
    boost: { type: '18', unit: 'psi' },
    chargeCooling: 'Intercooler',
    fuel: 'E85',
    peakRpm: { type: '6600' },
    use: 'Street and strip',
    invested: { type: '10000' },
    shopLineBores: 'No, or only hones',
  },
} as const satisfies Readonly<Record<string, Knows>>

/** The fact that the page asks for; undefined when no question is left. */
export async function askedFact(page: Page): Promise<string | undefined> {
  const field = page.locator('section.question form input[name="fact"]')
  return (await field.count()) === 0 ? undefined : field.inputValue()
}

/** Do something that leads to another address, with script or without, and wait for it. */
export async function follow(page: Page, act: () => Promise<void>): Promise<void> {
  const before = page.url()
  await act()
  await page.waitForURL((url) => url.href !== before)
}

/** Answer the question that stands, and say which fact it was and whether it was known. */
export async function answerOne(
  page: Page,
  knows: Knows,
): Promise<{ fact: string; known: boolean } | undefined> {
  const fact = await askedFact(page)
  if (fact === undefined) return undefined
  const known = knows[fact]
  const form = page.locator('section.question form')
  if (known === undefined) {
    await follow(page, () => form.getByRole('button', { name: 'I don’t know' }).click())
  } else if (typeof known === 'string') {
    await follow(page, () => form.getByRole('button', { name: known, exact: true }).click())
  } else {
    await form.locator('#answer').fill(known.type)
    if (known.unit) await form.locator(`input[name="unit"][value="${known.unit}"]`).setChecked(true)
    await follow(page, () => form.getByRole('button', { name: 'Answer', exact: true }).click())
  }
  return { fact, known: known !== undefined }
}

/** No build has more facts than this to ask for. */
const MOST_QUESTIONS = 60

/** Answer until no question is left; the facts in the order in which they were asked. */
export async function answerAll(page: Page, knows: Knows): Promise<string[]> {
  const asked: string[] = []
  for (let turn = 0; turn < MOST_QUESTIONS; turn++) {
    const answered = await answerOne(page, knows)
    if (!answered) return asked
    asked.push(answered.fact)
  }
  throw new Error(`still asking after ${MOST_QUESTIONS} questions`)
}
