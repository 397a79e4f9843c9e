/**
 * The n-th smallest of some values, by Hoare's selection: a sort would put all in order.
 *
 * @param values - finite numbers; put partly in order, those up to n none above those after
 * @param n - 0 for the least, to length − 1
 * @param from - values before this place are known to be none above those from it on; default 0
 * @see C. A. R. Hoare, "Algorithm 65: Find", Communications of the ACM 4 (1961) 321–322
 */
export function nthSmallest(values: Float64Array, n: number, from = 0): number {
  let [low, high] = [from, values.length - 1]
  while (low < high) {
    const pivot = values[(low + high) >> 1]!
    let left = low
    let right = high
    while (left <= right) {
      while (values[left]! < pivot) left++
      while (values[right]! > pivot) right--
      if (left > right) break
      const moved = values[left]!
      values[left++] = values[right]!
      values[right--] = moved
    }
    if (n <= right) high = right
    else if (n >= left) low = left
    else break
  }
  return values[n]!
}
