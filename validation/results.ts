import type { CampaignResults, Count, CoverageResult } from './benches/campaigns.ts';
import type { Figure, Tier, Topic, Trap } from './topic.ts';

const fields = ['electrical', 'thermal', 'mechanics', 'chemistry', 'sensing', 'metrology'] as const;
const tiers: readonly Tier[] = ['A', 'B', 'C'];

/** All topics as one Markdown page: counts, then a table a topic. */
export function writeResults(topics: readonly Topic[], campaigns: CampaignResults): string {
  const sorted = [...topics].sort(
    (one, other) => fields.indexOf(one.field) - fields.indexOf(other.field) || (one.title < other.title ? -1 : 1),
  );
  return `${[heading, countsOf(sorted), writeCampaigns(campaigns), ...sorted.map(writeTopic)].join('\n\n')}\n`;
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

/** Figures of the virtual benches; each campaign that hasn't been run says so. */
function writeCampaigns({ coverage, planted, ladders, advice }: CampaignResults): string {
  const missing = 'Not run yet: `npm run benches`.';
  return [
    '## Virtual benches',
    'Boards drawn at random, with hidden true numbers drawn from what their studies state, played by a simulator that shares no solution with the tool. `npm run benches` plays them all and writes these figures anew; `npm test` plays a few.',
    '### The next step’s truth inside the predicted 95 % interval',
    ...(coverage ? Object.entries(coverage).map(([name, result]) => writeCoverage(name, result)) : [missing]),
    '### Planted faults that the fit reports',
    planted
      ? table(
          ['fault', 'benches', 'reported'],
          Object.entries(planted).map(([kind, count]) => [kind, `${count.of}`, percent(count)]),
        )
      : missing,
    '### Ladders climbed by obeying the gate',
    ...(ladders
      ? [
          `${ladders.ladders} ladders, ${ladders.rungs} steps asked about, with what the tool leaves out. A true limit was exceeded at a step that the gate had let through on ${ladders.exceeded.count} ladders (${percent(ladders.exceeded)}).`,
          table(
            ['true room to the closest limit', 'such steps', 'allowed'],
            Object.entries(ladders.allowed).map(([room, count]) => [
              `at least ${room} %`,
              `${count.of}`,
              percent(count),
            ]),
          ),
          'The worst that were let through:',
          ladders.worst.map((it) => `- ${it}`).join('\n'),
        ]
      : [missing]),
    '### The measurement advised first',
    ...(advice
      ? [
          `Within a tenth of the best by brute force on ${advice.within.count} of ${advice.within.of} boards (${percent(advice.within)}). The worst:`,
          advice.worst.map((it) => `- ${it}`).join('\n'),
        ]
      : [missing]),
  ].join('\n\n');
}

function writeCoverage(name: string, { benches, withoutResult, falseAlarms, inside, size }: CoverageResult): string {
  return [
    `Virtual board ${name}: ${benches} benches, ${withoutResult} without a result, ${falseAlarms} false alarms (${percent({ of: benches, count: falseAlarms })}).`,
    table(
      ['predicted', 'inside', 'error in standard uncertainties, root mean square'],
      Object.entries(inside).map(([output, count]) => [output, percent(count), `${size[output]}`]),
    ),
  ].join('\n\n');
}

function percent({ count, of }: Count): string {
  const value = (100 * count) / of;
  return `${value.toFixed(count === 0 || count === of ? 0 : value < 1 ? 2 : 1)} %`;
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
      table(
        ['what', 'published', 'computed', 'difference', 'more than', 'source; where that comes from', 'what is wrong'],
        traps.map(trapRow),
      ),
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

function trapRow({ what, published, computed, tolerance, why, source, reason }: Trap): string[] {
  const difference = writeNumber(Number((computed - published).toPrecision(3)));
  return [
    what,
    writeNumber(published),
    writeNumber(computed),
    difference,
    writeNumber(tolerance),
    `${source}; ${why}`,
    reason,
  ];
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
