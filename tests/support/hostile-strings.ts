import { createRequire } from 'node:module'

/** The published Big List of Naughty Strings, which the package of that name holds as JSON. */
const published = createRequire(import.meta.url)(
  'big-list-of-naughty-strings/blns.json',
) as readonly string[]

/** Further ways out of the places that our pages put a text into. */
const OWN = [
  '"><svg/onload=hostile()>',
  "' autofocus onfocus=hostile() x='",
  '</textarea><script>hostile()</script>',
  '</title><script>hostile()</script>',
  '<!--<script>hostile()//-->',
  '[x](javascript:hostile())',
  '[url=javascript:hostile()]x[/url] [img]x[/img]',
  '![x](https://elsewhere.example/x.png)',
  '=HYPERLINK("https://elsewhere.example","x")',
  '\t=1+1',
  '@SUM(1)',
  'x\r\nBcc: someone@elsewhere.example',
  'x&bcc=someone@elsewhere.example&body=y',
  // biome-ignore lint/suspicious/noTemplateCurlyInString: it is one to be hostile
  '${hostile()} {{constructor.constructor("hostile()")()}}',
]

export const HOSTILE: readonly string[] = [...new Set([...published, ...OWN])].filter(
  (text) => text.trim() !== '',
)

/** Those that could become markup. */
export const MARKUP = HOSTILE.filter((text) => /[<>"'`]|script:|\]\(/i.test(text))

/** Half a character pair becomes the sign for what cannot be read, as it does on its way in. */
export function wellFormed(text: string): string {
  return text.replace(/\p{Surrogate}/gu, '\ufffd')
}
