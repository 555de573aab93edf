/** SVG text made by the charts as part of the page. They write the markup and escape every word from a file; their tests hold them to it. */
export function Picture({ svg, inline = false }: { svg: string; inline?: boolean }) {
  const content = { dangerouslySetInnerHTML: { __html: svg } };
  return inline ? <span class="picture" {...content} /> : <div class="picture" {...content} />;
}
