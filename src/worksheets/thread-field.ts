import { z } from 'zod'
import { printThread, readThread } from '../../shared/thread.ts'
import { type Field, LONGEST, ok, quantity, refuse } from './fields.ts'

export interface ThreadSize {
  /** m */
  readonly diameter: number
  readonly pitch: number
  readonly form?: 'un' | 'iso'
}

/** A thread as the trade writes it, or its diameter and pitch for sizes beyond main caps. */
export function thread(label: string, help = ''): Field<ThreadSize> {
  const [diameter, pitch] = [quantity('length', 'Diameter'), quantity('length', 'Pitch')]
  return {
    label,
    help,
    required: true,
    control: { type: 'thread' },
    schema: z.union([
      z.string().max(LONGEST),
      z.strictObject({ diameter: diameter.schema, pitch: pitch.schema }),
    ]),
    read(raw, at) {
      const shape = z.strictObject({ diameter: z.unknown(), pitch: z.unknown() }).safeParse(raw)
      if (shape.success) {
        const d = diameter.read(shape.data.diameter, `${at}.diameter`)
        const p = pitch.read(shape.data.pitch, `${at}.pitch`)
        if ('problem' in d) return d
        if ('problem' in p) return p
        const given = { diameter: d.ok.given, pitch: p.ok.given }
        return ok({ diameter: d.ok.value, pitch: p.ok.value }, given)
      }
      const found = typeof raw === 'string' ? readThread(raw) : undefined
      if (!found) return refuse(at, 'not-a-thread', raw, THREAD_FITS)
      const form = found.series === 'unified' ? 'un' : 'iso'
      return ok({ diameter: found.diameter, pitch: found.pitch, form }, printThread(found))
    },
  }
}

const THREAD_FITS =
  'write a thread from 5 to 20 mm such as 1/2-13 or M11x1.25, or give its diameter and pitch'
