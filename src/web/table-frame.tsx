import type { ComponentChildren } from 'preact';
import { CopyButton } from './copy.tsx';

/** A wide table that scrolls by itself on a narrow screen, and can be copied into a spreadsheet. */
export function TableFrame({
  name,
  text,
  children,
}: {
  name: string;
  text: () => string;
  children: ComponentChildren;
}) {
  return (
    <div class="table">
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
      <section class="scroll" aria-label={name} tabIndex={0}>
        <table>{children}</table>
      </section>
      <CopyButton text={text} label={`Copy as text for a spreadsheet: ${name}`}>
        Copy as text
      </CopyButton>
    </div>
  );
}
