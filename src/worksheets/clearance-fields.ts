import { GROWTH_WORDS } from './bore-machining-fields.ts'
import { choice, optional, pure, quantity, type Values } from './fields.ts'

const at = (label: string, help = '') => quantity('length', label, help)
const fine = (label: string, help = '') => quantity('fine', label, help)

export const clearanceFields = {
  housingVertical: at('Housing bore, up and down', 'Caps torqued, shells out.'),
  housingHorizontal: optional(at('Housing bore, side to side'), 'Left out: as up and down.'),
  shellCrown: at('Wall of one shell, at its middle'),
  shellParting: optional(
    at('Wall of one shell, near the parting face'),
    'Left out: as its middle.',
  ),
  journal: at('Main journal'),
  crushGrowth: optional(fine('Pressed-in shells widen the housing by'), 'Left out: nothing.'),
  wanted: optional(fine('Clearance wanted')),
  perDiameterLow: optional(pure('Rule, least for each unit of journal', 'Such as 0.00075.')),
  perDiameterHigh: optional(pure('Rule, most for each unit of journal', 'Such as 0.001.')),
  blockMaterial: optional(choice('Material of the block', GROWTH_WORDS)),
  capMaterial: optional(choice('Material of the cap', GROWTH_WORDS), 'Left out: as the block.'),
  journalMaterial: optional(choice('Material of the crank', GROWTH_WORDS), 'Left out: steel.'),
  blockRise: optional(quantity('rise', 'Block warmer than when measured by')),
  journalRise: optional(quantity('rise', 'Crank warmer by'), 'Left out: as the block.'),
  shellRise: optional(quantity('rise', 'Shells warmer by'), 'Left out: as the block.'),
  housingLow: optional(at('Housing bore, least')),
  housingHigh: optional(at('Housing bore, greatest')),
  wallLow: optional(at('Wall of one shell, least')),
  wallHigh: optional(at('Wall of one shell, greatest')),
  journalLow: optional(at('Journal, least')),
  journalHigh: optional(at('Journal, greatest')),
  overstand: optional(fine('Overstand of one half shell')),
  checkingBore: optional(at('Bore of the block it was checked in'), 'Left out: the housing bore.'),
  backWall: optional(at('Wall of the shell’s steel back'), 'Left out: the whole wall.'),
  bearingWidth: optional(at('Width of the shell')),
  shellModulus: optional(quantity('modulus', 'Elastic modulus of the back'), 'Left out: steel.'),
  housingOutside: optional(at('Outside of the housing, as a ring')),
  housingModulus: optional(quantity('modulus', 'Elastic modulus of the housing')),
  housingPoisson: optional(pure('Poisson’s ratio of the housing'), 'Left out: 0.211, gray iron.'),
  expansionDifference: optional(
    quantity('expansion', 'Housing expands more than the shell by'),
    'Left out: none.',
  ),
  crushRise: optional(quantity('rise', 'Warmer than when checked by'), 'Left out: as cold.'),
  load: optional(quantity('force', 'Load on the bearing')),
  lostWidth: optional(at('Width lost to a groove and chamfers'), 'Left out: none.'),
  viscosity: optional(quantity('viscosity', 'Viscosity of the oil in the film')),
  speed: optional(quantity('speed', 'Speed of the journal')),
}
export type ClearanceInputs = Values<typeof clearanceFields>
