import { describe, expect, it } from 'vitest'
import { figures } from '../worksheets/call-worksheet.ts'

/** Within a share of the published value. */
function near(actual: number, expected: number, share: number): void {
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(share * Math.abs(expected))
}

describe('preload', () => {
  // Shigley, 9th ed., Ex 8–3 (from memory): K 0.2, Fi 25 kip, 3/4-16 UNF gives 3750 lbf in;
  // recomputed. Printed to four figures: 0.1 %.
  it('gives the torque of a nut factor', async () => {
    const { value } = await figures('preload', {
      thread: '3/4-16',
      preload: '25 kip',
      nutFactor: 0.2,
    })
    near(value('torque') * 12, 3750, 1e-3)
  })

  // The same bolt by eq 8–26 with f = fc = 0.15: 3551 lbf in (from memory, recomputed). 0.1 %.
  it('gives the torque of the full equation', async () => {
    const { value } = await figures('preload', {
      thread: '3/4-16',
      preload: { value: 25, unit: 'kip' },
      threadFriction: 0.15,
      collarFriction: 0.15,
    })
    near(value('torque') * 12, 3551, 1e-3)
  })

  // U. C. Jindal, Machine Design, ch. 9, Ex 9-5: At 115 mm², Sp 650 MPa, K 0.2, d 14 mm,
  // preload 0.75 of proof: T 156.97 N m. Printed to five figures: 0.01 %.
  it('gives the torque of a share of proof load', async () => {
    const { value } = await figures('preload', {
      thread: 'M14x2',
      stressArea: '115 mm2',
      proofStrength: '650 MPa',
      shareOfProof: '75 %',
      nutFactor: 0.2,
      units: 'metric',
    })
    near(value('torque'), 156.97, 1e-4)
  })

  // VDI 2230 (2001), table of assembly preload and torque, M8x1 and M10x1.25, 90 % of yield; read
  // in a catalogue's reprint. Forces to three figures (0.4 %), torques to whole N m (1.2 %).
  it.each([
    ['M8x1', '8.8', 0.1, 20.7, 22.8],
    ['M8x1', '10.9', 0.12, 29.7, 38.3],
    ['M8x1', '12.9', 0.14, 33.9, 50.1],
    ['M10x1.25', '8.8', 0.14, 30.8, 57],
    ['M10x1.25', '10.9', 0.12, 46.4, 75],
    ['M10x1.25', '12.9', 0.1, 55.6, 76],
  ])(
    'gives preload and torque of %s %s at friction %d',
    async (thread, grade, mu, force, torque) => {
      const [faceDiameter, holeDiameter] =
        thread === 'M8x1' ? ['11.63 mm', '9 mm'] : ['14.63 mm', '11 mm']
      const { value } = await figures('preload', {
        thread,
        grade: `iso-${grade}`,
        shareOfProof: '75 %',
        threadFriction: mu,
        collarFriction: mu,
        faceDiameter,
        holeDiameter,
        units: 'metric',
      })
      near(value('vdiPreload'), force, 4e-3)
      near(value('vdiTorque'), torque, 1.2e-2)
    },
  )

  // VDI 2230 (1986), guide values: scatter ±23 % is a tightening factor of 1.60 (printed to two
  // decimals, 0.5 %).
  it('maps a scatter to its tightening factor', async () => {
    const { value } = await figures('preload', {
      thread: 'M12x1.75',
      torque: '80 N m',
      scatter: '23 %',
      units: 'metric',
    })
    near(value('tighteningFactor'), 1.6, 5e-3)
    near(value('preloadHigh') / value('preloadLow'), 1.6, 5e-3)
  })

  // FED-STD-H28/2 formulas with the limits of 1/2-13 2A/2B (ASME B1.1, from memory): engagement of
  // equal strength 0.3643 in, screw 0.77894 and hole 1.12349 in² an inch; recomputed. 0.1 %.
  it('gives shear areas and engagement of equal strength', async () => {
    const { value } = await figures('preload', {
      thread: '1/2-13',
      torque: '80 lb ft',
      screwMajorMin: '0.4876 in',
      screwPitchMin: '0.4435 in',
      holeMinorMax: '0.4340 in',
      holePitchMax: '0.4565 in',
    })
    near(value('screwShearArea'), 0.77894, 1e-3)
    near(value('holeShearArea'), 1.12349, 1e-3)
    near(value('equalStrengthEngagement'), 0.3643, 1e-3)
  })
})

