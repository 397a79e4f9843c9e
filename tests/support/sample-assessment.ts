import {
  type Assessment,
  assessment,
  type Finding,
  type Margins,
  type RouteReport,
  type Spread,
} from '../../shared/assessment.ts'
import type { LoadReport, WorstLoad } from '../../shared/load-report.ts'
import type { RouteId } from '../../shared/route-ids.ts'
import type { Reach } from '../../src/pages/reach-map.ts'
import type { WorkStep } from '../../src/pages/work-order.ts'

/** A reach map that fits {@link sampleAssessment}. */
export function sampleReach(): Reach {
  const speeds = [4500, 5000, 5500, 6000, 6500, 7000, 7500]
  const at = (start: number, slope: number) =>
    speeds.map((rpm, index) => ({ rpm, boost: Math.max(0, start - slope * index) }))
  return {
    boundaries: [
      { route: 'keep-caps-and-bolts', boundary: at(7, 1) },
      { route: 'keep-caps-add-studs', boundary: at(11, 0.9) },
      { route: 'steel-caps', boundary: at(22, 1.1) },
      { route: 'girdle', boundary: at(12, 0.9) },
      { route: 'four-bolt-conversion', boundary: at(28, 0.8) },
      { route: 'stronger-block', boundary: at(29, 0.7) },
    ],
    here: { rpm: 6500, boost: 14 },
    tried: 50,
  }
}

/** The order of work of {@link sampleAssessment}. */
export const SAMPLE_STEPS: readonly WorkStep[] = [
  {
    id: 'strip-down',
    title: 'Strip the block',
    at: 'home',
    note: 'Bare, every plug out. Stamp each cap with its number and an arrow to the front.',
  },
  {
    id: 'send-block',
    title: 'Crate block, caps and fasteners',
    at: 'home',
    note: 'The bores are cut under the clamp of the fasteners that will stay.',
  },
  {
    id: 'fit-caps',
    title: 'Fit the new caps',
    at: 'shop',
    note: 'Each cap to its register, parting faces flush, studs at final torque.',
  },
  {
    id: 'line-bore',
    title: 'Line bore',
    at: 'shop',
    note: 'One bar, one straight row of holes, a few thousandths small.',
  },
  {
    id: 'line-hone',
    title: 'Line hone',
    at: 'shop',
    note: 'To the finished housing size, round and smooth.',
  },
  { id: 'clean', title: 'Wash everything', at: 'home', note: 'Chips hide behind gallery plugs.' },
  {
    id: 'measure-clearance',
    title: 'Measure the running clearance',
    at: 'home',
    note: 'Shells in, fasteners at final torque, three directions.',
  },
  {
    id: 'torque',
    title: 'Assemble',
    at: 'home',
    note: 'Caps by number, arrow to the front, torque in three steps.',
  },
]

/**
 * An invented but plausible case for tests of pages: a turbocharged V8 whose cast caps are at
 * their limit, called to steel caps. No figure here is a result of the mechanics.
 */
export function sampleAssessment(changes: Partial<Assessment> = {}): Assessment {
  return assessment.parse({
    version: '1.0.0',
    link: 'v=1.0.0&boost=14psi&bore=4.03in&compressionRatio=9.5&layout=v8-cross-plane&peakRpm=6500rpm&stroke=3.48in',
    build: sampleBuild(),
    loads: sampleLoads(),
    routes: sampleRoutes(),
    call: sampleCall(),
    cautions: [
      finding('detonation-caution', 'Detonation breaks caps that would hold otherwise', 'danger'),
      finding(
        'recheck-bores-after-studs',
        'Studs change the shape of the housing bores',
        'caution',
      ),
    ],
    contradictions: [],
    turningPoints: [
      {
        fact: 'boost',
        label: 'Highest boost',
        now: '14 psi',
        at: '9.5 psi',
        direction: 'below',
        route: 'keep-caps-add-studs',
        text: 'Below **9.5 psi** the present caps on studs hold in enough cases.',
      },
      {
        fact: 'peakRpm',
        label: 'Highest engine speed',
        now: '6,500 rpm',
        at: '7,400 rpm',
        direction: 'above',
        route: 'four-bolt-conversion',
        text: 'Above **7,400 rpm** two fasteners a cap no longer hold it.',
      },
    ],
    assumptions: sampleAssumptions(),
    working: [
      {
        title: 'Preload of one fastener',
        formula: 'torque / (K × d)',
        withNumbers: '95 N m / (0.18 × d of 7/16-14)',
        result: '47 kN',
        source: { kind: 'published', cite: 'Shigley, section 8–8' },
      },
    ],
    uncertainty: {
      margin: 'hold',
      label: 'hold margin (the cap walks)',
      explained: 0.94,
      shares: [
        { id: 'registerInterference', label: 'fit in the register', share: 0.61 },
        { id: 'preload', label: 'preload from the torque', share: 0.2 },
      ],
    },
    next: {
      fact: 'fastenerTorque',
      label: 'Final torque of the main fasteners',
      why: 'It decides the clamp.',
      separates: ['keep-caps-add-studs', 'steel-caps'],
      needed: 0,
      left: 3,
    },
    cost: {
      low: 980,
      likely: 1420,
      high: 2050,
      currency: 'USD',
      route: 'steel-caps',
      items: costItems(),
      stake: 9500,
      stakeState: 'said',
      breakEvenChance: 0.15,
      budget: 2500,
      beforeTax: false,
    },
    ...changes,
  })
}

