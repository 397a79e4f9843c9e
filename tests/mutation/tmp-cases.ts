import { askedOf, CASES, ruleOf, speaks } from '../practice/rules/cases.ts'
import { rulebook } from '../support/rulebook.ts'
import { mutantsOf } from './rule-mutants.ts'

const only = process.argv.slice(2)
const seen = await Promise.all(
  CASES.filter((c) => !only.length || only.includes(c.rule)).map(async (one) => {
    try {
      return { one, ...(await askedOf(one)) }
    } catch (e) {
      console.log('ERR', one.name, String(e))
      return { one, asked: [], wouldBe: '' }
    }
  }),
)
for (const { one, asked, wouldBe } of seen) {
  const rule = ruleOf(one)
  const w = Object.entries(one.where)
    .filter(([f, [l, h]]) => {
      const v = Number(asked[0]?.facts.get(f))
      return !(v >= l && v <= h)
    })
    .map(([f]) => f + '=' + asked[0]?.facts.get(f))
  if (
    speaks(rule, asked) !== one.speaks ||
    w.length ||
    (one.route && rule.scope !== 'route' && rule.scope !== 'build' && one.route !== wouldBe) ||
    asked.length === 0
  )
    console.log('WRONG', one.name, speaks(rule, asked), w.join(), wouldBe, asked.length)
}
let t = 0,
  k = 0
for (const rule of rulebook.rules.filter((r) => !only.length || only.includes(r.id)))
  for (const m of mutantsOf(rule)) {
    t++
    if (seen.some(({ one, asked }) => one.rule === rule.id && speaks(m.rule, asked) !== one.speaks))
      k++
    else console.log('survived', rule.id, m.slip)
  }
console.log(k, 'of', t)