describe('cap-joint', () => {
  // Shigley, 9th ed., Ex 8–4, read: six 5/8-11 grade 5 bolts, lt = ld = 0.75 in, E 30 Mpsi, iron
  // no. 25 of E 14 Mpsi, 36 kip in all: kb 5.21, km 8.95 Mlbf/in, C 0.368, Fi 14.4 kip, nL 2.18,
  // np 1.16, n0 3.80. Printed to three figures: 0.5 %.
  it('gives the stiffness and factors of a bolted iron joint', async () => {
    const { value } = await figures('cap-joint', {
      fasteners: [
        {
          count: 6,
          thread: '5/8-11',
          preload: '14.41 kip',
          grip: '1.5 in',
          kind: 'through',
          shankLength: '0.75 in',
          modulus: '30 Mpsi',
        },
      ],
      capModulus: '14 Mpsi',
      grade: 'sae-5',
      pull: '36 kip',
    })
    near(value('fastenerStiffness'), 5.21, 5e-3)
    near(value('memberStiffness'), 8.95, 5e-3)
    near(value('loadFactor'), 0.368, 5e-3)
    near(value('loadFactorToProof'), 2.18, 5e-3)
    near(value('yieldingFactor'), 1.16, 5e-3)
    near(value('separationFactor'), 3.8, 5e-3)
    near(value('separationMargin'), 3.8, 5e-3)
  })

  // Shigley, 9th ed., Ex 8–2, set-up read, figures from memory and recomputed: 1/2-20 in, 0.595 in
  // of steel on 0.75 in of iron, D 0.75 in: km 9.378 Mlbf/in. 0.2 %.
  it('gives the members of two layers', async () => {
    const { value } = await figures('cap-joint', {
      fasteners: [
        { count: 2, thread: '1/2-20', preload: '5 kip', grip: '0.595 in', headDiameter: '0.75 in' },
      ],
      layers: [
        { thickness: '0.595 in', modulus: '30 Mpsi' },
        { thickness: '0.75 in', modulus: '14.5 Mpsi' },
      ],
    })
    near(value('memberStiffness'), 9.378, 2e-3)
  })

  // U. C. Jindal, Machine Design, ch. 9, Ex 9-6: At 245 mm² (M20x2.5), Pi 120 kN, Pe 30 kN, C 0.35:
  // stress in the bolt 532.65 MPa. C is given by stiffnesses 35 to 65. Our area is 244.8: 0.2 %.
  it('takes stiffnesses as figures', async () => {
    const { value } = await figures('cap-joint', {
      fasteners: [
        {
          count: 1,
          thread: 'M20x2.5',
          preload: '120 kN',
          grip: '40 mm',
          stiffness: '0.35 kN/mm',
          memberStiffness: '0.65 kN/mm',
        },
      ],
      grade: 'iso-8.8',
      pull: '30 kN',
      units: 'metric',
    })
    near(value('loadFactor'), 0.35, 1e-9)
    near(value('meanStress') + value('alternatingStress'), 532.65, 2e-3)
  })

  // VDI 2230, R2 (from memory): 5 kN sideways at friction 0.15 needs 33.33 kN of clamp; the same
  // clamp, given, must hold just that. Exact but for the last figure given: 0.02 %.
  it('holds sideways what friction gives', async () => {
    const { value } = await figures('cap-joint', {
      fasteners: [{ count: 2, thread: 'M11x1.5', preload: '16.667 kN', grip: '50 mm' }],
      friction: 0.15,
      side: '5 kN',
      units: 'metric',
    })
    near(value('gripMargin'), 1, 2e-4)
    near(value('holdMargin'), 1, 2e-4)
  })
})