const memory = { kind: 'memory' as const, cite: '' }
const practice = { kind: 'practice' as const, cite: '' }
const said = { kind: 'said' as const, cite: '' }

function finding(rule: string, title: string, severity: Finding['severity'] = 'note'): Finding {
  return {
    rule,
    title,
    text: 'The crank pulls the worst cap with **51.3 kN** and pushes it sideways with **24.6 kN**, at 14 psi of boost.',
    severity,
    facts: [
      {
        key: 'worstPull',
        label: 'Worst pull on a cap',
        value: 51.3,
        unit: 'kN',
        text: '51.3 kN',
        state: 'computed',
      },
      {
        key: 'boost',
        label: 'Highest boost',
        value: 14,
        unit: 'psi',
        text: '14 psi',
        state: 'said',
      },
    ],
    source: {
      kind: 'published',
      cite: "Budynas and Nisbett, Shigley's Mechanical Engineering Design, 9th ed., section 8–7",
    },
  }
}

function sampleBuild(): Assessment['build'] {
  const length = (value: number, state: 'said' | 'assumed' = 'assumed') => ({
    state,
    value,
    unit: 'in',
    text: `${value} in`,
    low: value * 0.97,
    high: value * 1.03,
    because: 'Usual proportion of the bore and stroke.',
    source: memory,
  })
  const choice = (value: string, text: string) => ({
    state: 'said' as const,
    value,
    unit: '',
    text,
  })
  return {
    layout: choice('v8-cross-plane', 'V8, cross-plane crank'),
    bore: length(4.03, 'said'),
    stroke: length(3.48, 'said'),
    mainJournalDiameter: length(2.45),
    capBoltSpan: length(3.9),
    capHeight: length(1.95),
    capWidth: length(0.9),
    registerHeight: length(0.22),
    boost: { state: 'said', value: 14, unit: 'psi', text: '14 psi' },
    peakRpm: { state: 'said', value: 6500, unit: 'rpm', text: '6,500 rpm' },
    blockMaterial: choice('gray-iron', 'Gray cast iron'),
    capMaterial: choice('gray-iron', 'Gray cast iron'),
    capFastening: choice('two-bolt', 'Two bolts a cap'),
    skirt: choice('short', 'Ends at the crank’s centre line'),
    fastenerKind: choice('bolt', 'Bolts'),
    fastenerThread: choice('7/16-14', '7/16-14'),
    targetPower: { state: 'not-needed', value: null, unit: '', text: 'not needed' },
  }
}

/** Pressure in bar at a crank angle after firing dead centre, −360 to 360. */
function pressureAt(angle: number): number {
  if (angle < -180) return 1.8
  if (angle > 180) return 1.4
  const radians = (angle * Math.PI) / 180
  const volume = 1 / 8.5 + 0.5 * (1 - Math.cos(radians)) + 0.06 * Math.sin(radians) ** 2
  const compressed = 1.8 * ((1 + 1 / 8.5) / volume) ** 1.32
  const burnt = 1 - Math.exp(-4 * Math.max(0, (angle + 16) / 52) ** 3)
  return compressed * (1 + 3.4 * burnt * Math.exp(-Math.max(0, angle) / 260))
}

/** Half of one throw's load, kN, from two cylinders on ±45° banks, firing at `first` and `second`. */
function throwLoad(angle: number, first: number, second: number): { x: number; y: number } {
  let [x, y] = [0, 0]
  for (const [bank, firing] of [
    [-1, first],
    [1, second],
  ] as const) {
    const own = ((((angle - firing + 360) % 720) + 720) % 720) - 360
    const gas = pressureAt(own) * 0.823 - 0.8
    const radians = (own * Math.PI) / 180
    const inertia = 14.5 * (Math.cos(radians) + 0.3 * Math.cos(2 * radians))
    const down = (gas - inertia) * 0.8
    const lean = 0.15 * down * Math.sin(radians)
    x += bank * down * Math.SQRT1_2 + lean
    y -= down * Math.SQRT1_2
  }
  return { x, y }
}

