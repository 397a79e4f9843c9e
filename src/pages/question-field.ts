import {
  type ChoiceFact,
  type Fact,
  fact,
  isQuantity,
  type QuantityFact,
  unitsFor,
} from '../../shared/fact-keys.ts'
import type { Question } from './conversation-view.ts'
import { each, type Html, html, NOTHING } from './html.ts'
import type { UnitSystem } from './page-href.ts'
import { fieldProblemWords } from './problem-words.ts'

/** The currencies offered first; any other ISO 4217 code may be typed. */
const CURRENCIES = ['USD', 'CAD', 'EUR', 'GBP', 'AUD', 'NZD', 'MXN', 'BRL', 'ZAR', 'SEK', 'JPY']

/** So many quick replies stand in two columns on a phone. */
const MANY = 8

/** Id of the field, for the error summary's link. */
export const FIELD_ID = 'answer'

/** The control that a question is answered with; its label is the question's heading. */
export function questionField(question: Question, units: UnitSystem): Html {
  const entry = fact(question.fact)
  if (entry.kind === 'choice') return choices(question, entry)
  return html`<div class="field">
<label for="${FIELD_ID}">${entry.label}</label>
${errorLine(question)}
<div class="control">
${textInput(question, entry)}
${unitControl(question, entry, units)}
<button class="button primary" type="submit">Answer</button>
</div>
</div>`
}

function choices(question: Question, { choices, label }: ChoiceFact): Html {
  // "Unknown" is the button "I don't know" below, so that it is offered once.
  const offered = Object.entries(choices).filter(([value]) => value !== 'unknown')
  return html`<fieldset class="field" id="${FIELD_ID}" tabindex="-1"${describedBy(question)}>
<legend class="unseen">${label}</legend>
${errorLine(question)}
<div class="choices${offered.length > MANY ? ' many' : ''}">
${each(offered, ([value, words]) => choiceButton(value, words, value === question.value))}
</div>
</fieldset>`
}

function choiceButton(value: string, words: string, present: boolean): Html {
  const mark = present ? html` <span class="tag">your answer now</span>` : NOTHING
  return html`<button type="submit" name="choice" value="${value}" class="${present ? 'present' : ''}">${words}${mark}</button>
`
}

function textInput(question: Question, entry: Fact): Html {
  const { value = '', problem } = question
  const invalid = problem ? html` aria-invalid="true"` : NOTHING
  const mode = entry.kind === 'thread' ? 'text' : 'decimal'
  return html`<input class="short" id="${FIELD_ID}" name="value" type="text" inputmode="${mode}" autocomplete="off" spellcheck="false" required maxlength="60" value="${value}"${describedBy(question)}${invalid}>`
}

function describedBy({ problem }: Question): Html {
  return html` aria-describedby="${problem ? 'answer-error ' : ''}question-why"`
}

function errorLine({ problem }: Question): Html {
  if (!problem) return NOTHING
  return html`<p class="error" id="answer-error"><span class="unseen">Error: </span>${fieldProblemWords(problem)}</p>`
}

function unitControl(question: Question, entry: Fact, units: UnitSystem): Html {
  if (isQuantity(entry)) return quantityUnit(question, entry, units)
  if (entry.kind === 'money') return currency(question.unit ?? 'USD')
  if (entry.kind === 'number')
    return entry.suffix ? html`<span class="suffix">${entry.suffix}</span>` : NOTHING
  return NOTHING
}

function quantityUnit(question: Question, entry: QuantityFact, units: UnitSystem): Html {
  const symbols = unitsFor(entry, units)
  const [first = ''] = symbols
  if (symbols.length === 1) {
    return html`<span class="suffix">${first}</span><input type="hidden" name="unit" value="${first}">`
  }
  const chosen = symbols.includes(question.unit ?? '') ? question.unit : first
  return html`<fieldset class="segments"><legend class="unseen">Unit</legend>
${each(symbols, (symbol) => unitSegment(symbol, symbol === chosen))}
</fieldset>`
}

function unitSegment(symbol: string, chosen: boolean): Html {
  return html`<label><input type="radio" name="unit" value="${symbol}"${chosen ? html` checked` : NOTHING}><span>${symbol}</span></label>
`
}

function currency(chosen: string): Html {
  return html`<label class="unseen" for="currency">Currency, as its three letters</label>
<input class="currency" id="currency" name="unit" list="currencies" value="${chosen}" required maxlength="3" autocomplete="off" autocapitalize="characters" spellcheck="false">
<datalist id="currencies">${each(CURRENCIES, (code) => html`<option value="${code}"></option>`)}</datalist>`
}
