import fc from 'fast-check'
import { unit } from 'mathjs'
import { describe, expect, it } from 'vitest'
import type { RouteReport } from '../../shared/assessment.ts'
import { boreAndHone } from '../../src/pages/bore-and-hone.ts'
import { capShape, uprightFasteners } from '../../src/pages/cap-shape.ts'
import { costBars } from '../../src/pages/cost-bars.ts'
import { loadBySpeed } from '../../src/pages/load-by-speed.ts'
import { loadDiagram } from '../../src/pages/load-diagram.ts'
import { capViews, mainCapDrawing } from '../../src/pages/main-cap-drawing.ts'
import { marginBars, marginText } from '../../src/pages/margin-bars.ts'
import { inUnits, printIn } from '../../src/pages/person-units.ts'
import { pressureTrace } from '../../src/pages/pressure-trace.ts'
import { reachMap, spreadOut } from '../../src/pages/reach-map.ts'
import { workOrder } from '../../src/pages/work-order.ts'
import { shopRules } from '../check-in/case.ts'
import { SAMPLE_STEPS, sampleAssessment, sampleReach } from '../support/sample-assessment.ts'

const sample = sampleAssessment()

function numbers(text: string): number[] {
  return (text.match(/-?\d+(\.\d+)?/g) ?? []).map(Number)
}

/** Tips of the arrows of one look: the first corner of each head. */
function tips(markup: string, look: string): [number, number][] {
  return [
    ...markup.matchAll(new RegExp(`<path d="M([^L]+)L[^"]*" class="${look} solid tip"`, 'g')),
  ].map((match) => numbers(match[1] as string).slice(0, 2) as [number, number])
}

/** Where the arrow of one look starts. */
function tails(markup: string, look: string): [number, number][] {
  return [
    ...markup.matchAll(new RegExp(`<line x1="([^"]+)" y1="([^"]+)"[^>]*class="${look}"`, 'g')),
  ].map((match) => [Number(match[1]), Number(match[2])])
}

describe('person units', () => {
  // Source: mathjs, a general numeric library; its factors are the exact definitions, so the
  // tolerance is that of double arithmetic.
  it.each([
    ['kN', 'lbf', 'lbf'],
    ['bar', 'psi', 'psi'],
    ['N m', 'lb ft', 'ft lbf'],
    ['kW', 'hp', 'hp'],
    ['mm', 'in', 'in'],
    ['MPa', 'psi', 'psi'],
  ])('turns %s into %s', (from, to, name) => {
    const own = inUnits(37.5, from, 'us')
    const expected = unit(37.5, from).toNumber(name)
    expect(own.unit).toBe(to)
    expect(Math.abs(own.value / expected - 1)).toBeLessThan(1e-6)
  })

  it('leaves what already suits the person, and what has no partner', () => {
    expect(inUnits(51.3, 'kN', 'metric')).toEqual({ value: 51.3, unit: 'kN' })
    expect(inUnits(6500, 'rpm', 'us')).toEqual({ value: 6500, unit: 'rpm' })
    expect(inUnits(31, 'MPa', 'metric')).toEqual({ value: 31, unit: 'MPa' })
    expect(printIn(14, 'psi', 'metric')).toBe('1\u00a0bar')
  })
})