const FIRING = [
  [0, 90],
  [450, 180],
  [270, 540],
  [630, 360],
] as const

function sampleLoads(): LoadReport {
  const angles = Array.from({ length: 180 }, (_, index) => index * 4)
  const mains = [0, 1, 2, 3, 4].map((index) => {
    const polar = angles.map((angle) => {
      const parts = [FIRING[index - 1], FIRING[index]]
        .filter((firing) => firing !== undefined)
        .map(([first, second]) => throwLoad(angle, first, second))
      return {
        angle,
        x: parts.reduce((sum, part) => sum + part.x, 0),
        y: parts.reduce((sum, part) => sum + part.y, 0),
      }
    })
    const pull = polar.reduce((best, point) => (point.y < best.y ? point : best))
    const side = polar.reduce((best, point) =>
      Math.abs(point.x) > Math.abs(best.x) ? point : best,
    )
    return {
      main: index + 1,
      rpm: 4500,
      polar,
      worstPull: worst(index + 1, pull, 'pull'),
      worstSide: worst(index + 1, side, 'side'),
      unitLoad: 31 + index,
    }
  })
  const most = (kind: 'worstPull' | 'worstSide'): WorstLoad =>
    mains.map((main) => main[kind]).reduce((best, load) => (load.force > best.force ? load : best))
  const trace = Array.from({ length: 241 }, (_, index) => -360 + index * 3)
  const pressureTrace = trace.map((angle) => ({ angle, pressure: pressureAt(angle) }))
  const peak = pressureTrace.reduce((most, point) =>
    point.pressure > most.pressure ? point : most,
  )
  return {
    peakPressure: { value: peak.pressure, unit: 'bar', rpm: 4500, angle: peak.angle },
    power: { value: 412, unit: 'kW', rpm: 6000 },
    torque: { value: 742, unit: 'N m', rpm: 4500 },
    bmep: { value: 16.4, unit: 'bar' },
    knockLimited: true,
    worstPull: most('worstPull'),
    worstSide: most('worstSide'),
    curve: [3000, 4500, 6000, 6500].map((rpm, index) => ({
      rpm,
      torque: [640, 742, 656, 590][index] as number,
      power: [201, 350, 412, 402][index] as number,
      bmep: [14.1, 16.4, 14.5, 13][index] as number,
      peakPressure: [85, 93.4, 88, 82][index] as number,
      worstPull: [44, 47.1, 42, 38][index] as number,
      worstSide: [22, 24.1, 22, 20][index] as number,
    })),
    pressureTrace,
    mains,
  }
}

function worst(
  main: number,
  point: { angle: number; x: number; y: number },
  kind: 'pull' | 'side',
): WorstLoad {
  const pull = Math.max(0, -point.y)
  const side = Math.abs(point.x) * 0.6
  const force = kind === 'pull' ? pull : side
  return { force, pull, side, main, angle: point.angle, rpm: 4500, loadCase: 'full-load' }
}

const TITLES: Readonly<Record<RouteId, string>> = {
  'keep-caps-and-bolts': 'Keep the caps and bolts',
  'keep-caps-add-studs': 'Keep the caps, fit studs',
  'steel-caps': 'Steel caps on studs',
  girdle: 'Girdle',
  'four-bolt-conversion': 'Four-bolt conversion',
  'stronger-block': 'A stronger block',
  'lower-the-target': 'Lower the target',
}

function spreadAbout(likely: number, share = 0.18): Spread {
  return { low: likely * (1 - share), likely, high: likely * (1 + share) }
}

function marginsOf(factor: number, strength: number): Margins {
  return {
    hold: spreadAbout(1.32 * factor),
    grip: spreadAbout(0.98 * factor, 0.3),
    separation: spreadAbout(2.4 * factor, 0.2),
    capFatigue: spreadAbout(0.94 * strength),
    fastenerProof: spreadAbout(1.31 * Math.sqrt(factor), 0.1),
    threadStrip: spreadAbout(1.9, 0.15),
  }
}

function sampleRoutes(): RouteReport[] {
  return [
    route('keep-caps-and-bolts', 34, marginsOf(0.8, 0.95), [0, 40, 90]),
    route('keep-caps-add-studs', 62, marginsOf(1.02, 1), [310, 420, 640]),
    route('steel-caps', 95, marginsOf(1.2, 1.9), [980, 1420, 2050]),
    route('girdle', 70, marginsOf(1.1, 1.05), [650, 880, 1300]),
    route('four-bolt-conversion', 98, marginsOf(1.6, 2.2), [1500, 2250, 3300]),
    route('stronger-block', 100, marginsOf(2.1, 2.6), [3900, 5200, 7400]),
    {
      ...route('lower-the-target', 95, marginsOf(1.15, 1.3), [0, 40, 90]),
      lowered: {
        boost: { value: 8, unit: 'psi' },
        rpm: 6200,
        power: { value: 318, unit: 'kW' },
      },
    },
  ]
}

