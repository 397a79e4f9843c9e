import type { Finding, LiveFact, Source } from '../../shared/assessment.ts'
import { each, type Html, html, NOTHING, raw } from './html.ts'
import { renderInline } from './markdown.ts'
import { pageHref } from './page-href.ts'
import { printIn, type Units } from './person-units.ts'

export interface CaseView {
  link: string
  units: Units
}

const SOURCE_WORDS: Readonly<Record<Source['kind'], string>> = {
  published: '',
  practice: 'Common practice, no published source',
  memory: 'From memory, not checked against a source',
  computed: 'Computed from this build',
  said: 'As you said',
}

/** Where a statement comes from, in words. */
export function sourceText({ kind, cite }: Source): string {
  if (cite === '') return SOURCE_WORDS[kind] === '' ? 'Published' : SOURCE_WORDS[kind]
  return SOURCE_WORDS[kind] === '' ? cite : `${SOURCE_WORDS[kind]}: ${cite}`
}

/** One sentence of the rulebook's Markdown as safe markup. */
export function sentence(text: string): Html {
  return raw(renderInline(text))
}

/** Findings that speak for a call, each with its live figures and its source. */
export function reasons(findings: readonly Finding[], view: CaseView): Html {
  return html`<ol class="reason-list">${each(
    findings,
    (one) => html`<li class="reason">
<h3>${one.title}</h3>
<p>${sentence(one.text)}</p>
${liveFacts(one.facts, view)}
<p class="hint">${sourceText(one.source)} · <a href="${pageHref(`/rules/${one.rule}`, view.link, view.units)}">the rule<span class="unseen">: ${one.title}</span></a></p>
</li>`,
  )}</ol>`
}

const SEVERITY: Readonly<Record<Finding['severity'], { look: string; word: string }>> = {
  danger: { look: 'danger', word: 'Danger' },
  caution: { look: 'caution', word: 'Caution' },
  note: { look: 'plain', word: 'Note' },
}

/** Cautions, the gravest first; the word says how grave, not the colour alone. */
export function cautions(findings: readonly Finding[], view: CaseView): Html {
  if (findings.length === 0) return NOTHING
  const order = ['danger', 'caution', 'note']
  const sorted = [...findings].sort((a, b) => order.indexOf(a.severity) - order.indexOf(b.severity))
  return html`<section class="cautions" aria-labelledby="cautions"><h2 id="cautions">Mind this first</h2>
<ul class="caution-list">${each(
    sorted,
    (
      one,
    ) => html`<li class="notice ${SEVERITY[one.severity].look}"><h3><span class="badge ${SEVERITY[one.severity].look}">${SEVERITY[one.severity].word}</span> ${one.title}</h3>
<p>${sentence(one.text)}</p><p class="hint">${sourceText(one.source)} · <a href="${pageHref(`/rules/${one.rule}`, view.link, view.units)}">the rule<span class="unseen">: ${one.title}</span></a></p></li>`,
  )}</ul></section>`
}

const STATES: Readonly<Record<LiveFact['state'], { look: string; word: string }>> = {
  said: { look: 'is-said', word: 'said' },
  derived: { look: 'is-derived', word: 'worked out' },
  computed: { look: 'is-derived', word: 'computed' },
  assumed: { look: 'is-assumed', word: 'assumed' },
}

/** The figures a statement rests on, each with how it came to be known. */
function liveFacts(facts: readonly LiveFact[], { units }: CaseView): Html {
  if (facts.length === 0) return NOTHING
  return html`<ul class="live-facts">${each(facts, (one) => html`<li class="${STATES[one.state].look}"><span>${one.label}</span> <span class="figure-text">${liveText(one, units)}</span> <span class="tag">${STATES[one.state].word}</span></li>`)}</ul>`
}

/** As the rulebook prints it, or in the person's own system when that has another unit. */
function liveText({ value, unit, text }: LiveFact, units: Units): string {
  if (typeof value !== 'number' || unit === '') return text
  const own = printIn(value, unit, units)
  return own.endsWith(unit) ? text : own
}
