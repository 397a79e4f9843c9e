/**
 * What a shop's page and the guide in its frame say to each other. Everything is plain
 * data under one member, so that messages of others on the same page are never taken
 * for ours.
 */

/** From the host: who it is; the frame answers only an origin that its shop allows. */
export interface Hello {
  readonly mainstay: 'hello'
}

/** From the frame: how high its page is, px. */
export interface Height {
  readonly mainstay: 'height'
  readonly height: number
}

/** From the frame: what it shows now. */
export interface Shown {
  readonly mainstay: 'shown'
  readonly shop: string
  readonly page: string
  /** The answers as the canonical query string. */
  readonly link: string
  readonly answers: number
  /** Id of the called route; '' when contradictory answers withhold it; undefined while none may be shown. */
  readonly route?: string | undefined
  readonly confidence?: string | undefined
  readonly sentence?: string | undefined
}

export type FrameMessage = Height | Shown

/** A message of the frame, or undefined when it is someone else's or not of our shape. */
export function frameMessage(data: unknown): FrameMessage | undefined {
  if (typeof data !== 'object' || data === null) return undefined
  const { mainstay, height, link } = data as Record<string, unknown>
  if (mainstay === 'height' && Number.isFinite(height)) return data as Height
  return mainstay === 'shown' && typeof link === 'string' ? (data as Shown) : undefined
}

/** Whether a message is the host's hello. */
export function isHello(data: unknown): data is Hello {
  return (data as Partial<Hello> | null)?.mainstay === 'hello'
}
