import { type Html, html } from './html.ts'

const BLOCK = 'M36 14H384V131H324V112H262A52 52 0 0 0 158 112H96V131H36Z'
const CAP = 'M96 112H158A52 52 0 0 0 262 112H324V188L304 212H116L96 188Z'

/** What the guide is about, on its first page: a main cap in its register, and what pulls at it. */
export function startDrawing(): Html {
  return html`<svg class="start-drawing" viewBox="0 0 440 236" role="img" aria-labelledby="start-drawing">
<title id="start-drawing">Section through a main cap: two studs clamp it up against the parting face of the block, its ends sit in the register, and the crankshaft pulls it down and pushes it sideways.</title>
<defs>
<pattern id="start-hatch-block" width="9" height="9" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path class="hatch-soft" d="M0 0V9"/></pattern>
<pattern id="start-hatch-cap" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(-45)"><path class="hatch-soft" d="M0 0V6"/></pattern>
</defs>
<path class="block" d="${BLOCK}"/><path fill="url(#start-hatch-block)" d="${BLOCK}"/>
<path class="cap" d="${CAP}"/><path fill="url(#start-hatch-cap)" d="${CAP}"/>
${stud(127)}
${stud(293)}
<circle class="bearing" cx="210" cy="112" r="52"/>
<circle class="shaft" cx="210" cy="112" r="46"/>
<path class="centre-line" d="M210 2V230M20 112H400M127 26V234M293 26V234"/>
<path class="force" d="M210 112V166M210 112H240"/>
<path class="solid force" d="M204 164L210 180L216 164ZM238 106L254 112L238 118Z"/>
<path class="hair" d="M60 131V150M96 131V150M60 144H96M332 112L376 146M137 190L70 208"/>
<text class="middle small" x="60" y="164">register</text>
<text class="middle small" x="392" y="158">parting face</text>
<text class="force small" x="220" y="103">push</text>
<text class="force small" x="221" y="181">pull</text>
<text class="end small" x="68" y="213">stud</text>
<text class="label" x="46" y="38">block</text>
<text class="label middle" x="262" y="204">cap</text>
</svg>`
}

function stud(x: number): Html {
  return html`<path class="fastener" d="M${x - 8} 44L${x} 38L${x + 8} 44V228H${x - 8}Z"/>
<path class="fastener" d="M${x - 18} 212H${x + 18}V216H${x - 18}ZM${x - 15} 216H${x + 15}V230H${x - 15}Z"/>`
}
