import type { ConversationView, Question } from '../../src/pages/conversation-view.ts'

/** A question about a quantity, with some of it changed. */
export function questionWith(changes: Partial<Question> = {}): Question {
  return {
    fact: 'boost',
    ask: 'How much boost will it see at most?',
    why: 'Gas force on the caps grows almost in step with boost.',
    assumes: 'Then the guide takes 8 psi and spreads it from 5 to 12.',
    help: 'The highest gauge pressure in the manifold.',
    measure: 'A gauge on the manifold, at full throttle.',
    ...changes,
  }
}

/** A conversation in the middle, with some of it changed. */
export function viewWith(changes: Partial<ConversationView> = {}): ConversationView {
  return {
    units: 'us',
    link: 'v=1&bore=4.03in',
    exchanges: [
      said('layout', 'How do the cylinders stand?', 'V8, cross-plane crank'),
      { ...said('bore', 'What is the bore?', '4.03 in'), origin: 'helper' },
      { ...said('capMaterial', 'What are the caps made of?', 'not known'), origin: 'unknown' },
    ],
    known: [
      known('bore', 'bore', '4.03 in', 'said'),
      known('displacement', 'displacement', '355 cu in', 'derived'),
      known('rodLength', 'rod', '5.7 in', 'assumed'),
      known('nitrousPower', 'nitrous', '75 hp', 'parked'),
    ],
    question: questionWith(),
    sofar: {
      sentence: 'Keep the caps and fit studs.',
      confidence: 'likely',
      isGuess: false,
      href: '/call?v=1',
    },
    givenUp: 0,
    left: 6,
    needed: 0,
    contradictions: [],
    problems: [],
    presets: [],
    ...changes,
  }
}

function said(fact: Question['fact'], question: string, answer: string) {
  return { fact, question, answer, origin: 'said', changeHref: `/?v=1&ask=${fact}` } as const
}

function known(
  key: Question['fact'],
  short: string,
  text: string,
  state: ConversationView['known'][number]['state'],
) {
  const because = state === 'said' ? undefined : 'It follows from what most engines have.'
  return { key, short, text, state, because, changeHref: `/?v=1&ask=${key}` }
}

/** One view for each state that the guide's page can be in. */
export const STATES: Readonly<Record<string, ConversationView>> = {
  start: viewWith({
    link: '',
    exchanges: [],
    known: [],
    sofar: null,
    left: 14,
    needed: 0,
    question: questionWith({ fact: 'layout', ask: 'How do the cylinders stand?' }),
    presets: [
      { id: 'mild', title: 'Mild street', summary: 'Two bolts, 9.5:1.', href: '/preset/mild' },
    ],
  }),
  quantity: viewWith(),
  choice: viewWith({
    question: questionWith({ fact: 'capHistory', ask: 'Are they its own?', value: 'mixed' }),
  }),
  money: viewWith({ question: questionWith({ fact: 'invested', ask: 'What is at stake?' }) }),
  thread: viewWith({ question: questionWith({ fact: 'fastenerThread', ask: 'Which thread?' }) }),
  ratio: viewWith({ question: questionWith({ fact: 'compressionRatio', ask: 'Compression?' }) }),
  refused: viewWith({
    question: questionWith({
      value: '-8',
      unit: 'bar',
      problem: { field: 'boost', code: 'out-of-range', found: '-8 bar', fits: 'give 0 to 90 psi' },
    }),
  }),
  heard: viewWith({
    heard: {
      accepted: [{ key: 'bore', short: 'bore', text: '4.03 in', words: 'thirty over' }],
      unclear: [{ text: 'a healthy cam', why: 'no figure that the guide can use' }],
      reply: '<p>A <strong>register</strong> is a step in the block.</p>',
    },
  }),
  'what-if': viewWith({
    compare: {
      title: '12 psi in place of 8 psi',
      present: 'Keep the caps and fit studs.',
      other: 'Fit steel caps with studs.',
      rows: [{ label: 'Hold margin', now: '1.32', other: '0.96' }],
      keepLink: 'v=1&boost=12psi',
    },
  }),
  withheld: viewWith({
    sofar: { sentence: 'Withheld.', confidence: 'withheld', isGuess: false, href: '/call?v=1' },
    contradictions: [{ title: 'Displacement does not fit', text: 'One of the three is a slip.' }],
    problems: [{ field: 'stroke', code: 'not-a-number', found: 'abc', fits: 'give in or mm' }],
  }),
  done: viewWith({
    question: null,
    left: 0,
    needed: 0,
    sofar: { sentence: 'Keep them.', confidence: 'settled', isGuess: false, href: '/call?v=1' },
  }),
}