describe('main cap drawing', () => {
  const { worstPull, worstSide } = sample.loads
  const drawing = (units: 'us' | 'metric' = 'us') =>
    String(mainCapDrawing({ caps: capViews(sample), worstPull, worstSide, units }))

  it('draws every force to one scale', () => {
    // Coordinates are printed to a tenth; two of them bound a length to within 0.1 units.
    const [first = ''] = drawing().split('</svg>')
    const starts = tails(first, 'force')
    const ends = tips(first, 'force')
    const [pull, side] = ends.map(([x, y], index) => {
      const [fromX, fromY] = starts[index] as [number, number]
      return Math.hypot(x - fromX, y - fromY)
    }) as [number, number]
    const scale = pull / worstPull.pull
    expect(Math.abs(side - worstSide.side * scale)).toBeLessThan(0.3)
    const clamps = tips(first, 'clamp')
    const clampStarts = tails(first, 'clamp')
    const clamp = Math.abs((clamps[0] as number[])[1]! - (clampStarts[0] as number[])[1]!)
    const each = (capViews(sample)[0]?.joint.clamp ?? 0) / 2
    expect(Math.abs(clamp - each * scale)).toBeLessThan(0.5)
  })

  it('shows present and called hardware side by side, and one when nothing drawn changes', () => {
    expect(capViews(sample).map(({ id }) => id)).toEqual(['cap-now', 'cap-called'])
    const kept = { ...sample, call: { ...sample.call, route: 'keep-caps-and-bolts' as const } }
    expect(capViews(kept).map(({ id }) => id)).toEqual(['cap-now'])
    const withheld = { ...sample, call: { ...sample.call, route: null } }
    expect(capViews(withheld)).toHaveLength(1)
  })

  it('has the fasteners that each route has', () => {
    const shape = (route: RouteReport['id'] | null) => capShape(sample.build, route)
    expect(uprightFasteners(shape(null))).toBe(2)
    expect(shape('keep-caps-add-studs')).toMatchObject({ studs: true, capMaterial: 'gray-iron' })
    expect(shape('steel-caps')).toMatchObject({ studs: true, capMaterial: 'steel' })
    expect(shape('girdle')).toMatchObject({ girdle: true, pattern: 'two-bolt' })
    expect(shape('four-bolt-conversion')).toMatchObject({ pattern: 'four-bolt-splayed' })
    expect(shape('lower-the-target')).toMatchObject({ studs: false, girdle: false })
  })

  it('is drawn to the proportions of the build', () => {
    // 3.9 in of span and 1.95 in of height: twice as far between the fasteners as from the
    // parting face to the crown. Dimension lines carry the drawn lengths.
    const [first = ''] = drawing().split('</svg>')
    const span = /<line x1="([\d.]+)" y1="20" x2="([\d.]+)" y2="20" class="hair"/.exec(first)
    const height = [
      ...first.matchAll(/<line x1="([\d.]+)" y1="([\d.]+)" x2="\1" y2="([\d.]+)" class="hair"/g),
    ]
    const drawnSpan = Number(span?.[2]) - Number(span?.[1])
    const drawnHeight = Number(height[0]?.[3]) - Number(height[0]?.[2])
    expect(Math.abs(drawnSpan / drawnHeight - 2)).toBeLessThan(0.01)
  })

  it('says the forces in words and in the person’s units', () => {
    expect(drawing('metric')).toContain('against a clamp of')
    expect(drawing('metric')).not.toContain('lbf')
    expect(drawing('us')).not.toContain('kN')
  })
})

describe('load diagram', () => {
  const markup = String(loadDiagram(sample.loads, 'us'))

  it('draws every main inside the outer ring', () => {
    const paths = [...markup.matchAll(/<path d="(M[^"]+)" class="layout-blue"/g)]
    expect(paths).toHaveLength(sample.loads.mains.length)
    for (const [, d] of paths) {
      const flat = numbers(d as string)
      for (let index = 0; index < flat.length; index += 2) {
        const [x, y] = [flat[index] as number, flat[index + 1] as number]
        expect(Math.hypot(x - 80, y - 80)).toBeLessThanOrEqual(66.2)
      }
    }
  })

  it('puts a load towards the cap in the lower half', () => {
    const [main] = sample.loads.mains
    const polar = [0, 1, 2].map((angle) => ({ angle, x: angle - 1, y: -30 }))
    const one = { ...sample.loads, mains: [{ ...main!, polar }] }
    const d = /<path d="(M[^"]+)" class="layout-blue"/.exec(String(loadDiagram(one, 'us')))?.[1]
    const ys = numbers(d ?? '').filter((_, index) => index % 2 === 1)
    expect(ys.length).toBeGreaterThan(0)
    expect(Math.min(...ys)).toBeGreaterThan(80)
  })

  it('names the worst main, once', () => {
    expect(markup.match(/: the worst</g)).toHaveLength(1)
    expect(markup).toContain(`>main ${sample.loads.worstPull.main}: the worst<`)
  })

  it('opens the mark of a worst point that the line does not pass', () => {
    expect(markup).not.toContain('worst-mark open')
    const mains = sample.loads.mains.map((main) => ({
      ...main,
      worstPull: { ...main.worstPull, loadCase: 'closed-throttle' as const },
    }))
    const other = String(loadDiagram({ ...sample.loads, mains }, 'us'))
    expect(other.match(/worst-mark open/g)).toHaveLength(mains.length)
    expect(other).toContain('throttle closed')
  })
})

