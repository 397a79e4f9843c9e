import { each, type Html, html, NOTHING } from './html.ts'
import { workGlyph } from './work-glyphs.ts'

/** One step of the work, with where it is done. */
export interface WorkStep {
  id: string
  title: string
  /** Where it is done. */
  at: 'home' | 'shop'
  /** One or two sentences of plain text. */
  note: string
}

interface Leg {
  at: WorkStep['at']
  first: number
  steps: WorkStep[]
}

/**
 * The order of work, drawn as legs at home and at the machine shop.
 *
 * @param steps - from strip-down to assembly
 * @param sends - what travels to the shop, in words
 */
export function workOrder(steps: readonly WorkStep[], sends: readonly string[]): Html {
  const legs = legsOf(steps)
  const firstShop = legs.findIndex(({ at }) => at === 'shop')
  return html`<ol class="legs">
${each(
  legs,
  (leg, index) => html`<li class="leg at-${leg.at}">
<p class="leg-place"><span class="tag">${leg.at === 'shop' ? 'At the machine shop' : 'In your own workshop'}</span></p>
${index === firstShop && sends.length > 0 ? html`<p class="sends">Goes to the shop: ${list(sends)}.</p>` : NOTHING}
${leg.at === 'home' && index > 0 && index === legs.length - 1 ? html`<p class="sends">Comes back: the block with its caps on, cut under the clamp of their fasteners. Nothing is mixed from here on.</p>` : NOTHING}
<ol class="steps" start="${leg.first}">${each(leg.steps, (step, at) => stepItem(step, leg.first + at))}</ol>
</li>`,
)}
</ol>`
}

function stepItem(step: WorkStep, number: number): Html {
  return html`<li id="step-${step.id}" class="step" value="${number}"><span class="op">${number}</span>${workGlyph(step.id)}<div><strong>${step.title}</strong><p>${step.note}</p></div></li>
`
}

/** Steps in one place one after another make a leg. */
function legsOf(steps: readonly WorkStep[]): Leg[] {
  const legs: Leg[] = []
  steps.forEach((step, index) => {
    const last = legs.at(-1)
    if (last?.at === step.at) last.steps.push(step)
    else legs.push({ at: step.at, first: index + 1, steps: [step] })
  })
  return legs
}

/** "a", "a and b", "a, b and c". */
export function list(words: readonly string[]): string {
  if (words.length < 2) return words.join('')
  return `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`
}