function route(
  id: RouteId,
  holdsIn: number,
  margins: Margins,
  [low, likely, high]: [number, number, number],
): RouteReport {
  const impossible = id === 'girdle'
  return {
    id,
    title: TITLES[id],
    possible: !impossible,
    ...(impossible ? { whyNot: 'No girdle is made for a block of this skirt.' } : {}),
    margins,
    holdsIn,
    neededHoldsIn: 90,
    holds: holdsIn >= 90,
    cost: { low, likely, high, currency: 'USD', items: costItems() },
    work: id === 'keep-caps-and-bolts' ? [] : ['line-bore', 'line-hone'],
    parts: id === 'keep-caps-and-bolts' ? [] : ['steel-caps', 'main-studs'],
    for: [finding(`${id}-for`, 'It holds the worst cap')],
    against: [finding(`${id}-against`, 'It costs machine work', 'caution')],
    changes: [{ label: 'Cap material', from: 'Gray cast iron', to: 'Steel' }],
    joint: {
      clamp: 172 * (margins.hold.likely / 1.32),
      preload: 86,
      friction: 31 * (margins.hold.likely / 1.32),
      registerCapacity: 41,
      crossCapacity: 0,
      loadFactor: 0.16,
      shareOfProof: 0.72,
      torque: { value: 95, unit: 'N m' },
    },
  }
}

function costItems() {
  const item = (
    id: string,
    label: string,
    kind: 'part' | 'work',
    likely: number,
    state: 'said' | 'assumed',
  ) => ({
    id,
    label,
    kind,
    state,
    ...spreadAbout(likely, 0.3),
    source: state === 'said' ? said : practice,
  })
  return [
    item('steel-caps', 'Set of steel caps', 'part', 380, 'assumed'),
    item('main-studs', 'Set of main studs', 'part', 240, 'said'),
    item('line-bore', 'Line bore', 'work', 450, 'assumed'),
    item('line-hone', 'Line hone', 'work', 250, 'assumed'),
  ]
}

function sampleCall(): Assessment['call'] {
  return {
    route: 'steel-caps',
    title: 'Steel caps on studs',
    sentence:
      'Fit steel main caps on studs, and have the block line bored and then line honed: that holds this plan in 95 of 100 sampled cases.',
    confidence: 'likely',
    settledBy: 'fastenerTorque',
    reasons: [
      finding('steel-caps-hold', 'Steel caps hold where the cast ones crack'),
      finding('studs-with-steel-caps', 'Steel caps on stock bolts only move the weak point'),
    ],
    mustDo: [
      'line-bore',
      'line-hone',
      'send-block-with-final-fasteners',
      'keep-caps-in-order',
      'studs-with-steel-caps',
      'measure-clearance',
      'detonation-caution',
    ],
    followOn: [
      followOn(
        'strip-down',
        'Strip the block bare',
        'Mark every cap with its number and its front before it comes off.',
      ),
      followOn(
        'send-block-with-final-fasteners',
        'Send the block that stays with its final fasteners',
        'The bores are cut with the clamp of the fasteners that will stay.',
      ),
      followOn(
        'line-bore',
        'Line bore',
        'The new caps are undersize; the boring bar makes one straight row of holes.',
      ),
      followOn(
        'line-hone',
        'Line hone',
        'The hone takes the last of the stock to the finished size.',
      ),
      followOn(
        'measure-clearance',
        'Measure the running clearance',
        'With the shells in and every fastener at its final torque.',
      ),
    ],
    insteadOf: [
      {
        route: 'keep-caps-add-studs',
        why: 'Holds in 62 of 100 sampled cases; 90 are needed for street and strip.',
      },
      { route: 'four-bolt-conversion', why: 'Holds too, for **830 USD** more.' },
    ],
  }
}

function followOn(id: string, title: string, text: string) {
  return { id, title, text, source: practice }
}

function sampleAssumptions(): Assessment['assumptions'] {
  return [
    {
      fact: 'capBoltSpan',
      label: 'Distance between the two main fasteners of a cap',
      text: '3.9 in (3.78 to 4.02 in)',
      because: 'Usual proportion of the main journal.',
      source: memory,
      calls: ['steel-caps'],
      matters: 'no',
      measure: 'Centre to centre with a calliper.',
    },
    {
      fact: 'fastenerTorque',
      label: 'Final torque of the main fasteners',
      text: '70 lb ft (60 to 80 lb ft)',
      because: 'Three quarters of proof load for the thread.',
      source: practice,
      calls: ['keep-caps-add-studs', 'steel-caps'],
      matters: 'alone',
      measure: 'The service manual.',
    },
  ]
}
