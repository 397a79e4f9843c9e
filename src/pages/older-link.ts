import { each, type Html, html, NOTHING } from './html.ts'

/** A link that was made with another rulebook than the one that answers it. */
export interface OlderLink {
  readonly version: string
  readonly now: string
  /** What has changed since, newest first; empty when the version is not known here. */
  readonly changes: readonly string[]
  /** Whether the call has changed, and by which rule, where that was worked out. */
  readonly verdict?: string | undefined
}

/** Says so, because the same answers may lead to another call now. */
export function olderLink(older: OlderLink | undefined): Html {
  if (!older) return NOTHING
  const { version, now, changes, verdict = 'The call may differ.' } = older
  return html`<div class="notice plain"><h2>This link was made with rulebook ${version}</h2>
<p>Its answers are kept; the guide now decides by rulebook ${now}. ${verdict}</p>
${changes.length === 0 ? NOTHING : html`<ul>${each(changes, (change) => html`<li>${change}</li>`)}</ul>`}
</div>`
}
