import type { Rulebook } from '../rulebook/load.ts'
import type { Condition, Rule, Scope } from '../rulebook/schema.ts'
import { each, type Html, html, NOTHING, raw } from './html.ts'
import { page } from './layout.ts'
import { renderInline } from './markdown.ts'
import { pageHref, type UnitSystem } from './page-href.ts'
import { outcomeInWords } from './rule-outcomes.ts'
import { conditionsInWords, type FactLabels, factLabels, leafInWords } from './rule-words.ts'
import { KIND_WORDS } from './source-list.ts'

export interface RulesView {
  readonly rulebook: Rulebook
  readonly units: UnitSystem
  readonly link: string
}

const SCOPES: readonly (readonly [Scope, string, string])[] = [
  ['build', 'About the build', 'Looked at once, whatever the route.'],
  ['route', 'About each route', 'Looked at once for every route.'],
  ['choice', 'About the choice', 'Looked at for the route that would be called.'],
  ['follow-on', 'About the work that follows', 'Looked at for the route that is called.'],
]

const SEVERITY = { note: 'Note', caution: 'Caution', danger: 'Danger' } as const

/** Names of the facts that rules read, and of the routes. */
export function rulebookLabels(rulebook: Rulebook): FactLabels {
  const titles = Object.fromEntries(rulebook.routes.map(({ id, title }) => [id, title]))
  return factLabels(rulebook.computedFacts, titles)
}

/** All rules at a glance, the needed share of each use first. */
export function rulesPage(view: RulesView): Html {
  const { rulebook, units, link } = view
  const labels = rulebookLabels(rulebook)
  const summary = `The ${rulebook.rules.length} rules by which the guide decides, in plain words. Rulebook ${rulebook.version}.`
  return page({
    title: 'The rules',
    description: summary,
    path: '/rules',
    units,
    link,
    body: html`<div class="page-head"><p class="kicker"><a href="${pageHref('/method', link, units)}">Method</a></p>
<h1>The rules</h1><p class="lede">${summary}</p></div>
<div class="prose">${neededShares(rulebook, labels)}
${each(SCOPES, ([scope, title, words]) => {
  const rules = rulebook.rules.filter((rule) => rule.scope === scope)
  return html`<h2 id="${scope}">${title}</h2><p class="soft">${words}</p>
<ul class="topics">${each(
    rules,
    (rule) => html`<li><a href="${pageHref(`/rules/${rule.id}`, link, units)}">${rule.title}</a>
<p class="soft">${sentence(`When ${conditionsInWords(rule.conditions, labels)}`)}</p></li>
`,
  )}</ul>`
})}</div>`,
  })
}

function neededShares({ holding }: Rulebook, labels: FactLabels): Html {
  const uses = labels('use')?.choices ?? {}
  return html`<h2 id="needed-share">When a route holds</h2>
<p>${holding.because}</p>
<p>A route holds when it holds in at least this many of 100 sampled cases:</p>
<div class="table-scroll" role="region" aria-label="Table: cases needed by use" tabindex="0"><table class="compact"><thead><tr><th scope="col">Use</th><th scope="col">Cases of 100</th></tr></thead>
<tbody>${each(holding.hardness, (use) => html`<tr><th scope="row">${uses[use] ?? use}</th><td>${holding.needed[use] ?? ''}</td></tr>`)}</tbody></table></div>
<p class="tag">${sourceWords(holding.source)}</p>`
}

/** One rule: when it applies, why, what it can lead to, and where it comes from. */
export function rulePage(view: RulesView & { id: string }): Html | undefined {
  const { rulebook, units, link, id } = view
  const rule = rulebook.rules.find((one) => one.id === id)
  if (!rule) return undefined
  const labels = rulebookLabels(rulebook)
  return page({
    title: rule.title,
    description: sentence(`When ${conditionsInWords(rule.conditions, labels)}`),
    path: `/rules/${rule.id}`,
    units,
    link,
    body: html`<article><div class="page-head"><p class="kicker"><a href="${pageHref('/rules', link, units)}">The rules</a> · ${SEVERITY[rule.severity]}</p>
<h1>${rule.title}</h1></div>
<div class="prose"><h2 id="when">When</h2>${conditionTree(rule.conditions, labels)}
<h2 id="because">What the guide says</h2><p>${places(rule.because, labels)}</p>
${rule.instead ? html`<p><strong>Instead:</strong> ${places(rule.instead, labels)}</p>` : NOTHING}
${rule.except ? html`<p><strong>Except:</strong> ${places(rule.except, labels)}</p>` : NOTHING}
<h2 id="leads-to">What it can lead to</h2><p>${outcomeInWords(rule, rulebook, labels)}</p>
<h2 id="source">Source</h2><p>${sourceWords(rule.source)}</p>
<p class="tag">${rule.id} · ${rulebook.fileOf.get(rule.id) ?? ''} · rulebook ${rulebook.version}</p></div></article>`,
  })
}

function conditionTree(condition: Condition, labels: FactLabels): Html {
  if (!('all' in condition || 'any' in condition)) return html`<p>${item(condition, labels)}</p>`
  const parts = 'all' in condition ? condition.all : condition.any
  const [only] = parts
  if (parts.length === 1 && only) return conditionTree(only, labels)
  return html`<p>${'all' in condition ? 'All of these are so:' : 'One of these is so:'}</p>
<ul>${each(parts, (part) => html`<li>${'all' in part || 'any' in part ? conditionTree(part, labels) : item(part, labels)}</li>`)}</ul>`
}

function item(condition: Condition, labels: FactLabels): string {
  if ('fact' in condition) return sentence(leafInWords(condition, labels))
  return sentence(conditionsInWords(condition, labels))
}

/** A rule's sentence with the names of its facts where live values will stand. */
function places(text: string, labels: FactLabels): Html {
  const named = text.replace(
    /\{\{(\w+)\}\}/g,
    (_, name: string) => `‹${labels(name)?.label ?? name}›`,
  )
  return raw(renderInline(named))
}

/** Where a rule or a figure comes from, in words. */
export function sourceWords({ kind, cite }: Rule['source']): string {
  const words = KIND_WORDS[kind]
  if (!cite) return `${words.charAt(0).toUpperCase()}${words.slice(1)}.`
  return kind === 'published' ? `${cite}.` : `${cite} (${words}).`
}

function sentence(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`
}
