import type { WorksheetOutcome } from '../worksheets/input.ts'
import type { Worksheet } from '../worksheets/worksheet.ts'
import type { Content } from './markdown.ts'
import type { UnitSystem } from './page-href.ts'

/** What the page of a worksheet draws. */
export interface WorksheetView {
  readonly sheet: Worksheet
  /** Inputs as they stand in the form. */
  readonly raw: Readonly<Record<string, unknown>>
  readonly origin: 'given' | 'build' | 'example'
  readonly outcome: WorksheetOutcome
  readonly units: UnitSystem
  /** The case as a query string, without the worksheet's own inputs. */
  readonly link: string
  readonly hasCase: boolean
  readonly content: Content
}
