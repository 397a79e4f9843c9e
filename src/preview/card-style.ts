/** Looks of the card: the stylesheet's light palette as literal colours, because a picture has no tokens. */
export const CARD_STYLE = `
.paper{fill:#f3f0e6}.rule{stroke:#dcdccf;stroke-width:1}
.plate{fill:#1b3577}.plate-line{fill:#b9c8ee}.sheet{fill:#fbf9f2;stroke:#b3b6b4;stroke-width:1}
.frame{fill:none;stroke:#67718a;stroke-width:2}.scribe{stroke:#b3b6b4;stroke-width:1.5}
text{font-family:'Source Serif 4';fill:#1a1f29}
.mono{font-family:'IBM Plex Mono';fill:#4a5260}.on-plate{fill:#f7f6ef}
.strong{font-weight:600}.warn{fill:#a32a17}.end{text-anchor:end}.middle{text-anchor:middle}
.block{fill:#dfd9c8;stroke:#1a1f29;stroke-width:1.5}.cap{fill:#cdd3dc;stroke:#1a1f29;stroke-width:1.5}
.section{stroke:none}.hatch-block,.hatch-cap{stroke:#67718a;stroke-width:.7;fill:none}
.fastener{fill:#8f98a8;stroke:#1a1f29;stroke-width:1}.thread{stroke:#4a5260;stroke-width:.8}
.bearing{fill:#c9a86a;stroke:#1a1f29;stroke-width:1}.shaft{fill:#f0eee6;stroke:#1a1f29;stroke-width:1.2}
.ink{stroke:#1a1f29;stroke-width:1.2}.centre-line{stroke:#1f4094;stroke-width:1;stroke-dasharray:12 3 3 3}
.force{stroke:#a32a17;stroke-width:5}.clamp{stroke:#24603c;stroke-width:4}
.force.solid{fill:#a32a17;stroke:none}.clamp.solid{fill:#24603c;stroke:none}
`
