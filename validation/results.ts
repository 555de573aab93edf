import type { Figure, Tier, Topic, Trap } from './topic.ts';

const fields = ['electrical', 'thermal', 'mechanics', 'chemistry', 'sensing', 'metrology'] as const;
const tiers: readonly Tier[] = ['A', 'B', 'C'];

/** All topics as one Markdown page: counts, then a table a topic. */
export function writeResults(topics: readonly Topic[]): string {
  const sorted = [...topics].sort(
    (one, other) => fields.indexOf(one.field) - fields.indexOf(other.field) || (one.title < other.title ? -1 : 1),
  );
  return `${[heading, countsOf(sorted), ...sorted.map(writeTopic)].join('\n\n')}\n`;
}

const heading = `# Published figures beside computed ones

Written by the tests from \`topics/*.ts\`; \`npm run results\` writes it anew.
A figure is met when the difference is within its tolerance, in the figure's own unit. A law that is one per cent off would not
meet it, unless its row says that one per cent can't show.

Tier A: a standard or a certified table. B: a published worked example. C: an independent program or a closed form.`;

function countsOf(topics: readonly Topic[]): string {
  const count = (field: Topic['field'] | null, tier: Tier | null) =>
    topics
      .filter((topic) => field === null || topic.field === field)
      .flatMap(({ figures }) => figures)
      .filter((figure) => tier === null || figure.tier === tier).length;
  const row = (name: string, field: Topic['field'] | null) => [
    name,
    ...[...tiers, null].map((tier) => `${count(field, tier)}`),
    `${topics.filter((topic) => field === null || topic.field === field).flatMap(({ traps = [] }) => traps).length}`,
  ];
  return table(
    ['field', ...tiers.map((tier) => `tier ${tier}`), 'figures', 'traps'],
    [...fields.map((field) => row(field, field)), row('all', null)],
  );
}

function writeTopic({ title, field, figures, traps = [], unchecked = [] }: Topic): string {
  const parts = [`## ${title} (${field})`];
  if (figures.length > 0)
    parts.push(
      table(
        ['what', 'published', 'computed', 'difference', 'tolerance', 'tier', 'source; where the tolerance comes from'],
        figures.map(figureRow),
      ),
    );
  if (traps.length > 0)
    parts.push(
      'Published, but not met because they contradict their own inputs:',
      table(['what', 'published', 'computed', 'source', 'what is wrong'], traps.map(trapRow)),
    );
  if (unchecked.length > 0)
    parts.push('Unchecked for want of a published figure:', unchecked.map((it) => `- ${it}`).join('\n'));
  return parts.join('\n\n');
}

function figureRow({ what, published, computed, tolerance, tier, source, why, coarse }: Figure): string[] {
  const digits = `${source}; ${why}${coarse === undefined ? '' : `; one per cent doesn't show: ${coarse}`}`;
  const difference = writeDifference(computed - published, tolerance);
  return [what, writeNumber(published), writeNumber(computed), difference, writeNumber(tolerance), tier, digits];
}

function trapRow({ what, published, computed, source, reason }: Trap): string[] {
  return [what, writeNumber(published), writeNumber(computed), source, reason];
}

/** Six significant digits: enough to compare, few enough not to depend on the last bits of the machine. */
function writeNumber(value: number): string {
  const text = `${Number(value.toPrecision(6))}`;
  return text.replace('e+', 'e');
}

/** To a hundredth of its tolerance. */
function writeDifference(difference: number, tolerance: number): string {
  if (tolerance === 0) return '0';
  const step = 10 ** (Math.floor(Math.log10(tolerance)) - 2);
  const rounded = Math.round(difference / step) * step;
  return rounded === 0 ? '0' : writeNumber(Number(rounded.toPrecision(3)));
}

function table(headings: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]) => `| ${cells.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |`;
  return [line(headings), line(headings.map(() => '---')), ...rows.map(line)].join('\n');
}
