import { assessOperation } from './assess-operation.ts'
import { factsOperation, routesOperation } from './catalogue.ts'
import { compareOperation } from './compare-operation.ts'
import { forumOperation } from './forum-operation.ts'
import type { Operation } from './operation.ts'
import { turnOperation } from './turn-operation.ts'
import { understandOperation } from './understand.ts'
import { worksheetOperations } from './worksheets.ts'

/** Everything that the API does, in the order of the description. One line here adds one. */
export const OPERATIONS: readonly Operation[] = [
  assessOperation,
  understandOperation,
  turnOperation,
  compareOperation,
  forumOperation,
  factsOperation,
  routesOperation,
  ...worksheetOperations,
]
