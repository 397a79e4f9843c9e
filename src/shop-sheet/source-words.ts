import type { Source } from '../../shared/assessment.ts'

const WORDS: Readonly<Record<Source['kind'], string>> = {
  published: '',
  practice: 'common practice',
  memory: 'from memory',
  computed: 'worked out from this build',
  said: '',
}

/** Where a limit is from, in a few words. */
export function shortSource({
  kind,
  cite = '',
}: {
  kind: Source['kind']
  cite?: string | undefined
}): string {
  return [WORDS[kind], cite].filter((word) => word !== '').join(': ') || 'as you said'
}
