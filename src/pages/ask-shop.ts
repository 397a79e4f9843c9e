import { type Html, html, NOTHING } from './html.ts'
import { page } from './layout.ts'
import { pageHref, type UnitSystem } from './page-href.ts'
import { copySaid, textToCopy } from './text-to-copy.ts'

export interface AskShopView {
  readonly units: UnitSystem
  readonly link: string
  readonly name: string
  readonly contact: {
    readonly email: string
    readonly phone?: string | undefined
    readonly place?: string | undefined
  }
  readonly does: { readonly bore: boolean; readonly hone: boolean; readonly drill: boolean }
  readonly text: string
  /** Opens the person's own mail program, with as many lines of the text as it takes. */
  readonly mail: { readonly href: string; readonly lines: number; readonly of: number }
}

/** An enquiry to the shop, sent by the person and nobody else. */
export function askShopPage(view: AskShopView): Html {
  const { units, link, name, contact, does, text, mail } = view
  return page({
    title: `Ask ${name}`,
    description: `An enquiry to ${name}, to send with your own mail program.`,
    path: '/ask-shop',
    units,
    link,
    noindex: true,
    scripts: ['copy-text.js'],
    body: html`<div class="page-head"><h1>Ask ${name}</h1>
<p class="lede">This opens your own mail program with the text below. The guide sends and keeps nothing.</p></div>
<p class="actions"><a class="button primary" href="${mail.href}">Write to ${contact.email}</a> <a class="button" href="${pageHref('/sheet', link, units)}">Sheet for the machine shop</a> <a class="button" href="${pageHref('/call', link, units)}">Back to the call</a></p>
${mail.lines < mail.of ? html`<p class="hint">A mail link carries only so much: this one has the first ${mail.lines} of ${mail.of} lines and the link to the whole sheet. To send all of it, copy the text below into the mail.</p>` : html`<p class="hint">The mail has the whole text below, the sheet included.</p>`}
${copySaid()}
${textToCopy({ id: 'enquiry', label: 'The text', text })}
<section aria-labelledby="shop-does"><h2 id="shop-does">What ${name} says of itself</h2>
<dl class="pairs"><dt>Line bores</dt><dd>${yesNo(does.bore)}</dd><dt>Line hones</dt><dd>${yesNo(does.hone)}</dd><dt>Drills and taps for outer fasteners</dt><dd>${yesNo(does.drill)}</dd>
${contact.phone ? html`<dt>Telephone</dt><dd>${contact.phone}</dd>` : NOTHING}${contact.place ? html`<dt>Place</dt><dd>${contact.place}</dd>` : NOTHING}</dl></section>`,
  })
}

function yesNo(does: boolean): string {
  return does ? 'yes' : 'no, sends it out or leaves it to you'
}
