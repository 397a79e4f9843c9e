/** What a worksheet's page draws, in the person's units: data only. */
export type Picture = BarsPicture | CurvesPicture | PolarPicture | BoresPicture | FitPicture

interface Common {
  readonly title: string
  /** What the picture shows, in a sentence with its figures. */
  readonly text: string
  readonly caption: string
  readonly table: {
    readonly caption: string
    readonly head: readonly string[]
    readonly rows: readonly (readonly string[])[]
  }
}

/** Figures side by side on one scale, each with its spread. */
export interface BarsPicture extends Common {
  readonly kind: 'bars'
  readonly bars: readonly {
    readonly label: string
    readonly value: number
    readonly text: string
    readonly low?: number
    readonly high?: number
  }[]
  /** Lines across all bars, such as a proof load. */
  readonly marks: readonly { readonly label: string; readonly value: number }[]
}

/** One or more curves over one axis. */
export interface CurvesPicture extends Common {
  readonly kind: 'curves'
  readonly x: string
  /** Where the axis is marked; at even figures when left out. */
  readonly ticks?: readonly number[]
  readonly y: string
  readonly curves: readonly {
    readonly label: string
    readonly points: readonly (readonly [number, number])[]
    readonly look: 'main' | 'second' | 'faint'
  }[]
  readonly marks: readonly { readonly label: string; readonly at: readonly [number, number] }[]
}

/** The load on each main over two turns, all to one scale; y is up, away from the cap. */
export interface PolarPicture extends Common {
  readonly kind: 'polar'
  readonly unit: string
  readonly mains: readonly {
    readonly label: string
    readonly points: readonly (readonly [number, number])[]
    readonly lines: readonly string[]
  }[]
}

/** Two half bores and the bore that is to come of them; lengths in m. */
export interface BoresPicture extends Common {
  readonly kind: 'bores'
  readonly block: { readonly y: number; readonly radius: number }
  readonly cap: { readonly x: number; readonly y: number; readonly radius: number }
  readonly finished: { readonly y: number; readonly radius: number }
  readonly partingFace: number
  readonly labels: readonly string[]
}

/** A journal in its shells: how far apart they stand, m on the diameter. */
export interface FitPicture extends Common {
  readonly kind: 'fit'
  readonly cold: { readonly vertical: number; readonly horizontal: number }
  readonly warm?: { readonly vertical: number; readonly horizontal: number }
  readonly labels: readonly string[]
}
