import { visible } from '../../shared/visible.ts'

/** What `npm run --silent ask -- …` was asked. */
export interface AskArguments {
  readonly text: string
  readonly json: boolean
  readonly units: 'us' | 'metric'
}

/** What the command says of itself. */
export const ASK_USAGE = `Usage: npm run --silent ask -- [--json] [--metric] "<the build in your own words>"

  --json     the whole assessment as JSON, as POST /api/assess answers
  --metric   figures in metric units
  --         everything after it is words

Exit codes: 0 a call, 2 this was asked wrongly, 3 no call (nothing understood, or answers
that contradict each other).`

/** The arguments, or why they cannot be used. */
export function readAskArguments(
  args: readonly string[],
): { ok: AskArguments } | { fault: string } {
  const words: string[] = []
  let json = false
  let units: 'us' | 'metric' = 'us'
  let isWordsOnly = false
  for (const arg of args) {
    if (isWordsOnly || !/^--?[a-z]|^--$/.test(arg)) words.push(arg)
    else if (arg === '--') isWordsOnly = true
    else if (arg === '--json') json = true
    else if (arg === '--metric') units = 'metric'
    else return { fault: `there is no option ${visible(arg)}` }
  }
  const text = words.join(' ').trim()
  return text === '' ? { fault: 'say something about the build' } : { ok: { text, json, units } }
}
