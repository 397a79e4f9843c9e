import { STREET_V8 } from '../support/rulebook.ts'
import { rulesAsked } from '../support/rules-asked.ts'

// args: fact,fact  scope[:route] then JSON changes...
const [facts, where, ...rows] = process.argv.slice(2)
const [scope, route] = (where as string).split(':')
for (const row of rows) {
  const raw = Object.fromEntries(
    Object.entries({ ...STREET_V8, ...JSON.parse(row) }).filter(([, v]) => v !== null),
  )
  try {
    const { asked, wouldBe, called } = await rulesAsked(raw)
    const own = asked.filter((a) => a.scope === scope && (!route || a.facts.get('route') === route))
    for (const a of own)
      console.log(
        row,
        wouldBe,
        called,
        a.facts.get('route') ?? '',
        (facts as string)
          .split(',')
          .map((f) => `${f}=${a.facts.get(f)}`)
          .join(' '),
      )
  } catch (e) {
    console.log(row, String(e))
  }
}