describe('gas-cycle', () => {
  // Ferguson & Kirkpatrick, Internal Combustion Engines, 3rd ed., finite heat release: b = s =
  // 100 mm, r 10, p1 1 bar, γ 1.4, a 5, n 3, infinitely long rod. Figures for Q = 20 p1 V1 by two
  // independent integrations that agree to five digits (the book's own at 1° steps: 87.77 at 11°,
  // 11.84, 0.592, 13.16, from memory). 0.05 %, angle 0.1°.
  const volume = (Math.PI / 4) * 0.1 ** 3 * (10 / 9)
  const heat = 20 * 1e5 * volume
  const ferguson = {
    bore: '100 mm',
    stroke: '100 mm',
    speed: '3000 rpm',
    compressionRatio: 10,
    startPressure: '1 bar',
    startTemperature: '300 K',
    addedHeat: { value: heat, unit: 'J' },
    burnStart: '-20 deg',
    gamma: 1.4,
    stepsPerDegree: 10,
    units: 'metric',
  }

  it.each([
    [40, 87.782, 10.81, 11.8403, 0.59202, 13.1559],
    [60, 63.657, 18.4, 11.4798, 0.57399, 12.7553],
  ])(
    'gives the finite heat release over %d°',
    async (duration, peak, angle, work, efficiency, imep) => {
      const { value } = await figures('gas-cycle', { ...ferguson, burnDuration: `${duration} deg` })
      near(value('peakPressure'), peak, 5e-4)
      expect(Math.abs(value('peakAngle') - angle)).toBeLessThan(0.1)
      near(value('work') / (1e5 * volume), work, 5e-4)
      near(value('efficiency'), efficiency, 5e-4)
      near(value('imepGross'), imep, 5e-4)
      // First law, back at V1: p4 = 1 + 0.4 (20 (1 − e^−5) − W).
      near(value('endPressure'), 1 + 0.4 * (20 * (1 - Math.exp(-5)) - work), 5e-4)
    },
  )

  // R. K. Rajput, A Textbook of Internal Combustion Engines, Ex 3.9: p1 1 bar, T1 300 K, r 8, q 1500
  // kJ/kg, cv 0.72, k 1.4: p3 73.93 bar, T3 2772.55 K, p4 4.02 bar, efficiency 56.47 %. The burn
  // takes 0.1° with a = 12, hence 0.5 %.
  it('comes to the cold Otto cycle as the burn grows short', async () => {
    const otto = (Math.PI / 4) * 0.1 ** 3 * (8 / 7)
    const { value } = await figures('gas-cycle', {
      ...ferguson,
      compressionRatio: 8,
      addedHeat: { value: (1500 / (0.72 * 0.4 * 300)) * 1e5 * otto, unit: 'J' },
      burnStart: '-0.05 deg',
      burnDuration: '0.1 deg',
      burnCompleteness: 12,
      stepsPerDegree: 100,
    })
    near(value('peakPressure'), 73.93, 5e-3)
    near(value('peakTemperature') + 273.15, 2772.55, 5e-3)
    near(value('endPressure'), 4.02, 5e-3)
    near(value('efficiency'), 0.5647, 5e-3)
    near(value('ottoEfficiency'), 0.5647, 1e-4)
  })

  // The same book by 1° steps of the start: work is greatest at −21° (computed; the optimum is flat
  // to 1°).
  it('places a burn that is not placed where it gives most work', async () => {
    const { burnStart: _, ...open } = ferguson
    const { value } = await figures('gas-cycle', { ...open, burnDuration: '40 deg' })
    expect(Math.abs(value('burnStart') + 21)).toBeLessThan(1)
  })
})

