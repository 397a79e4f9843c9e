import { cpus } from 'node:os'
import { exampleOf, theRulebook } from './cases.ts'
import { benchGrowth, benchMemory } from './growth.ts'
import { benchHttp } from './http.ts'
import { benchParts } from './parts.ts'

/**
 * Measures, and asserts nothing: machines differ, and so do the hours of one machine. Compare the
 * ratios of one run. Arguments: the project's folder, then which parts to run (all by default).
 */
async function main([root = '', ...parts]: string[]): Promise<void> {
  const rulebook = theRulebook(root)
  const answers = exampleOf(rulebook, 'twin-turbo')
  const wanted = (part: string): boolean => parts.length === 0 || parts.includes(part)
  console.log(`${cpus().length} × ${cpus()[0]?.model ?? 'unknown'}, Node ${process.version}`)
  if (wanted('parts')) await benchParts(rulebook, answers)
  if (wanted('growth')) await benchGrowth(rulebook, answers)
  if (wanted('memory')) await benchMemory(rulebook, answers)
  if (wanted('http')) await benchHttp(root, rulebook)
}

main(process.argv.slice(2)).catch((error) => {
  console.error(error)
  process.exit(1)
})
