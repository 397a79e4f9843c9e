import type { Source, WorkingStep } from '../../shared/assessment.ts'
import { printFixed } from '../../shared/print.ts'
import { fromSi } from '../../shared/units.ts'
import { type Build, choiceOf, figureOf, isByTorque, siOf } from '../build/build.ts'
import { most } from '../facts/build-facts.ts'
import { figureText, type UnitSystem } from '../facts/live-facts.ts'
import type { RouteTrial } from '../facts/route-facts.ts'
import type { Trials } from '../facts/trials.ts'
import { STANDARD_PRESSURE } from '../mechanics/atmosphere.ts'
import { breakEvenChance } from '../mechanics/stake.ts'

const SHIGLEY = 'Budynas & Nisbett, Shigley’s Mechanical Engineering Design, 9th ed.'
const STATICS: Source = { kind: 'computed', cite: 'statics and definitions' }

/** What a step's numbers are printed with. */
interface Printer {
  readonly force: (newtons: number) => string
  readonly length: (metres: number) => string
  readonly plain: (value: number, decimals?: number) => string
  readonly text: (value: number, unit: string) => string
}

/**
 * The working of one route in its likely case: each equation in words, with this
 * build's numbers in it, and where it comes from.
 *
 * @param trials - the build as it stands
 * @param trial - the route that is called
 */
export function workingOf(trials: Trials, trial: RouteTrial, system: UnitSystem): WorkingStep[] {
  const print = printer(system)
  return [
    ...loadSteps(trials, print),
    ...clampSteps(trial, print),
    ...marginSteps(trials, trial, print),
    ...moneySteps(trials, trial, print),
  ]
}

function printer(system: UnitSystem): Printer {
  return {
    force: (newtons) => figureText(newtons / 1000, 'kN', system),
    length: (metres) => lengthText(metres, system),
    plain: (value, decimals = 2) => printFixed(value, decimals),
    text: (value, unit) => figureText(value, unit, system),
  }
}

/** A length with the digits that a person gives it, so that the step can be worked again. */
function lengthText(metres: number, system: UnitSystem): string {
  const [unit, decimals] = system === 'us' ? (['in', 3] as const) : (['mm', 2] as const)
  return figureText(fromSi(metres, unit), unit, system, decimals)
}

function step(
  title: string,
  formula: string,
  withNumbers: string,
  result: string,
  source: Source,
): WorkingStep {
  return { title, formula, withNumbers, result, source }
}

function loadSteps({ build, loads }: Trials, print: Printer): WorkingStep[] {
  const cylinders = loads.layout.cylinders.length
  const swept = (Math.PI / 4) * siOf(build, 'bore') ** 2 * siOf(build, 'stroke') * cylinders
  const hardest = most(loads.fullLoads, (load) => load.cycle.peakPressure)
  const area = (Math.PI / 4) * siOf(build, 'bore') ** 2
  const peak = print.text(hardest.cycle.peakPressure / 1e5, 'bar')
  const { worstPull, worstSide } = loads.sweep
  return [
    step(
      'Displacement',
      'π/4 × bore² × stroke × cylinders',
      `π/4 × (${print.length(siOf(build, 'bore'))})² × ${print.length(siOf(build, 'stroke'))} × ${cylinders}`,
      print.text(fromSi(swept, 'cu in'), 'cu in'),
      STATICS,
    ),
    step(
      'Gas force on a piston at its peak',
      '(peak pressure − crankcase pressure) × π/4 × bore²',
      `(${peak} − ${print.text(1.01325, 'bar')}) × π/4 × (${print.length(siOf(build, 'bore'))})²`,
      print.force((hardest.cycle.peakPressure - STANDARD_PRESSURE) * area),
      { kind: 'computed', cite: 'pressure from the one-zone gas cycle; see the method' },
    ),
    inertiaStep(build, print),
    step(
      'Pull and side push on a cap',
      'each throw’s load half on each main beside it; of the main’s load the part below the parting face, spread as a cosine',
      `main ${worstPull.main + 1} and main ${worstSide.main + 1}, all angles, ${loads.speeds.length} speeds and cases`,
      `pull ${print.force(worstPull.force)}, side push ${print.force(worstSide.force)}`,
      {
        kind: 'published',
        cite: 'Khurmi & Gupta, A Textbook of Machine Design, ch. 32 (shares of the mains)',
      },
    ),
  ]
}

function inertiaStep(build: Build, print: Printer): WorkingStep {
  const mass = siOf(build, 'reciprocatingMass')
  const radius = siOf(build, 'stroke') / 2
  const ratio = radius / siOf(build, 'rodLength')
  const speed = siOf(build, 'peakRpm')
  const force = mass * radius * speed ** 2 * (1 + ratio)
  return step(
    'Inertia force of one piston at top dead centre, highest speed',
    'm × r × ω² × (1 + r/l)',
    `${print.plain(mass, 3)} kg × ${print.length(radius)} × (${print.plain(speed, 0)} rad/s)² × (1 + ${print.plain(ratio, 3)})`,
    print.force(force),
    { kind: 'memory', cite: 'Khurmi & Gupta, Theory of Machines, ch. 15 (slider-crank)' },
  )
}

