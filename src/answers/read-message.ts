import type { Answers } from '../../shared/answers.ts'
import type { FactKey } from '../../shared/fact-keys.ts'
import { printAnswer } from '../../shared/print.ts'
import { wholeAnswer } from './answer-asked.ts'
import { readChangedChoice } from './changed-choice.ts'
import { readChangedFigure } from './changed-figure.ts'
import { readAllChoices } from './choice-stage.ts'
import { conclude } from './conclude.ts'
import { opensOnShrug } from './dont-know.ts'
import { readAllFigures } from './figure-stage.ts'
import { type Findings, noFindings, type Reading } from './findings.ts'
import { saysKeep, saysLeave } from './keeping.ts'
import { kindNamed } from './kind-named.ts'
import { type Lexicon, lexiconOf } from './lexicon.ts'
import { readLikened } from './likened.ts'
import { type Parts, takeApart } from './message-parts.ts'
import { normaliseText } from './normalise-text.ts'
import { doubtNothingRead } from './nothing-read.ts'
import { isOfOtherFasteners } from './other-fasteners.ts'
import { withoutAdverbs } from './question-adverbs.ts'
import { report } from './report.ts'
import { mendSpelling } from './spelling.ts'
import { joinThreads } from './thread-words.ts'
import { readThreads } from './threads-in-text.ts'
import { tokenise } from './tokens.ts'
import type { Understanding } from './understanding.ts'
import { doubtUnreadWords } from './unread-words.ts'
import type { Vocabulary } from './vocabulary.ts'

export interface MessageContext {
  /** The fact that the last question asked for. */
  readonly asking?: FactKey
  readonly answers?: Answers
}

/** Reads what people type, by the words of one vocabulary. */
export interface MessageReader {
  /**
   * Understand one message. Deterministic; never throws; time linear in the text, of which at most
   * 2,000 characters are read.
   *
   * @param text - what the person typed, anything at all
   * @param context - the fact being asked and the answers so far
   */
  read(text: string, context?: MessageContext): Understanding
  /** Whether a message keeps what was supposed. */
  keepsSupposed(text: string): boolean
  /** Whether a message leaves things as they were before something was supposed. */
  leavesSupposed(text: string): boolean
}

/** A reader that knows the given words; make it once and use it for every message. */
export function createReader(vocabulary: Vocabulary): MessageReader {
  const lexicon = lexiconOf(vocabulary)
  return {
    read: (text, context = {}) => understand(text, context, lexicon),
    keepsSupposed: (text) => saysKeep(text, lexicon),
    leavesSupposed: (text) => saysLeave(text, lexicon),
  }
}

function understand(text: string, context: MessageContext, lexicon: Lexicon): Understanding {
  const plain = normaliseText(text)
  const tokens = withoutAdverbs(
    joinThreads(
      mendSpelling(tokenise(plain.text), lexicon.speller),
      lexicon.vocabulary.numbers,
      context.asking === 'fastenerThread',
    ),
    lexicon,
  )
  const whole = context.asking && wholeAnswer(context.asking, tokens, lexicon)
  if (whole) {
    const named = isPrinted(whole, text) ? [] : kindNamed(whole, context.asking, tokens, lexicon)
    const readings = [whole, ...named]
    return report({ text, plain, tokens }, { readings, intent: 'tell' }, [])
  }
  const parts = takeApart(plain, tokens, context.answers ?? {}, lexicon)
  const findings = noFindings()
  readAllFigures(parts, context.asking, findings)
  readAllChoices(parts, context.asking, findings)
  readThreads(parts, findings)
  readChangedChoice(parts, findings)
  readChangedFigure(parts, findings)
  setOthersAside(parts, context.asking, findings)
  if (context.asking !== 'nitrousPower') implyNitrous(context.answers ?? {}, findings)
  implyBlower(parts, context.answers ?? {}, findings)
  readLikened(tokens, lexicon.words.parts, findings)
  doubtUnreadWords(parts, findings)
  doubtNothingRead(parts, findings)
  const conclusion = conclude(parts, context.asking, findings)
  return report({ text, plain, tokens }, conclusion, findings.doubts)
}

/** A button's words or a link's id, as they stand: what was asked and no more. */
function isPrinted({ key, answer }: Reading, text: string): boolean {
  const said = text.trim().toLowerCase()
  return said === String(answer) || said === printAnswer(key, answer).toLowerCase()
}

/** What is said of the fasteners of rods and heads is none of the mains'. */
function setOthersAside(parts: Parts, asking: FactKey | undefined, findings: Findings): void {
  // "No idea, the book has 65 for the heads" answers nothing.
  const asked = opensOnShrug(parts) ? undefined : asking
  const others = findings.readings.filter(
    (reading) =>
      isOfOtherFasteners(reading, parts) &&
      // What was asked is answered, unless it is answered twice.
      (reading.key !== asked ||
        findings.readings.some(({ key, answer }) => key === asked && answer !== reading.answer)),
  )
  if (others.length === 0) return
  const kept = findings.readings.filter((reading) => !others.includes(reading))
  findings.readings.splice(0, findings.readings.length, ...kept)
  for (const { from, to } of others) {
    findings.doubts.push({ from, to, why: 'read as about other fasteners' })
  }
}

/** "Blown motor, 28 lbs of boost": with boost and no turbo it is a blower, no blown-up engine. */
function implyBlower({ tokens, lexicon }: Parts, answers: Answers, { readings }: Findings): void {
  if (answers.induction !== undefined || readings.some(({ key }) => key === 'induction')) return
  const boost = readings.find(({ key }) => key === 'boost')
  const at = tokens.findIndex(({ text }) => lexicon.words.parts.blown.has(text))
  const next = tokens[at + 1]?.text ?? ''
  if (!boost || at < 0 || !lexicon.words.engines.names.has(next)) return
  readings.push({ key: 'induction', answer: 'supercharged', from: at, to: at + 2, strength: 1 })
}

/** "A 150 shot": nitrous, unless the engine breathes by something else. */
function implyNitrous(answers: Answers, { readings }: Findings): void {
  const shot = readings.find(({ key }) => key === 'nitrousPower')
  // "Make the nitrous 250 hp": the name of the shot, where nitrous was said before.
  if (shot && answers.induction === 'nitrous') {
    const names = (one: Reading): boolean =>
      one.key === 'induction' && one.from < shot.to && shot.from < one.to
    readings.splice(0, readings.length, ...readings.filter((one) => !names(one)))
  }
  if (!shot || answers.induction !== undefined) return
  const breathes = readings.filter(({ key }) => key === 'induction')
  // "No boost, just a 150 shot": without boost, and still nitrous.
  if (breathes.some(({ answer }) => answer !== 'naturally-aspirated')) return
  for (const one of breathes) readings.splice(readings.indexOf(one), 1)
  readings.push({ ...shot, key: 'induction', answer: 'nitrous', strength: 1 })
}