describe('margins', () => {
  it('never print as 1.00 what is below 1', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 20, noNaN: true }), (margin) => {
        const printed = Number(marginText(margin))
        expect(Math.abs(printed - margin)).toBeLessThan(0.0101)
        if (margin < 1 - 1e-8) expect(printed).toBeLessThan(1)
      }),
    )
  })

  it('draw a margin of 1 on the line of 1, and cut a long bar with a note', () => {
    const even = { low: 1, likely: 1, high: 1 }
    const long = { low: 4, likely: 5, high: 6 }
    const margins = { ...sample.routes[0]!.margins, hold: even, grip: long }
    const route = { ...sample.routes[0]!, margins }
    const markup = String(marginBars([route], null))
    const line = /<line x1="([\d.]+)"[^>]*class="ink thick-line"/.exec(markup)?.[1]
    expect(markup).toMatch(new RegExp(`<circle cx="${line}"`))
    expect(markup).toContain('margin-good tip')
    expect(markup).toContain('end in an arrow')
  })

  it('have a table with the spread of every route', () => {
    const markup = String(marginBars(sample.routes, 'steel-caps'))
    for (const { title, margins } of sample.routes) {
      expect(markup).toContain(`<th scope="row">${title}</th>`)
      expect(markup).toContain(marginText(margins.hold.low))
    }
  })
})

describe('reach map', () => {
  it('keeps labels in order, apart and inside', () => {
    const heights = fc.array(fc.double({ min: 0, max: 200, noNaN: true }), {
      minLength: 1,
      maxLength: 7,
    })
    fc.assert(
      fc.property(heights, (ys) => {
        const sorted = [...ys].sort((a, b) => a - b).map((y) => ({ y }))
        const placed = spreadOut(sorted, 0, 200).map(({ at }) => at)
        placed.forEach((at, index) => {
          expect(at).toBeGreaterThanOrEqual(-1e-9)
          expect(at).toBeLessThanOrEqual(200 + 1e-9)
          if (index > 0) expect(at - placed[index - 1]!).toBeGreaterThanOrEqual(14 - 1e-9)
        })
      }),
    )
  })

  it('says which routes hold nowhere', () => {
    const reach = sampleReach()
    const none = { route: 'girdle' as const, boundary: [] }
    const other = {
      ...reach,
      boundaries: [...reach.boundaries.filter(({ route }) => route !== 'girdle'), none],
    }
    expect(String(reachMap(other, 'steel-caps', 'us'))).toContain(
      'nowhere here does it hold: girdle',
    )
    expect(String(reachMap(reach, 'steel-caps', 'us'))).not.toContain('nowhere')
  })

  it('never rounds a limit up', () => {
    const reach = sampleReach()
    const at = (boost: number) => ({
      ...reach,
      boundaries: [
        { route: 'girdle' as const, boundary: [5000, 6000].map((rpm) => ({ rpm, boost })) },
      ],
    })
    const cells = (boost: number, units: 'us' | 'metric') =>
      [...String(reachMap(at(boost), null, units)).matchAll(/<td>([^<]*)<\/td>/g)].map(([, text]) =>
        text?.replace(/\s/g, ' '),
      )
    expect(cells(7.96, 'us')).toEqual(['7.9 psi', '7.9 psi'])
    // 1 psi is 0.068948 bar: 7.96 psi is 0.5488 bar.
    expect(cells(7.96, 'metric')).toEqual(['0.54 bar', '0.54 bar'])
  })

  it('does not give the end of its search for a boundary', () => {
    const drawn = String(reachMap({ ...sampleReach(), tried: 29 }, 'steel-caps', 'us'))
    expect(drawn).toMatch(/29\spsi or more at 4,500\srpm/)
    expect(drawn).toMatch(/Nothing above 29\spsi was tried/)
    expect(String(reachMap(sampleReach(), 'steel-caps', 'us'))).not.toMatch(/or more|was tried/)
  })
})