describe('main-loads', () => {
  const still = {
    layout: 'inline-3',
    speed: '0 rpm',
    reciprocatingMass: '0 g',
    units: 'metric',
  }

  // R. S. Khurmi & J. K. Gupta, A Textbook of Machine Design, ch. 32, centre crankshaft, read: D 400
  // mm, 2.5 MPa: 314.2 kN on the piston, 157.1 kN on each bearing beside it. Four figures: 0.05 %.
  it('gives half of a throw to each main beside it', async () => {
    const { value } = await figures('main-loads', {
      ...still,
      bore: '400 mm',
      stroke: '600 mm',
      gaugePressure: '2.5 MPa',
      crankAngle: '0 deg',
    })
    near(value('cylinder.gas'), 314.2, 5e-4)
    near(value('main1Peak'), 157.1, 5e-4)
    near(value('main4Peak'), 157.1, 5e-4)
  })

  // The same for a load off the middle: H1 = F b2/b. By the lever, 0.3 and 0.7 of 314.16 kN.
  it('shares by the lever', async () => {
    const { value } = await figures('main-loads', {
      ...still,
      bore: '400 mm',
      stroke: '600 mm',
      gaugePressure: '2.5 MPa',
      frontShare: 0.3,
    })
    near(value('main1Peak'), 0.3 * 314.16, 5e-4)
    near(value('main4Peak'), 0.7 * 314.16, 5e-4)
  })

  // Worked example, read: bore 350, stroke 400, rod 1100 mm, 140 kg, 30° after dead centre, 0.8 MPa,
  // 260 rpm, vertical: F 58.475, Q 58.718, N 5.338 kN, lean 5.216°. Rounded on the way: 0.02 %.
  it('gives the forces of a slider-crank with weight', async () => {
    const { value } = await figures('main-loads', {
      layout: 'inline-3',
      bore: '350 mm',
      stroke: '400 mm',
      rodLength: '1100 mm',
      reciprocatingMass: '140 kg',
      speed: '260 rpm',
      crankAngle: '30 deg',
      gaugePressure: '0.8 MPa',
      gravity: '9.81 m/s2',
      motion: 'two-term',
      units: 'metric',
    })
    near(value('cylinder.piston'), 58.475, 2e-4)
    near(value('cylinder.rod'), 58.718, 2e-4)
    near(value('cylinder.wall'), 5.338, 2e-4)
    near(value('cylinder.rodAngle'), 5.216, 2e-4)
  })

  // Khurmi & Gupta, Theory of Machines, Ex 15.7, inputs and formula read: 500 mm bore, r 300, l 1200
  // mm, 250 kg, 60°, 0.35 MPa, 250 rpm: N 10.97, Q 50.65, T 48.30 kN, torque 14.49 kN m. 0.1 %.
  it('gives the turning force and torque', async () => {
    const { value } = await figures('main-loads', {
      layout: 'inline-4',
      bore: '500 mm',
      stroke: '600 mm',
      rodLength: '1200 mm',
      reciprocatingMass: '250 kg',
      speed: '250 rpm',
      crankAngle: '60 deg',
      gaugePressure: '0.35 MPa',
      motion: 'two-term',
      units: 'metric',
    })
    near(value('cylinder.wall'), 10.97, 1e-3)
    near(value('cylinder.rod'), 50.65, 1e-3)
    near(value('cylinder.tangential'), 48.3, 1e-3)
    near(value('cylinder.torque'), 14490, 1e-3)
  })

  // Open textbook, Fundamentals of Internal Combustion Engines, Ex 16.1, read: 3 L six, bore and
  // stroke 86 mm, rod 172 mm, 3000 rpm, 20°: piston speed 5.71, mean 8.60 m/s, x 3.2 mm. 0.2 %, x
  // (two figures) 2 %.
  it('gives the motion of the piston', async () => {
    const { value } = await figures('main-loads', {
      layout: 'inline-6',
      bore: '86.025 mm',
      stroke: '86.025 mm',
      rodLength: '172 mm',
      reciprocatingMass: '500 g',
      speed: '3000 rpm',
      crankAngle: '20 deg',
      units: 'metric',
    })
    near(value('cylinder.speed'), 5.71, 2e-3)
    near(value('cylinder.meanSpeed'), 8.6, 2e-3)
    near(value('cylinder.travel'), 3.2, 2e-2)
  })
})

describe('bore-machining', () => {
  const bores = {
    blockBore: '2.641 in',
    capBore: '2.621 in',
    finishedLow: '2.6406 in',
    finishedHigh: '2.6415 in',
    honeLimit: '0.003 in',
  }

  // Chain of 0.375 in on 21 and 42 teeth, centres 5.000 in. ΔC 0.005 in frees 0.00968 in, 0.010 in
  // frees 0.01936 in: 2 ΔC cos α, sin α = (R2 − R1)/C (chain maker's length formula, read; computed).
  // The exact belt differs from the short form in the fourth figure: 0.2 %.
  it.each([
    ['0.005 in', 0.00968],
    ['0.010 in', 0.01936],
  ])('gives the chain that a shift of %s sets free', async (axisShift, freed) => {
    const { value } = await figures('bore-machining', {
      ...bores,
      axisShift,
      camDistance: '5 in',
      chainPitch: '0.375 in',
      crankTeeth: 21,
      camTeeth: 42,
    })
    near(value('slackFreed'), freed, 2e-3)
    near(value('chainSlack'), freed, 2e-3)
  })

  // Sag of a strand of 4.840 in with 0.02 in of excess: √(3 s e / 8) = 0.1905 in (computed from the
  // parabola). The strand here comes of the same drive: 0.2 %.
  it('gives the sag of a slack strand', async () => {
    const { value } = await figures('bore-machining', {
      ...bores,
      axisShift: '0 in',
      camDistance: '5 in',
      chainPitch: '0.375 in',
      crankTeeth: 21,
      camTeeth: 42,
      slackBefore: '0.02 in',
    })
    near(value('chainSag'), 0.1905, 2e-3)
  })

  // Gears of 20 and 40 teeth, module 2.5, 20°: centres 75 mm. Apart by 0.05 mm: backlash +0.03651;
  // closer by 0.05 mm: −0.03628 mm (working-angle relation read; computed). 0.1 %.
  it.each([
    [-0.05, 0.03651],
    [0.05, -0.03628],
  ])('gives the backlash of gears whose centres lose %d mm', async (shift, change) => {
    const { value } = await figures('bore-machining', {
      ...bores,
      axisShift: `${shift} mm`,
      camDistance: '75 mm',
      pressureAngle: '20 deg',
      backlashBefore: '0.1 mm',
      units: 'metric',
    })
    near(value('backlashChange'), change, 1e-3)
  })

  // A dial indicator turned with the crank reads twice the eccentricity: 0.005 in off reads 0.010 in
  // (definition). Exact.
  it('gives the reading at the gearbox', async () => {
    const { value } = await figures('bore-machining', {
      ...bores,
      axisShift: '0.005 in',
      inputShaft: '7 in',
    })
    near(value('indicatorReading'), 0.01, 1e-9)
  })
})

