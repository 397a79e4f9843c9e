/** Small words before a request that do not change it. */
export const LEADS: ReadonlySet<string> = new Set(
  [
    'ok okay so and but oh no um uh well hey hmm hm please can you we lets just could now',
    'then yeah yes eh ah i want to dumb question ive heard maybe wait , . - ! ? alright right',
    'first also quick sorry guys dude man mate hello hi like let me would mind erm help',
    'thanks cool good great hold on actually',
    'u pls plz kindly may wanna crap damn shit argh oops whoops ya bro lets any chance you',
    'someone somebody anybody anyone able possible',
  ].flatMap((line) => line.split(' ')),
)