describe('cost bars', () => {
  it('show a stake far beyond the routes by an arrow at the edge', () => {
    const near = String(costBars(sample.routes, sample.cost, 'steel-caps'))
    const far = String(costBars(sample.routes, { ...sample.cost, stake: 90_000 }, 'steel-caps'))
    expect(near).not.toContain('force solid tip')
    expect(far).toContain('force solid tip')
    expect(far).toContain('>stake 90,000<')
  })

  it('leave the budget out when there is none', () => {
    const markup = String(costBars(sample.routes, { ...sample.cost, budget: null }, null))
    expect(markup).not.toContain('budget')
  })
})

describe('pressure trace', () => {
  it('is the same picture however the angles are counted', () => {
    const shifted = {
      ...sample.loads,
      pressureTrace: sample.loads.pressureTrace
        .filter(({ angle }) => angle > -360)
        .map(({ angle, pressure }) => ({ angle: angle < 0 ? angle + 720 : angle, pressure })),
    }
    const plain = {
      ...sample.loads,
      pressureTrace: sample.loads.pressureTrace.filter(({ angle }) => angle > -360),
    }
    expect(String(pressureTrace(shifted, 'us'))).toBe(String(pressureTrace(plain, 'us')))
  })
})

describe('load over speed', () => {
  it('draws no line through one speed, and still has the table', () => {
    const one = { ...sample.loads, curve: sample.loads.curve.slice(0, 1) }
    const markup = String(loadBySpeed(one, 'metric'))
    expect(markup).not.toContain('<path')
    expect(markup).toContain('3,000\u00a0rpm')
  })
})

describe('why a main bore is bored and honed', () => {
  const { mainBore } = shopRules.sheet.order

  it('tells of new caps where it is bored, of the new clamp where it is only honed', () => {
    const bored = String(boreAndHone(true, mainBore))
    const honed = String(boreAndHone(false, mainBore))
    for (const words of [mainBore.bored.title, mainBore.bored.text, mainBore.stages.fitted.leaves])
      expect([bored.includes(words), honed.includes(words)], words).toEqual([true, false])
    for (const words of [mainBore.honed.title, mainBore.honed.text, mainBore.stages.pulled.leaves])
      expect([bored.includes(words), honed.includes(words)], words).toEqual([false, true])
    expect(bored.indexOf('2 line bored')).toBeLessThan(bored.indexOf('3 line honed'))
    expect(honed).toContain('1 new clamp')
  })
})

describe('order of work', () => {
  const markup = String(workOrder(SAMPLE_STEPS, shopRules.sheet.order))

  it('numbers the steps through, whoever does them', () => {
    const values = [...markup.matchAll(/class="step" value="(\d+)"/g)].map((match) =>
      Number(match[1]),
    )
    expect(values).toEqual(SAMPLE_STEPS.map((_, index) => index + 1))
  })

  it('says what goes to the shop before the shop’s first step, and bores before it hones', () => {
    const { goes, comesBack } = shopRules.sheet.order
    expect(markup).toContain(goes.text)
    expect(markup.indexOf(goes.text)).toBeLessThan(markup.indexOf('step-fit-caps'))
    expect(markup.indexOf(comesBack.text)).toBeGreaterThan(markup.indexOf('step-line-hone'))
    expect(markup.indexOf('step-line-bore')).toBeLessThan(markup.indexOf('step-line-hone'))
    expect(markup.match(/class="leg at-shop"/g)).toHaveLength(1)
  })
})
