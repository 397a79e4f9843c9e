import type { Margins, Spread } from '../../shared/assessment.ts'
import { MARGIN_IDS, type MarginId } from '../../shared/route-ids.ts'
import { MARGIN_WORDS } from './margin-bars.ts'

/** The margin with the least likely value; grip is left out, because hold has friction in it. */
export function weakestMargin(margins: Margins): { id: MarginId; name: string; spread: Spread } {
  const ids = MARGIN_IDS.filter((id) => id !== 'grip')
  const id = ids.reduce((least, one) => (margins[one].likely < margins[least].likely ? one : least))
  return { id, name: MARGIN_WORDS[id].name, spread: margins[id] }
}
