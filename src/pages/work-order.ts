import type { OrderRule } from '../shop-sheet/sheet-rules.ts'
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
 * @param says - what travels to the shop and comes back; nothing of it when not given
 */
export function workOrder(
  steps: readonly WorkStep[],
  says?: Pick<OrderRule, 'goes' | 'comesBack'>,
): Html {
  const legs = legsOf(steps)
  const firstShop = legs.findIndex(({ at }) => at === 'shop')
  return html`<ol class="legs">
${each(
  legs,
  (leg, index) => html`<li class="leg at-${leg.at}">
<p class="leg-place"><span class="tag">${leg.at === 'shop' ? 'At the machine shop' : 'In your own workshop'}</span></p>
${says && index === firstShop ? html`<p class="sends">${says.goes.text}</p>` : NOTHING}
${says && leg.at === 'home' && index > 0 && index === legs.length - 1 ? html`<p class="sends">${says.comesBack.text}</p>` : NOTHING}
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
