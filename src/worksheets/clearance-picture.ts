import type { Clearance } from '../mechanics/clearance.ts'
import type { FitPicture } from './picture.ts'
import type { Print } from './print.ts'

/** The journal in its shells, cold and warm. */
export function clearancePicture(
  cold: Clearance,
  warm: Clearance | undefined,
  print: Print,
): FitPicture {
  const fine = (one: number): string => print.figure(one, 'fine')
  const words = ({ vertical, horizontal }: Clearance): string =>
    `${fine(vertical)} up and down, ${fine(horizontal)} side to side`
  const rows = [['As measured', fine(cold.vertical), fine(cold.horizontal)]]
  if (warm) rows.push(['Warm', fine(warm.vertical), fine(warm.horizontal)])
  return {
    kind: 'fit',
    title: 'The journal in its shells',
    text: `As measured: ${words(cold)}.${warm ? ` Warm: ${words(warm)}.` : ''}`,
    caption: `Blue: the shells as measured.${warm ? ' Red, dashed: warm.' : ''} The clearance is magnified, the journal is not; it stands in the middle, which an oil film never lets it.`,
    cold,
    ...(warm ? { warm } : {}),
    labels: [
      `as measured ${fine(cold.vertical)}`,
      ...(warm ? [`warm ${fine(warm.vertical)}`] : []),
    ],
    table: { caption: 'Clearance', head: ['When', 'Up and down', 'Side to side'], rows },
  }
}
