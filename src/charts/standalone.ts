const style = `svg{color:#1d1c1a;--paper:#fff;--limit:#b3261e;background:var(--paper);font-family:"DejaVu Sans",Verdana,sans-serif;fill:currentColor}
text{fill:currentColor}.chart-title,.chart-figure{font-weight:600}.chart-note,.chart-tick{fill-opacity:.78}
@media (prefers-color-scheme:dark){svg{color:#eceae4;--paper:#17181a;--limit:#ff8a7a}}`;

/** A picture as a file of its own: with its name space and the few rules that a page would bring, in light and dark. */
export function standalone(svg: string): string {
  return svg.replace(
    /^<svg([^>]*)>/,
    (_, attributes) => `<svg xmlns="http://www.w3.org/2000/svg"${attributes}><style>${style}</style>`,
  );
}
