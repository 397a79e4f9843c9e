import { choice, optional, pure, quantity, type Values } from './fields.ts'

const at = (label: string, help = '') => quantity('length', label, help)
const fine = (label: string, help = '') => quantity('fine', label, help)

/** Materials whose growth is tabled. */
export const GROWTH_WORDS = {
  'gray-iron': 'Gray iron',
  'compacted-iron': 'Compacted iron',
  'ductile-iron': 'Ductile iron',
  'sintered-steel': 'Sintered steel',
  steel: 'Steel',
  aluminium: 'Aluminium',
} as const

export const boreMachiningFields = {
  blockBore: at('Bore of the block’s half as it is'),
  capBore: at('Bore of the cap’s half as it is'),
  blockFaceCut: optional(fine('Cut off the block’s parting faces'), 'Left out: nothing.'),
  capFaceCut: optional(fine('Cut off the cap’s parting faces'), 'Left out: nothing.'),
  capSideOffset: optional(fine('Cap sits to one side by'), 'Left out: nothing.'),
  finishedLow: at('Least finished bore', 'From the service data.'),
  finishedHigh: at('Greatest finished bore'),
  oversize: optional(fine('Oversize added to both limits'), 'Left out: standard size.'),
  aim: optional(at('Size to aim at'), 'Left out: the middle of the limits.'),
  honingStock: optional(fine('Left on the diameter for the hone'), 'Left out: nothing.'),
  cleanUp: optional(fine('Metal that must come off at both crowns, at least'), 'Left out: none.'),
  axisShift: optional(
    fine('Axis moved up into the block by'),
    'Left out: the least that cleans up.',
  ),
  honeLimit: fine('Most that the hone takes off the diameter', 'Ask the shop.'),
  honeBlockShare: optional(pure('Share of the hone’s cut out of the block'), 'Left out: one half.'),
  mostAxisShift: optional(fine('Most that the axis may rise', 'For the least cut off the cap.')),
  camDistance: optional(at('Crank axis to cam axis', 'For chain or gears.')),
  camAngle: optional(
    quantity('angle', 'Direction of the cam from straight up'),
    'Left out: straight up.',
  ),
  chainPitch: optional(at('Pitch of the timing chain')),
  crankTeeth: optional(pure('Teeth on the crank')),
  camTeeth: optional(pure('Teeth on the cam')),
  slackBefore: optional(fine('Slack in the chain’s length before'), 'Left out: none.'),
  setShortening: optional(
    fine('Shorter centres that the timing set is made for'),
    'Left out: standard set.',
  ),
  mostSlack: optional(fine('Most slack allowed in the chain’s length')),
  pressureAngle: optional(quantity('angle', 'Pressure angle of the timing gears')),
  helix: optional(quantity('angle', 'Helix angle of the gears'), 'Left out: straight teeth.'),
  backlashBefore: optional(fine('Backlash before'), 'Left out: none.'),
  standardCentreDistance: optional(at('Standard centres of the gears'), 'Left out: as given.'),
  leastBacklash: optional(fine('Least backlash allowed')),
  blockMaterial: optional(choice('Material of the block, for warm timing', GROWTH_WORDS)),
  blockRise: optional(quantity('rise', 'Block warmer by')),
  driveRise: optional(
    quantity('rise', 'Chain or gears warmer by'),
    'Left out: as the block. They are steel.',
  ),
  bore: optional(at('Cylinder bore', 'For deck height and compression.')),
  stroke: optional(at('Stroke')),
  rodLength: optional(at('Rod length')),
  compressionRatio: optional(pure('Compression ratio')),
  deckClearance: optional(
    fine('Piston below the deck at dead centre'),
    'Left out: 0. Negative when it stands proud.',
  ),
  bankAngle: optional(quantity('angle', 'Cylinder’s lean from upright'), 'Left out: upright.'),
  deckCut: optional(fine('Cut off the deck'), 'Left out: nothing.'),
  inputShaft: optional(at('Gearbox input shaft, pilot to bearing', 'For gearbox alignment.')),
  gearboxX: optional(fine('Gearbox bore to the side of the old crank axis'), 'Left out: 0.'),
  gearboxY: optional(fine('Gearbox bore above the old crank axis'), 'Left out: 0.'),
}
export type BoreMachiningInputs = Values<typeof boreMachiningFields>
