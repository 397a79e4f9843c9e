import { each, type Html, html, NOTHING } from './html.ts'
import { page } from './layout.ts'
import { pageHref, shopPart, type UnitSystem } from './page-href.ts'
import { copySaid, textToCopy } from './text-to-copy.ts'

/** One text in the three ways that forums read. */
interface Texts {
  readonly plain: string
  readonly markdown: string
  readonly bbcode: string
}

export interface ForumView {
  readonly units: UnitSystem
  /** The case as a query string. */
  readonly link: string
  /** The call's sentence. */
  readonly sentence: string
  readonly call: Texts
  /** Each answer of the case, and whether the helper hands it on. */
  readonly answers: readonly { key: string; label: string; text: string; isSet: boolean }[]
  readonly note: string
  readonly longestNote: number
  /** What to post for someone who asks; undefined until the helper's form was sent. */
  readonly handedOn?: { readonly href: string; readonly texts: Texts } | undefined
}

/** The call to paste into a forum; and for a helper, a link that leaves questions open. */
export function forumPage(view: ForumView): Html {
  const { units, link, sentence, call } = view
  return page({
    title: 'Copy for a forum',
    description: 'The call as plain text, Markdown or BBCode, and a link that asks the rest.',
    path: '/forum',
    units,
    link,
    noindex: true,
    scripts: ['copy-text.js'],
    body: html`<div class="page-head"><h1>Copy for a forum</h1>
<p class="lede">${sentence}</p>
<p><a href="${pageHref('/call', link, units)}">Back to the call</a> · <a href="${pageHref('/compare', shopPart(link), units, { a: link })}">Lay it beside another case</a></p></div>
${copySaid()}
<section aria-labelledby="call-texts"><h2 id="call-texts">The call</h2>
<p>The call, the three numbers that decide it, what was assumed, and the link. Nothing about you is in it.</p>
${texts('call', call)}</section>
${helperForm(view)}
${view.handedOn ? handedOn(view.handedOn) : NOTHING}`,
  })
}

function texts(id: string, { plain, markdown, bbcode }: Texts): Html {
  return html`${textToCopy({ id: `${id}-plain`, label: 'Plain text', text: plain })}
${textToCopy({ id: `${id}-markdown`, label: 'Markdown', text: markdown })}
${textToCopy({ id: `${id}-bbcode`, label: 'BBCode', text: bbcode })}`
}

function helperForm({ answers, link, units, note, longestNote }: ForumView): Html {
  return html`<section aria-labelledby="helping"><h2 id="helping">Helping someone?</h2>
<p>Keep the answers that you know, leave the others open, add a note. Whoever opens the link sees which answers you set, can change them, and is asked the rest.</p>
<form method="get" action="/forum#handed-on" class="card">
${each(caseParts(link), ([name, value]) => html`<input type="hidden" name="${name}" value="${value}">`)}
${units === 'metric' ? html`<input type="hidden" name="units" value="metric">` : NOTHING}
<input type="hidden" name="hand" value="on">
<fieldset class="field"><legend class="label">Answers that you set</legend>
<ul class="set-answers">${each(
    answers,
    ({ key, label, text, isSet }) =>
      html`<li><label><input type="checkbox" name="set" value="${key}"${isSet ? html` checked` : NOTHING}> <span>${label} <span class="figure-text">${text}</span></span></label></li>
`,
  )}</ul></fieldset>
<div class="field"><label for="note">A note to whoever asks</label>
<p class="hint" id="note-hint">At most ${longestNote} characters of plain text. It is in the link for everyone to read: no names, no addresses.</p>
<textarea id="note" name="note" rows="3" maxlength="${longestNote}" aria-describedby="note-hint">${note}</textarea></div>
<button class="button primary" type="submit">Make the link</button>
</form></section>`
}

/** The case as the form carries it; who set what and the note are asked anew. */
function caseParts(link: string): [string, string][] {
  return [...new URLSearchParams(link)].filter(([name]) => name !== 'by' && name !== 'note')
}

function handedOn({ href, texts: words }: NonNullable<ForumView['handedOn']>): Html {
  return html`<section aria-labelledby="handed-on"><h2 id="handed-on" tabindex="-1">The link to hand on</h2>
<p><a href="${href}">${href}</a></p>
${texts('hand', words)}</section>`
}
