import type { ExpectedReading } from '../steps/expected-readings.ts';
import type { Procedure } from '../steps/procedure.ts';
import type { ProcedureItem } from '../steps/procedure-item.ts';
import { type ItemState, stateOf } from '../steps/procedure-ticks.ts';
import type { Ticks } from '../study/ticks.ts';
import { printedMark } from './procedure-html.ts';
import { sayAbort, warnings } from './procedure-text.ts';

/** A procedure as Markdown with boxes to tick. */
export function procedureMarkdown(procedure: Procedure, ticks: Ticks): string {
  const { study, step, title, about, items, changes } = procedure;
  let phase = '';
  const parts = items.map((item) => {
    const head = item.phase === phase ? '' : `## ${capital(item.phase)}\n\n`;
    phase = item.phase;
    return `${head}${itemMarkdown(item, stateOf(item, ticks))}`;
  });
  const numbers = changes.filter(({ work }) => work === 'number').map(({ does }) => plain(does));
  return `${[
    printedMark,
    `# ${plain(title)}`,
    `${plain(study)}, step \`${step}\`. ${plain(about)}`.trim(),
    ...numbers,
    ...warnings(procedure, ticks).map((each) => `**${plain(each)}**`),
    ...parts,
  ].join('\n\n')}\n`;
}

function itemMarkdown(item: ProcedureItem, state: ItemState): string {
  const lines = [
    ...(state.state === 'done' ? [`done ${state.at}`] : []),
    ...item.details.map(plain),
    ...(item.stop ? [`**Stop:** ${plain(item.stop)}`] : []),
    ...item.cautions.map((each) => `⚠ ${plain(each)}`),
  ];
  const list = lines.map((line) => `    - ${line}`);
  return [
    `- [${state.state === 'done' ? 'x' : ' '}] **${item.number}.** ${plain(item.does)}`,
    ...list,
    ...(item.readings.length > 0 ? ['', ...readingsMarkdown(item.readings)] : []),
  ].join('\n');
}

function readingsMarkdown(readings: readonly ExpectedReading[]): string[] {
  return [
    '| instrument | expected | 95 % | stop and think | break off | read |',
    '|---|---|---|---|---|---|',
    ...readings.map(
      ({ title, expected, low, high, think, abort }) =>
        `| ${plain(title)} | ${expected.text} | ${low.text} to ${high.text} | ${think ? `> ${think.text}` : 'break off first'} | ${abort ? sayAbort(abort) : 'no limit known'} | |`,
    ),
  ];
}

/** Text as text: nothing in a study becomes a heading, a link or markup. */
function plain(text: string): string {
  return text.replace(/[\r\n]+/g, ' ').replace(/[\\*_[\]<>|#]/g, (sign) => `\\${sign}`);
}

function capital(text: string): string {
  return text[0].toUpperCase() + text.slice(1);
}
