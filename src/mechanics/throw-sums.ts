import type { ForceArrays } from './main-loads-workspace.ts'

/** Add a cylinder's force, of which each so many-th degree counts, to that of its throw. */
export function addWindow(
  x: Float64Array,
  y: Float64Array,
  window: ForceArrays,
  every: number,
): void {
  const { x: moreX, y: moreY } = window
  for (let index = 0, degree = 0; index < x.length; index++, degree += every) {
    x[index] = x[index]! + moreX[degree]!
    y[index] = y[index]! + moreY[degree]!
  }
}

/** Hand each throw's load to the mains beside it. */
export function shareOut(throws: Float64Array[], mains: Float64Array[], front: number): void {
  const rear = 1 - front
  const last = throws.length
  const length = throws[0]!.length
  for (let main = 0; main <= last; main++) {
    const into = mains[main]!
    const before = throws[main - 1]
    const after = throws[main]
    if (before && after) {
      for (let index = 0; index < length; index++) {
        into[index] = rear * before[index]! + front * after[index]!
      }
    } else {
      const only = (after ?? before)!
      const part = after ? front : rear
      for (let index = 0; index < length; index++) into[index] = part * only[index]!
    }
  }
}
