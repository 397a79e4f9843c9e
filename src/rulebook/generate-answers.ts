import { type Answer, type Answers, choicesOf, UNKNOWN } from '../../shared/answers.ts'
import { FACT_KEYS, type Fact, type FactKey, fact, isQuantity } from '../../shared/fact-keys.ts'
import { randomStream } from '../mechanics/seeded-random.ts'

/**
 * How likely a builder is to have said a fact, and between which figures it mostly
 * lies, in the fact's usual unit. Facts that are not here are said one time in ten,
 * between the ends that their assumption gives.
 */
interface Habit {
  readonly said: number
  readonly from?: number
  readonly to?: number
}

const HABITS: Partial<Record<FactKey, Habit>> = {
  layout: { said: 0.9 },
  bore: { said: 0.7, from: 3, to: 4.6 },
  stroke: { said: 0.6, from: 2.9, to: 4.3 },
  displacement: { said: 0.2, from: 120, to: 480 },
  rodLength: { said: 0.15, from: 5, to: 6.8 },
  reciprocatingMass: { said: 0.15, from: 350, to: 900 },
  bigEndMass: { said: 0.1, from: 300, to: 700 },
  mainJournalDiameter: { said: 0.3, from: 2, to: 3 },
  mainBearingWidth: { said: 0.1, from: 0.6, to: 1.1 },
  blockMaterial: { said: 0.7 },
  skirt: { said: 0.2 },
  capFastening: { said: 0.9 },
  capMaterial: { said: 0.6 },
  capHistory: { said: 0.5 },
  capOrigin: { said: 0.4 },
  capBoltSpan: { said: 0.2, from: 2.3, to: 4.6 },
  capHeight: { said: 0.2, from: 1.2, to: 2.9 },
  capWidth: { said: 0.1, from: 0.7, to: 1.2 },
  registerHeight: { said: 0.1, from: 0, to: 0.3 },
  registerFit: { said: 0.3 },
  fastenerKind: { said: 0.6 },
  fastenerThread: { said: 0.5 },
  fastenerGrade: { said: 0.3 },
  fastenerTorque: { said: 0.4, from: 50, to: 130 },
  fastenerLubricant: { said: 0.4 },
  tightening: { said: 0.3 },
  induction: { said: 0.95 },
  boost: { said: 0.9, from: 0, to: 34 },
  peakCylinderPressure: { said: 0.03, from: 700, to: 2600 },
  nitrousPower: { said: 0.9, from: 50, to: 400 },
  targetPower: { said: 0.15, from: 150, to: 1200 },
  chargeCooling: { said: 0.7 },
  fuel: { said: 0.8 },
  compressionRatio: { said: 0.85, from: 8, to: 15 },
  peakRpm: { said: 0.85, from: 4800, to: 9500 },
  torquePeakRpm: { said: 0.2, from: 2500, to: 6500 },
  use: { said: 0.9 },
  websAllowFourBolt: { said: 0.3 },
  invested: { said: 0.6, from: 1500, to: 30_000 },
  budget: { said: 0.25, from: 0, to: 4000 },
  lineBorePrice: { said: 0.1, from: 600, to: 1400 },
  lineHonePrice: { said: 0.1, from: 150, to: 500 },
  capsPrice: { said: 0.15, from: 200, to: 900 },
  studsPrice: { said: 0.1, from: 60, to: 250 },
  shippingPrice: { said: 0.3, from: 100, to: 900 },
  taxRate: { said: 0.1, from: 0, to: 25 },
  shopLineBores: { said: 0.4 },
}

const THREADS = ['7/16-14', '1/2-13', '1/2-20', '9/16-12', 'M10x1.5', 'M11x1.25', 'M12x1.75']

/** One build in so many has a figure from anywhere in the dictionary's range, as a slip would. */
const SLIP = 0.02
/** Boost or nitrous said although the induction has none: one time in so many. */
const STRAY = 0.04

/**
 * Random but plausible answers, the same for the same seed: what builders say, with
 * many facts left open, a few "I don't know", and now and then a slip.
 *
 * @param seed - any whole number from 0 to 2³² − 1
 */
export function generateAnswers(seed: number): Answers {
  const random = randomStream(seed)
  const answers: { [key in FactKey]?: Answer } = {}
  for (const key of FACT_KEYS) {
    // Every fact draws the same number of times, so that one more fact shifts no other.
    const [chance, slip, place, extra] = [
      random.fraction(),
      random.fraction(),
      random.fraction(),
      random.fraction(),
    ]
    const habit = HABITS[key] ?? { said: 0.1 }
    if (!answersTo(key, answers, extra) || chance > habit.said) continue
    answers[key] = chance < 0.01 ? UNKNOWN : drawn(fact(key), habit, slip, place)
  }
  return answers
}

function answersTo(key: FactKey, answers: Answers, extra: number): boolean {
  const boosted = answers.induction === 'turbocharged' || answers.induction === 'supercharged'
  if (key === 'boost' || key === 'chargeCooling') return boosted || extra < STRAY
  if (key === 'nitrousPower') return answers.induction === 'nitrous' || extra < STRAY
  return true
}

function drawn(entry: Fact, habit: Habit, slip: number, place: number): Answer {
  if (entry.kind === 'thread') return pick(THREADS, place)
  if (entry.kind === 'choice') return pick(Object.keys(choicesOf(entry)), place)
  const wide = slip < SLIP && entry.kind !== 'money'
  const from = wide ? entry.low : (habit.from ?? entry.low)
  const to = wide ? entry.high : (habit.to ?? entry.high)
  const value = Number((from + (to - from) * place).toPrecision(4))
  if (entry.kind === 'money') return { value, currency: 'USD' }
  return isQuantity(entry) ? { value, unit: entry.units[0] as string } : value
}

function pick<T>(from: readonly T[], place: number): T {
  return from[Math.min(from.length - 1, Math.floor(place * from.length))] as T
}

/** The stream of seeds of one sweep of builds. */
export function buildSeeds(count: number, start = 1): number[] {
  return Array.from({ length: count }, (_, index) => start + index)
}
