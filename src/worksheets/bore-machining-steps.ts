import {
  type BoreMachining,
  type BoreMachiningInput,
  leastCapFaceCut,
} from '../mechanics/bore-machining.ts'
import type { BoreMachiningInputs } from './bore-machining-fields.ts'
import type { Print } from './print.ts'
import { geometry, practice, type Result, type Step } from './worksheet.ts'

/** The working, from the bore before work to what a hone alone would do. */
export function boreSteps(
  input: BoreMachiningInput,
  machined: BoreMachining,
  print: Print,
): Step[] {
  return [...axisSteps(input, machined, print), ...cutSteps(input, machined, print)]
}

/** The bore as it is, the axis that it asks for, and the metal that goes. */
function axisSteps(
  input: BoreMachiningInput,
  { rough, finished, axisShift }: BoreMachining,
  print: Print,
): Step[] {
  const at = (one: number): string => print.figure(one, 'length')
  const fine = (one: number): string => print.figure(one, 'fine')
  const { capFaceCut = 0, blockFaceCut = 0, cleanUp = 0 } = input
  const half = finished.diameter / 2
  return [
    {
      title: 'The bore before work',
      formula: 'vertical = Rb + Rc − (face cuts); the widths at the parting face beside it',
      withNumbers: `vertical = ${at(rough.block.radius)} + ${at(rough.cap.radius)} − ${fine(capFaceCut + blockFaceCut)}; widths ${at(rough.blockWidth)} and ${at(rough.capWidth)}`,
      result: `vertical ${at(rough.vertical)}, out of round by ${fine(rough.outOfRound)}`,
      source: geometry('Plane geometry of circles'),
    },
    {
      title: 'Height of the new axis',
      formula:
        input.axisShift === undefined ? 'y = Rb + clean-up − D/2, never below 0' : 'y as given',
      withNumbers: `y = ${at(rough.block.radius)} + ${fine(cleanUp)} − ${at(half)}`,
      result: `y = ${fine(axisShift)}`,
      source: practice('The axis is moved as little as may be'),
    },
    {
      title: 'Metal off each crown',
      formula: 'block: y + D/2 − Rb; cap: D/2 − y − (Rc − face cuts)',
      withNumbers: `block: ${fine(axisShift)} + ${at(half)} − ${at(rough.block.radius)}; cap: ${at(half)} − ${fine(axisShift)} − (${at(rough.cap.radius)} − ${fine(capFaceCut + blockFaceCut)})`,
      result: `${fine(finished.block.crown)} and ${fine(finished.cap.crown)}`,
      source: geometry('Plane geometry of circles'),
    },
  ]
}

/** What is bored, and what a hone alone would have to take. */
function cutSteps(
  { honingStock = 0, honeLimit }: BoreMachiningInput,
  { rough, finished, boring, honeAlone }: BoreMachining,
  print: Print,
): Step[] {
  const at = (one: number): string => print.figure(one, 'length')
  const fine = (one: number): string => print.figure(one, 'fine')
  return [
    {
      title: 'Boring leaves stock for the hone',
      formula: 'bored = D − stock',
      withNumbers: `bored = ${at(finished.diameter)} − ${fine(honingStock)}`,
      result: `bored ${at(boring.diameter)}`,
      source: practice('Bore first, hone to size'),
    },
    {
      title: 'A hone without boring',
      formula: 'stock = D − vertical; beyond = stock − limit',
      withNumbers: `stock = ${at(finished.diameter)} − ${at(rough.vertical)}; limit ${fine(honeLimit)}`,
      result: `${fine(honeAlone.stock)} to take, ${fine(honeAlone.beyond)} of it beyond the limit`,
      source: practice('A hone follows the bore that it finds'),
    },
  ]
}

/** Least cut off the cap, when the most that the axis may rise is given. */
export function leastCut(
  { blockBore, capBore, cleanUp = 0, mostAxisShift }: BoreMachiningInputs,
  { finished }: BoreMachining,
  print: Print,
): { results: Result[]; steps: Step[] } {
  if (mostAxisShift === undefined) return { results: [], steps: [] }
  const finishedBore = finished.diameter
  const cut = leastCapFaceCut({ blockBore, capBore, finishedBore, cleanUp, mostAxisShift })
  const step: Step = {
    title: 'Least cut off the cap’s parting faces',
    formula: 'cut = Rb + Rc + 2 clean-up − D, and not less than Rc + clean-up − D/2 + y',
    withNumbers: `cut = ${print.figure(blockBore / 2, 'length')} + ${print.figure(capBore / 2, 'length')} + 2 × ${print.figure(cleanUp, 'fine')} − ${print.figure(finishedBore, 'length')}, axis at most ${print.figure(mostAxisShift, 'fine')}`,
    result: Number.isFinite(cut)
      ? print.figure(cut, 'fine')
      : 'no cut of the cap alone cleans up the block’s crown',
    source: geometry('Plane geometry of circles'),
  }
  const label = 'Least cut off the cap that cleans up both crowns'
  return { results: [print.result('leastCapFaceCut', label, cut, 'fine')], steps: [step] }
}
