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

/** What could hurt or break something comes before the pictures. */
export function dangers(findings: readonly Finding[], view: CaseView): Html {
  const grave = findings.filter(({ severity }) => severity === 'danger')
  return cautionList('dangers', 'Mind this first', grave, view)
}

/** The rest of the cautions, the gravest first. */
export function cautions(findings: readonly Finding[], view: CaseView): Html {
  const order: Finding['severity'][] = ['caution', 'note']
  const rest = order.flatMap((one) => findings.filter(({ severity }) => severity === one))
  return cautionList('cautions', 'Mind this too', rest, view)
}

/** The word says how grave a caution is, not the colour alone. */
function cautionList(id: string, title: string, sorted: readonly Finding[], view: CaseView): Html {
  if (sorted.length === 0) return NOTHING
  return html`<section class="cautions" aria-labelledby="${id}"><h2 id="${id}">${title}</h2>
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
  return html`<details class="prints"><summary>What it rests on</summary><ul class="live-facts">${each(facts, (one) => html`<li class="${STATES[one.state].look}"><span>${one.label}</span> <span class="figure-text">${liveText(one, units)}</span> <span class="tag">${STATES[one.state].word}</span></li>`)}</ul></details>`
}

/** As the rulebook prints it, or in the person's own system when that has another unit. */
function liveText({ value, unit, text }: LiveFact, units: Units): string {
  if (typeof value !== 'number' || unit === '') return text
  const own = printIn(value, unit, units)
  return own.endsWith(unit) ? text : own
}
