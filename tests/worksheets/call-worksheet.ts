import { app } from '../support/app.ts'

export interface Answer {
  name: string
  inputs: Record<string, unknown>
  results: { id: string; label: string; value: number | null; unit: string; text: string }[]
  steps: {
    title: string
    formula: string
    withNumbers: string
    result: string
    source: { kind: string; cite: string }
  }[]
  notes: string[]
  series?: {
    id: string
    x: { unit: string; values: number[] }
    y: { unit: string; values: number[] }
  }[]
}

/** POST to a worksheet of the public API. */
export async function post(
  name: string,
  body: unknown,
): Promise<{ status: number; type: string; json: Record<string, unknown> }> {
  const response = await app.request(`/api/worksheets/${name}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: typeof body === 'string' ? body : JSON.stringify(body),
  })
  const type = response.headers.get('content-type') ?? ''
  return { status: response.status, type, json: (await response.json()) as Record<string, unknown> }
}

/** An answer's figures by id. Throws the problem document when there is no answer. */
export async function figures(
  name: string,
  body: unknown,
): Promise<{ value: (id: string) => number; answer: Answer }> {
  const { status, json } = await post(name, body)
  if (status !== 200) throw new Error(JSON.stringify(json))
  const answer = json as unknown as Answer
  const value = (id: string): number => {
    const found = answer.results.find((result) => result.id === id)
    if (!found || found.value === null) throw new Error(`no figure ${id}`)
    return found.value
  }
  return { value, answer }
}
