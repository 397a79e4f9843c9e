import { type Html, html } from './html.ts'
import { printIn, type Units } from './person-units.ts'
import { box, line, PICTURE_WIDTH, words } from './svg.ts'

/** What acts on one cap and what holds it, kN. */
export interface Ledger {
  pull: number
  clamp: number
  side: number
  friction: number
  register: number
  cross: number
  /** The force that fills the whole width. */
  most: number
}

const ROW = 31
const BAR = 10

/** Height of the two balances, px: four rows and room below. */
export const LEDGER_HEIGHT = 4 * ROW + 14

/** Two balances as bars of one scale: pull against clamp, side push against all that holds it. */
export function forceLedger(ledger: Ledger, top: number, units: Units): Html {
  const wide = (force: number): number => (force / ledger.most) * (PICTURE_WIDTH - 1)
  const force = (value: number): string => printIn(value, 'kN', units)
  const { pull, clamp, side, friction, register, cross } = ledger
  const held = [
    ['friction', friction] as const,
    ['register', register] as const,
    ['cross', cross] as const,
  ].filter(([name, value]) => name === 'friction' || value > 0)
  // One unit at the end keeps the line inside the picture.
  const against = held.map(([name, value], index) => {
    const text = force(value)
    return `${name} ${index === held.length - 1 ? text : text.split('\u00a0')[0]}`
  })
  const rows = [
    { text: `pull ${force(pull)}, held by`, bars: [{ size: pull, look: 'force-fill' }] },
    { text: `clamp ${force(clamp)}`, bars: [{ size: clamp, look: 'clamp-bar' }] },
    { text: `side push ${force(side)}, held by`, bars: [{ size: side, look: 'force-fill' }] },
    {
      text: against.join(' + '),
      bars: [
        { size: friction, look: 'clamp-bar' },
        { size: register, look: 'register-bar' },
        { size: cross, look: 'cross-bar' },
      ],
    },
  ]
  return html`${rows.map((row, index) => {
    const y = top + index * ROW + (index > 1 ? 10 : 0)
    let x = 0.5
    return html`${words(0, y, row.text, 'small')}${row.bars.map(({ size, look }) => {
      const left = x
      x += wide(size)
      return size > 0 ? box(left, y + 5, wide(size), BAR, look) : ''
    })}${line(0.5, y + 3, 0.5, y + 17, 'ink')}`
  })}`
}
