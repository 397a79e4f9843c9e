import type { HousingBore } from '../mechanics/housing-bores.ts'
import type { MainMeasure } from '../shop-sheet/check-in-rules.ts'
import type { EngineCase } from '../shop-sheet/engine-case.ts'
import { fieldLabel } from '../shop-sheet/field-labels.ts'
import type { Measured } from '../shop-sheet/link-code.ts'
import { readingsOf } from '../shop-sheet/readings.ts'
import type { ShopRules } from '../shop-sheet/shop-rules.ts'
import type { Units } from '../shop-sheet/workshop-figures.ts'
import { type AlignmentCheck, alignmentCheck } from './alignment.ts'
import { shiftCheck } from './axis-shift.ts'
import { clearanceCheck } from './clearances.ts'
import { deckCheck, gearboxCheck, thrustCheck } from './deck-and-gearbox.ts'
import { type GoesBack, goesBack, isSizeOpen, verdictName } from './goes-back.ts'
import { housingCheck } from './housings.ts'
import { journalCheck } from './journals.ts'
import type { Judged, Verdict } from './judge.ts'
import type { MeasureCase, Worked } from './measure-case.ts'
import { heldBack, type MainSizes, type OddMain, oddMains } from './odd-mains.ts'
import { type Suspect, suspects } from './suspects.ts'
import { timingCheck } from './timing.ts'
import { mainVerdict, overallVerdict } from './verdicts.ts'

/** One main: its verdict, why, and every figure behind it. */
export interface MainReport {
  readonly main: number
  readonly verdict: Verdict | null
  /** The verdict in words, and where there is little room. */
  readonly words: string
  readonly short: string
  /** What has to be sent back for it; nothing unless that is the verdict. */
  readonly goesBack: GoesBack
  /** Whether a size was measured and no limit of it is known. */
  readonly sizeOpen: boolean
  /** Every measure that decides it, in a sentence each; empty when nothing was measured. */
  readonly reasons: readonly string[]
  /** What to do about them. */
  readonly advice: readonly string[]
  readonly judged: readonly Judged[]
  readonly worked: readonly Worked[]
  /** What was not measured. */
  readonly missing: readonly MainMeasure[]
}

/** What concerns the whole engine: alignment, axis, timing, deck, gearbox, thrust. */
export interface WholeReport {
  readonly id: string
  readonly title: string
  readonly judged: readonly Judged[]
  readonly worked: readonly Worked[]
}

/** An entry that could not be read, and why. */
export interface Unread {
  readonly field: string
  readonly label: string
  readonly text: string
}

/** The whole check-in: the verdict, each main, what concerns the row, and what is asked. */
export interface CheckInReport {
  readonly overall: {
    readonly verdict: Verdict | null
    readonly words: string
    readonly title: string
    readonly reasons: readonly string[]
    readonly advice: readonly string[]
    /** Whether every main's housing was measured. */
    readonly complete: boolean
  }
  readonly mains: readonly MainReport[]
  readonly whole: readonly WholeReport[]
  /** Readings in question, left out until they are confirmed or put right. */
  readonly suspects: readonly Suspect[]
  /** Readings that were asked about, and measured again and found so. */
  readonly kept: readonly Suspect[]
  /** Mains that stand apart from their fellows, confirmed or to be measured again. */
  readonly odd: readonly OddMain[]
  readonly wrong: readonly Unread[]
  readonly notes: readonly string[]
  /** Distance of each main from the best straight axis, m; empty until aligned. */
  readonly offAxis: readonly number[]
}

/**
 * Judge a block that came back: readings → slips questioned → sizes and shapes → each against its
 * limit → a verdict for each main and for the whole.
 */
