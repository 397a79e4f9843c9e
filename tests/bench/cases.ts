import { type Answers, readAnswers } from '../../shared/answers.ts'
import { assess } from '../../src/assess.ts'
import { generateAnswers } from '../../src/rulebook/generate-answers.ts'
import { loadRulebook, type Rulebook } from '../../src/rulebook/load.ts'
import { readFolder } from '../../src/rulebook/read-folder.ts'

/** The rules as they stand. */
export function theRulebook(root: string): Rulebook {
  return loadRulebook(readFolder(`${root}rules`))
}

/** Answers of one of the rulebook's own examples. */
export function exampleOf({ presets }: Rulebook, id: string): Answers {
  const preset = presets.find((one) => one.id === id)
  if (!preset) throw new RangeError(`no example is called ${id}`)
  return readAnswers(preset.answers).answers
}

/** Generated cases that the equations cover. */
export async function soundCases(rulebook: Rulebook, count: number): Promise<Answers[]> {
  const found: Answers[] = []
  for (let seed = 1; found.length < count; seed++) {
    const answers = generateAnswers(seed)
    const sound = await assess(rulebook, answers, { withoutWhatIf: true }).then(
      () => true,
      () => false,
    )
    if (sound) found.push(answers)
  }
  return found
}

/** An engine of a layout, otherwise alike. */
export function engineOf(layout: string): Answers {
  return readAnswers({
    layout,
    induction: 'turbocharged',
    boost: { value: 12, unit: 'psi' },
    peakRpm: { value: 6500, unit: 'rpm' },
    compressionRatio: 9.5,
    use: 'street-strip',
  }).answers
}

/** The same rules several times over, each copy under its own names. */
export function repeated(rulebook: Rulebook, times: number): Rulebook {
  const rules = rulebook.rules.flatMap((rule) =>
    Array.from({ length: times }, (_, copy) =>
      copy === 0 ? rule : { ...rule, id: `${rule.id}-${copy}` },
    ),
  )
  return { ...rulebook, rules }
}

/** The rulebook with another number of sampled cases. */
export function withSamples(rulebook: Rulebook, samples: number): Rulebook {
  return { ...rulebook, loadCases: { ...rulebook.loadCases, samples } }
}