describe('clearance', () => {
  // Callister, Materials Science and Engineering, Table B.6, read: steel 12.3, gray iron G3000 11.4,
  // aluminium 356.0 21.5 ppm/K. A bore of 65 mm, 80 K warmer, over a steel shaft of the same size:
  // +0.0478 mm in aluminium, −0.0047 mm in iron (computed). Printed to 0.0001 mm.
  it.each([
    ['aluminium', 0.0478],
    ['gray-iron', -0.0047],
  ])('grows in a block of %s', async (blockMaterial, growth) => {
    const { value } = await figures('clearance', {
      housingVertical: '65 mm',
      shellCrown: '0 mm',
      journal: '65 mm',
      blockMaterial,
      blockRise: '80 K',
      units: 'metric',
    })
    expect(Math.abs(value('warmVertical') - growth)).toBeLessThan(6e-5)
  })

  // Bearing maker's bulletin, read in a reprint: 0.00075 to 0.0010 in for each inch, 2.000 in gives
  // 0.0015 to 0.0020 in. Exact.
  it('gives the clearance of a rule', async () => {
    const { value } = await figures('clearance', {
      housingVertical: '2.1917 in',
      shellCrown: '0.0949 in',
      journal: '2 in',
      perDiameterLow: 0.00075,
      perDiameterHigh: 0.001,
    })
    near(value('targetLow'), 0.0015, 1e-9)
    near(value('targetHigh'), 0.002, 1e-9)
  })

  // Solutions to Shigley, ch. 12, problem 12-1, read: d 25, l 12.5 mm, c 0.015 mm, 1.2 kN, 55 mPa s,
  // 1100 rpm: P 3.84 MPa, S 0.182 (0.1824 from its figures). 0.3 %.
  it('gives unit load and Sommerfeld number of a textbook bearing', async () => {
    const { value } = await figures('clearance', {
      housingVertical: '25.03 mm',
      shellCrown: '0 mm',
      journal: '25 mm',
      bearingWidth: '12.5 mm',
      load: '1.2 kN',
      viscosity: '55 mPa s',
      speed: '1100 rpm',
      units: 'metric',
    })
    near(value('unitLoad'), 38.4, 3e-3)
    near(value('sommerfeld'), 0.1824, 3e-3)
  })
})

describe('job-cost', () => {
  // PERT of 10, 20, 60: mean (10 + 80 + 60)/6 = 25 (form read); deviation of the scaled beta 8.6603,
  // quantiles 14.4951, 23.8336, 37.2667 at 0.1, 0.5, 0.9 (computed with a general library). One line
  // is exact but for the last printed figure: 0.01 %.
  it('gives mean and quantiles of one PERT line', async () => {
    const { value } = await figures('job-cost', {
      items: [{ label: 'Line bore', low: '10 USD', likely: '20 USD', high: '60 USD' }],
    })
    near(value('mean'), 25, 1e-9)
    near(value('deviation'), 8.6603, 1e-4)
    near(value('p10'), 14.4951, 1e-4)
    near(value('p50'), 23.8336, 1e-4)
    near(value('p90'), 37.2667, 1e-4)
  })

  // Cost–loss ratio, read in a decision-tree problem (Clemen): cost 900, loss 6000: act above a
  // chance of 0.15; at 0.10 the expected loss of 600 is less than 900. Exact.
  it('gives the break-even chance and the cheaper course', async () => {
    const { value } = await figures('job-cost', {
      items: [{ label: 'Caps', likely: { value: 900, currency: 'USD' } }],
      invested: '6000 USD',
      chance: '10 %',
    })
    near(value('breakEvenChance'), 15, 1e-9)
    near(value('leave'), 600, 1e-9)
    near(value('protect'), 900, 1e-9)
  })
})