/** Of its torque, or of its share of proof load where an angle or a stretch sets it. */
function preloadStep(model: RouteTrial['model'], build: Build, print: Printer): WorkingStep {
  const share = `${print.plain(model.shareOfProof * 100, 0)}% of proof load`
  const thread = choiceOf(build, 'fastenerThread')
  if (!isByTorque(build)) {
    return step(
      'Preload of one fastener, turned or stretched',
      'share × proof load',
      `${share} of ${thread}`,
      print.force(model.preload),
      { kind: 'published', cite: `${SHIGLEY}, eq. 8–31` },
    )
  }
  const torque = print.text(fromSi(model.torque, 'lb ft'), 'lb ft')
  return step(
    'Preload of one fastener',
    'torque / (K × d)',
    `${torque} / (${print.plain(model.nutFactor)} × d of ${thread})`,
    `${print.force(model.preload)}, ${share}`,
    { kind: 'published', cite: `${SHIGLEY}, section 8–8, Table 8–15` },
  )
}

function clampSteps({ model, result, build }: RouteTrial, print: Printer): WorkingStep[] {
  return [
    preloadStep(model, build, print),
    step(
      'Clamp of the cap',
      'sum of the preloads along the upright, less what settling takes',
      `${model.groups.length === 1 ? 'one pair' : 'inner and outer pair'} of fasteners`,
      print.force(result.clamp),
      { kind: 'memory', cite: 'VDI 2230, preload loss through embedding' },
    ),
    step(
      'Share of a pull that the fasteners feel',
      'C = k of fasteners / (k of fasteners + k of members)',
      'pressure cones in the cap and the block',
      print.plain(model.loadFactor),
      { kind: 'published', cite: `${SHIGLEY}, sections 8–4 and 8–5, eq. 8–20` },
    ),
  ]
}

function marginSteps(trials: Trials, trial: RouteTrial, print: Printer): WorkingStep[] {
  const { result, needed } = trial
  return [
    ...slipSteps(trial, print),
    ...pullSteps(trials, trial, print),
    step(
      'Cases that hold',
      'sampled cases with every counted margin at its limit or above, of 100',
      `needed ${needed}`,
      String(result.holdsIn),
      { kind: 'computed', cite: 'seeded low-discrepancy sample; it says how sure the estimate is' },
    ),
  ]
}

/** Against side push: with all that holds the cap, and by friction alone. */
function slipSteps({ model, result }: RouteTrial, print: Printer): WorkingStep[] {
  const { pull, side } = result.worst
  const left = (1 - model.loadFactor) * model.loadLeft
  const held = result.registerCapacity + model.crossCapacity
  return [
    step(
      'Hold margin, at the instant where it is least',
      '(μ × (clamp − (1 − C) × pull) + register + cross bolts) / side push',
      `(${print.plain(result.faceFriction)} × (${print.force(result.clamp)} − ${print.plain(left)} × ${print.force(pull)}) + ${print.force(held)}) / ${print.force(side * model.loadLeft)}`,
      print.plain(result.margins().hold.likely),
      STATICS,
    ),
    step(
      'Grip margin',
      'friction alone / side push',
      'as above without register and cross bolts',
      print.plain(result.margins().grip.likely),
      STATICS,
    ),
  ]
}

/** Against pull: the joint, the cap, the fasteners and their threads. */
function pullSteps(
  { loads }: Trials,
  { model, result }: RouteTrial,
  print: Printer,
): WorkingStep[] {
  const left = (1 - model.loadFactor) * model.loadLeft
  const margins = result.margins()
  const likely = (id: keyof typeof margins): string => print.plain(margins[id].likely)
  const worstPull = loads.sweep.worstPull.force
  return [
    step(
      'Separation margin',
      'clamp / (1 − C) / greatest pull',
      `${print.force(result.clamp)} / ${print.plain(left)} / ${print.force(worstPull)}`,
      likely('separation'),
      { kind: 'published', cite: `${SHIGLEY}, section 8–9 (factor against separation)` },
    ),
    step(
      'Cap fatigue margin',
      'pull that the crown endures for ever / greatest pull it sees',
      `${print.force(model.endurablePull)} / ${print.force(worstPull * model.loadLeft)}`,
      likely('capFatigue'),
      {
        kind: 'published',
        cite: `${SHIGLEY}, sections 3–18 (curved beam) and 6–12 (modified Goodman)`,
      },
    ),
    step(
      'Fastener proof margin and thread strip margin',
      'proof load, or stripping load of the block’s thread / (preload + C × pull share)',
      model.groups
        .map(
          (group) =>
            `${print.force(group.proofLoad)} and ${print.force(group.strippingLoad)} against ${print.force(group.preload)} + ${print.plain(group.loadPerPull, 3)} × ${print.force(worstPull)}`,
        )
        .join('; '),
      `${likely('fastenerProof')} and ${likely('threadStrip')}`,
      { kind: 'published', cite: `${SHIGLEY}, section 8–9; FED-STD-H28/2` },
    ),
  ]
}

function moneySteps({ build }: Trials, trial: RouteTrial, print: Printer): WorkingStep[] {
  const stake = figureOf(build, 'invested')
  if (trial.likelyCost <= 0 || stake <= 0) return []
  const chance = 100 * Math.min(1, breakEvenChance(trial.likelyCost, stake))
  return [
    step(
      'Chance of loss at which the route pays for itself',
      'likely cost / money at stake',
      `${print.plain(trial.likelyCost, 0)} / ${print.plain(stake, 0)} ${build.currency}`,
      `${print.plain(chance, 1)}%`,
      { kind: 'published', cite: 'cost-loss rule of decision theory' },
    ),
  ]
}
