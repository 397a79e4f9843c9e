import { type FactKey, fact, usualUnit } from '../../shared/fact-keys.ts'
import { readThread } from '../../shared/thread.ts'
import { fromSi, toSi } from '../../shared/units.ts'
import { type FastenerGrade, fastenerStrength } from '../mechanics/fastener-grades.ts'
import { LUBRICANTS, type Lubricant } from '../mechanics/lubricant-friction.ts'
import { defaultMasses } from '../mechanics/masses.ts'
import { proofLoad, torqueForPreload } from '../mechanics/preload.ts'
import { tensileStressArea } from '../mechanics/threads.ts'
import type { Lookup } from './from-answers.ts'

/** Formulas that rules/assumptions.json may name; each gives the fact in its usual unit. */
export const formulas = {
  'reciprocating-mass': (lookup: Lookup): number =>
    usual('reciprocatingMass', defaultMasses(si(lookup, 'bore'), 'forged').reciprocating.likely),
  'big-end-mass': (lookup: Lookup): number =>
    usual('bigEndMass', defaultMasses(si(lookup, 'bore'), 'forged').bigEnd.likely),
  'torque-at-proof-share': (lookup: Lookup, share = 0.6): number => {
    const { diameter, pitch, series } = threadIn(lookup)
    const grade = String(lookup('fastenerGrade').value) as FastenerGrade
    const area = tensileStressArea(diameter, pitch, series === 'unified' ? 'un' : 'iso')
    const preload = share * proofLoad(area, fastenerStrength(grade, diameter).proof)
    const lubricant = String(lookup('fastenerLubricant').value) as Lubricant
    const nutFactor = LUBRICANTS[lubricant].nutFactor.likely
    return usual('fastenerTorque', torqueForPreload(preload, diameter, nutFactor))
  },
} as const

function threadIn(lookup: Lookup) {
  const thread = readThread(String(lookup('fastenerThread').value))
  if (!thread) throw new RangeError('fastenerThread is no thread')
  return thread
}

function si(lookup: Lookup, key: FactKey): number {
  return toSi(Number(lookup(key).value), usualUnit(fact(key)))
}

function usual(key: FactKey, inSi: number): number {
  return fromSi(inSi, usualUnit(fact(key)))
}
