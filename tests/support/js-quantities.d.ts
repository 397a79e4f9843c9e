/** The little of js-quantities that tests use; the package has no types of its own. */
declare module 'js-quantities' {
  interface Quantity {
    readonly scalar: number
    to(unit: string): Quantity
  }
  export default function Qty(value: number, unit: string): Quantity
}
