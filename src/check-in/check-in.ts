import type { HousingBore } from '../mechanics/housing-bores.ts'
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
import { type GoesBack, goesBack, isSizeOpen } from './goes-back.ts'
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
  readonly missing: readonly string[]
}

/** What concerns the whole engine: alignment, axis, timing, deck, gearbox, thrust. */
export interface WholeReport {
  readonly id: string
  readonly title: string
  readonly judged: readonly Judged[]
  readonly worked: readonly Worked[]
}

/** The whole check-in: the verdict, each main, what concerns the row, and what is asked. */
export interface CheckInReport {
  readonly overall: {
    readonly verdict: Verdict | null
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
  readonly wrong: readonly {
    readonly field: string
    readonly label: string
    readonly text: string
  }[]
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
  const questioned = suspects(measured, rules, expectedOf(engine), units)
  const asked = questioned.filter(({ confirmed }) => !confirmed)
  const doubted = new Set(asked.flatMap(({ fields }) => fields))
  const readings = readingsOf(measured, doubted)
  const measuring: MeasureCase = { engine, rules, readings, units, use: engine.use }
  const notes: string[] = []
  const housings = places(engine).map((main) => housingCheck(measuring, main, notes))
  const bores = housings.map((check) => check?.bore)
  const line = alignmentCheck(measuring, bores, notes)
  const found = places(engine).map((main) =>
    figuresOfMain(measuring, main, housings[main - 1], notes),
  )
  const odd = oddMains(measuring, found, asked)
  const mains = found.map((one, place) => mainReport(place + 1, one, { odd, line, asked }))
  const whole = wholeReports(measuring, bores, line, notes)
  return {
    overall: overallVerdict(mains, whole, asked, odd),
    mains,
    whole,
    suspects: asked,
    kept: questioned.filter(({ confirmed }) => confirmed),
    odd,
    wrong: readings.wrong.map(({ field, text }) => ({ field, label: fieldLabel(field), text })),
    notes,
    offAxis: line?.offAxis ?? [],
  }
}

/** Roughly where each group of readings lies, m. */
function expectedOf({ aboutHousing, journal }: EngineCase): Record<string, number | undefined> {
  // Wall thickness differs far more from engine to engine than a unit's slip could hide.
  return { housing: aboutHousing, journal, shell: undefined }
}

/** One main with all that was found of it, and of it beside the others. */
function mainReport(
  main: number,
  { judged, worked, missing }: Pick<MainReport, 'judged' | 'worked' | 'missing'>,
  beside: {
    readonly odd: readonly OddMain[]
    readonly line: AlignmentCheck | undefined
    readonly asked: readonly Suspect[]
  },
): MainReport {
  const own = beside.odd.filter((one) => one.main === main)
  const all = [
    ...own.map((one) => one.judged),
    ...heldBack(judged, own),
    ...(beside.line?.byMain.get(main) ?? []),
  ]
  return {
    main,
    worked,
    missing,
    goesBack: goesBack(all),
    sizeOpen: isSizeOpen(all),
    ...mainVerdict(main, all, beside.asked, missing),
  }
}

function places({ mains }: EngineCase): number[] {
  return Array.from({ length: mains }, (_, place) => place + 1)
}

function figuresOfMain(
  measuring: MeasureCase,
  main: number,
  housing: ReturnType<typeof housingCheck>,
  notes: string[],
): Pick<MainReport, 'judged' | 'worked' | 'missing'> & MainSizes {
  const journal = journalCheck(measuring, main)
  const running = housing
    ? clearanceCheck(measuring, main, housing.bore, journal?.mean, notes)
    : undefined
  const clearance = running?.judged.find(({ id }) => id === 'clearance')?.value
  return {
    housing: housing?.bore.mean,
    journal: journal?.mean,
    clearance,
    judged: [...(housing?.judged ?? []), ...(running?.judged ?? []), ...(journal?.judged ?? [])],
    worked: [...(housing?.worked ?? []), ...(running?.worked ?? [])],
    missing: [
      ...(housing ? [] : ['housing bore']),
      ...(journal ? [] : ['journal']),
      ...(clearance === undefined ? ['clearance'] : []),
    ],
  }
}

function wholeReports(
  measuring: MeasureCase,
  bores: readonly (HousingBore | undefined)[],
  line: AlignmentCheck | undefined,
  notes: string[],
): WholeReport[] {
  const shifts = shiftCheck(measuring, bores, notes)
  const part = (
    id: string,
    title: string,
    found: { judged: readonly Judged[]; worked?: readonly Worked[] } | undefined,
  ): WholeReport[] =>
    found ? [{ id, title, judged: found.judged, worked: found.worked ?? [] }] : []
  return [
    ...part('alignment', 'Alignment of the mains', line && { ...line, judged: line.whole }),
    ...part('axis', 'Crank axis', shifts),
    ...part('timing', 'Camshaft drive', shifts && timingCheck(measuring, shifts.front, notes)),
    ...part('deck', 'Deck height and compression', shifts && deckCheck(measuring, shifts, notes)),
    ...part('gearbox', 'Gearbox alignment', gearboxCheck(measuring, shifts, notes)),
    ...part('thrust', 'Thrust', thrustCheck(measuring)),
  ]
}