export function checkIn(
  measured: Measured,
  engine: EngineCase,
  rules: ShopRules,
  units: Units,
): CheckInReport {
  const expected = { housing: engine.aboutHousing, journal: engine.journal }
  const questioned = suspects(measured, rules, expected, units)
  const asked = questioned.filter(({ confirmed }) => !confirmed)
  const doubted = new Set(asked.flatMap(({ fields }) => fields))
  const readings = readingsOf(measured, doubted)
  const notes: string[] = []
  const measuring: MeasureCase = { engine, rules, readings, units, use: engine.use, notes }
  const housings = places(engine).map((main) => housingCheck(measuring, main))
  const bores = housings.map((check) => check?.bore)
  const line = alignmentCheck(measuring, bores)
  const found = places(engine).map((main) => figuresOfMain(measuring, main, housings[main - 1]))
  const odd = oddMains(measuring, found, asked)
  const wrong = readings.wrong.map((one) => ({ ...one, label: fieldLabel(one.field) }))
  const beside = { odd, line, asked, wrong, rules }
  const mains = found.map((one, place) => mainReport(place + 1, one, beside))
  const whole = wholeReports(measuring, bores, line)
  return {
    overall: overallVerdict(mains, whole, { asked, odd, wrong, notes }, rules.checkIn),
    mains,
    whole,
    suspects: asked,
    kept: questioned.filter(({ confirmed }) => confirmed),
    odd,
    wrong,
    notes,
    offAxis: line?.offAxis ?? [],
  }
}

/** One main with all that was found of it, and of it beside the others. */
function mainReport(
  main: number,
  { judged, worked, missing }: Pick<MainReport, 'judged' | 'worked' | 'missing'>,
  beside: {
    readonly odd: readonly OddMain[]
    readonly line: AlignmentCheck | undefined
    readonly asked: readonly Suspect[]
    readonly wrong: readonly Unread[]
    readonly rules: ShopRules
  },
): MainReport {
  const { checkIn } = beside.rules
  const own = beside.odd.filter((one) => one.main === main)
  const all = [
    ...own.map((one) => one.judged),
    ...heldBack(judged, own, beside.rules),
    ...(beside.line?.byMain.get(main) ?? []),
  ]
  const { asked, wrong } = beside
  const found = mainVerdict(main, all, { asked, wrong, missing }, checkIn)
  const rests = { verdict: found.verdict, goesBack: goesBack(all), sizeOpen: isSizeOpen(all) }
  return { main, worked, missing, ...found, ...rests, ...verdictName(checkIn.verdicts, rests) }
}

function places({ mains }: EngineCase): number[] {
  return Array.from({ length: mains }, (_, place) => place + 1)
}

function figuresOfMain(
  measuring: MeasureCase,
  main: number,
  housing: ReturnType<typeof housingCheck>,
): Pick<MainReport, 'judged' | 'worked' | 'missing'> & MainSizes {
  const journal = journalCheck(measuring, main)
  const running = housing ? clearanceCheck(measuring, main, housing.bore, journal?.mean) : undefined
  const clearance = running?.judged.find(({ id }) => id === 'clearance')?.value
  return {
    housing: housing?.bore.mean,
    journal: journal?.mean,
    clearance,
    judged: [...(housing?.judged ?? []), ...(running?.judged ?? []), ...(journal?.judged ?? [])],
    worked: [...(housing?.worked ?? []), ...(running?.worked ?? [])],
    missing: [
      ...(housing ? [] : (['housing'] as const)),
      ...(journal ? [] : (['journal'] as const)),
      ...(clearance === undefined ? (['clearance'] as const) : []),
    ],
  }
}

function wholeReports(
  measuring: MeasureCase,
  bores: readonly (HousingBore | undefined)[],
  line: AlignmentCheck | undefined,
): WholeReport[] {
  const shifts = shiftCheck(measuring, bores)
  const titles = measuring.rules.checkIn.whole
  const part = (
    id: keyof ShopRules['checkIn']['whole'],
    found: { judged: readonly Judged[]; worked?: readonly Worked[] } | undefined,
  ): WholeReport[] =>
    found ? [{ id, title: titles[id], judged: found.judged, worked: found.worked ?? [] }] : []
  return [
    ...part('alignment', line && { ...line, judged: line.whole }),
    ...part('axis', shifts),
    ...part('timing', shifts && timingCheck(measuring, shifts.front)),
    ...part('deck', shifts && deckCheck(measuring, shifts)),
    ...part('gearbox', gearboxCheck(measuring, shifts)),
    ...part('thrust', thrustCheck(measuring)),
  ]
}
