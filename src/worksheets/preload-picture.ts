import type { BarsPicture } from './picture.ts'
import type { PreloadSpread, Tightened } from './preload-tighten.ts'
import type { Print } from './print.ts'

/** The preload and its scatter beside what the fastener bears. */
export function preloadPicture(
  { preload: force }: Tightened,
  spread: PreloadSpread | undefined,
  proofForce: number | undefined,
  atYield: number | undefined,
  print: Print,
): BarsPicture {
  const [value, low, high] = print.values(
    [force, spread?.low ?? force, spread?.high ?? force],
    'force',
  ) as [number, number, number]
  const lines = [
    ['proof load', proofForce],
    ['yield with twist', atYield],
  ].filter((line): line is [string, number] => line[1] !== undefined)
  const range = spread
    ? `, ${print.figure(spread.low, 'force')} to ${print.figure(spread.high, 'force')}`
    : ''
  const ends = spread ? [['Least', spread.low] as const, ['Greatest', spread.high] as const] : []
  const told = lines.map(([label, one]) => `${label} ${print.figure(one, 'force')}`)
  return {
    kind: 'bars',
    title: 'Preload beside what the fastener bears',
    text: `Preload ${print.figure(force, 'force')}${range}${told.map((one) => `; ${one}`).join('')}.`,
    caption: 'The bar is the preload, the whisker its scatter, the lines what the fastener bears.',
    bars: [{ label: 'preload', value, text: print.figure(force, 'force'), low, high }],
    marks: lines.map(([label, one]) => ({ label, value: print.values([one], 'force')[0] ?? 0 })),
    table: {
      caption: 'Preload and limits',
      head: ['What', 'Force'],
      rows: [['Preload', force] as const, ...ends, ...lines].map(([label, one]) => [
        label,
        print.figure(one, 'force'),
      ]),
    },
  }
}
