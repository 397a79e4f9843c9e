import { expect } from 'vitest'
import { readAnswers } from '../../shared/answers.ts'
import { assess } from '../../src/assess.ts'
import { buildFromAnswers } from '../../src/build/from-answers.ts'
import type { Block, Pair, ShopSheet } from '../../src/shop-sheet/blocks.ts'
import { engineCase } from '../../src/shop-sheet/engine-case.ts'
import { readingsOf } from '../../src/shop-sheet/readings.ts'
import { shopSheet } from '../../src/shop-sheet/sheet.ts'
import type { ShopRules } from '../../src/shop-sheet/shop-rules.ts'
import { workSteps } from '../../src/site/call.ts'
import { rulebook, shopRules } from '../check-in/case.ts'

/** Steel caps by common practice: very high compression on cast caps. */
export const RACE = {
  layout: 'v8-cross-plane',
  bore: '4.06in',
  stroke: '3.48in',
  compressionRatio: '13.4',
  fuel: 'race-gasoline',
  peakRpm: '7600rpm',
  use: 'drag',
  capFastening: 'two-bolt',
  capMaterial: 'gray-iron',
  capHistory: 'matched',
  blockMaterial: 'gray-iron',
  invested: '9000USD',
}

/** Said on every sheet; here invented. */
export const SAFETY = ['Mind the hoist.', 'Mind the wrench.']

export async function sheetOf(
  answers: Readonly<Record<string, string>>,
  fields: Readonly<Record<string, string>> = {},
  units: 'us' | 'metric' = 'us',
  rules: ShopRules = shopRules,
): Promise<ShopSheet> {
  const read = readAnswers(answers)
  expect(read.problems).toEqual([])
  const assessment = await assess(rulebook, read.answers, { system: units, withoutWhatIf: true })
  const route = assessment.routes.find(({ id }) => id === assessment.call.route)
  if (!route) throw new Error('no route was called')
  const build = buildFromAnswers(rulebook, read.answers)
  const engine = engineCase(build, route.id, rulebook)
  const readings = readingsOf({ unit: 'in', fields })
  const steps = workSteps(rulebook, assessment)
  return shopSheet({
    assessment,
    route,
    engine,
    readings,
    units,
    use: engine.use,
    rules,
    safety: SAFETY,
    steps,
    rate: 1,
  })
}

export const blocks = (sheet: ShopSheet): Block[] =>
  sheet.sections.flatMap((section) => section.blocks)

function pairs(sheet: ShopSheet): Pair[] {
  return blocks(sheet).flatMap((block) => (block.kind === 'pairs' ? block.rows : []))
}

export function pair(sheet: ShopSheet, label: string): Pair {
  const found = pairs(sheet).find((one) => one.label.startsWith(label))
  if (!found) throw new Error(`no row ${label}`)
  return found
}
