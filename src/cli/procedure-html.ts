import type { ExpectedReading } from '../steps/expected-readings.ts';
import type { Procedure } from '../steps/procedure.ts';
import type { ProcedureItem } from '../steps/procedure-item.ts';
import { type ItemState, stateOf } from '../steps/procedure-ticks.ts';
import type { Ticks } from '../study/ticks.ts';
import { sayAbort, warnings } from './procedure-text.ts';

/** Stands in every printed procedure, so that nothing else is ever written over. */
export const printedMark = '<!-- a procedure printed by uprate -->';

export function isPrintedProcedure(text: string): boolean {
  return text.slice(0, 200).includes(printedMark);
}

/** A procedure as one self-contained page: to print and tick with a pen, or to read beside the bench. It loads nothing and runs nothing. */
export function procedureHtml(procedure: Procedure, ticks: Ticks): string {
  const { study, step, title, about, items, changes } = procedure;
  let phase = '';
  const parts = items.map((item) => {
    const opens = item.phase !== phase;
    const closes = opens && phase !== '';
    phase = item.phase;
    const head = opens ? `<h2>${safe(item.phase)}</h2>\n<ol start="${item.number}">\n` : '';
    return `${closes ? '</ol>\n' : ''}${head}${itemHtml(item, stateOf(item, ticks))}`;
  });
  const numbers = changes.filter(({ work }) => work === 'number').map(({ does }) => `<p>${safe(does)}</p>`);
  return `<!doctype html>
${printedMark}
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<title>${safe(title)}: procedure</title>
<style>${style}</style>
</head>
<body>
<header>
<p class="quiet">${safe(study)}, step ${safe(step)}</p>
<h1>${safe(title)}</h1>
${about ? `<p>${safe(about)}</p>` : ''}
${numbers.join('\n')}
${warnings(procedure, ticks)
  .map((each) => `<p class="stop">${safe(each)}</p>`)
  .join('\n')}
<p class="signs"><span>Date</span><span>Who</span><span>Room °C</span></p>
</header>
<main>
${parts.join('\n')}
</ol>
</main>
</body>
</html>
`;
}

function itemHtml(item: ProcedureItem, state: ItemState): string {
  const done = state.state === 'done';
  const lines = [
    ...(done ? [`<p class="quiet">done ${safe(state.at)}</p>`] : []),
    ...item.details.map((each) => `<p class="quiet">${safe(each)}</p>`),
    ...(item.stop ? [`<p class="stop"><strong>Stop.</strong> ${safe(item.stop)}</p>`] : []),
    ...item.cautions.map((each) => `<p class="caution"><span aria-hidden="true">⚠</span> ${safe(each)}</p>`),
    ...(item.readings.length > 0 ? [readingsHtml(item.readings)] : []),
  ];
  const box = `<span class="box" role="img" aria-label="${done ? 'done' : 'to do'}">${done ? '✓' : ''}</span>`;
  return `<li value="${item.number}">${box}<div><p><b>${item.number}</b> ${safe(item.does).replace(/`([^`]+)`/g, '<code>$1</code>')}</p>\n${lines.join('\n')}</div></li>`;
}

function readingsHtml(readings: readonly ExpectedReading[]): string {
  const rows = readings.map(({ title, expected, low, high, think, abort }) => {
    const cells: [string, string][] = [
      ['expected', expected.text],
      ['95 %', `${low.text} to ${high.text}`],
      ['stop and think', think ? `> ${think.text}` : 'break off first'],
      ['break off', abort ? sayAbort(abort) : 'no limit known'],
      ['read', ''],
    ];
    return `<tr><th scope="row">${safe(title)}</th>${cells.map(([name, text]) => `<td data-name="${name}">${safe(text)}</td>`).join('')}</tr>`;
  });
  return `<table><thead><tr><th scope="col">instrument</th><th scope="col">expected</th><th scope="col">95 %</th><th scope="col">stop and think</th><th scope="col">break off</th><th scope="col">read</th></tr></thead><tbody>
${rows.join('\n')}
</tbody></table>`;
}

/** Text from a study is text, never markup. */
function safe(text: string): string {
  return text.replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`);
}

const style = `
:root { color-scheme: light; }
* { box-sizing: border-box; }
body { font: 16px/1.45 system-ui, sans-serif; color: #1b1d1f; background: #fff; max-width: 52rem; margin: 0 auto; padding: 1rem; overflow-wrap: anywhere; }
h1 { font-size: 1.5rem; line-height: 1.2; margin: 0 0 .5rem; }
h2 { font-size: 1rem; margin: 1.5rem 0 .25rem; border-bottom: 2px solid #1b1d1f; break-after: avoid; }
h2::first-letter { text-transform: uppercase; }
p { margin: .2rem 0; }
ol { list-style: none; margin: 0; padding: 0; }
li { display: flex; gap: .75rem; padding: .6rem 0; border-bottom: 1px solid #c9ced3; break-inside: avoid; }
li > div { flex: 1; min-width: 0; }
.box { flex: none; width: 1.6rem; height: 1.6rem; border: 2px solid #1b1d1f; border-radius: 3px; text-align: center; line-height: 1.4rem; font-weight: 700; }
.quiet { color: #4a5056; font-size: .9rem; }
.stop { border-left: 4px solid #a3261b; padding-left: .5rem; margin: .35rem 0; }
.caution { background: #fff3d6; border-left: 4px solid #8a5a00; padding: .2rem .5rem; font-size: .9rem; margin: .35rem 0; print-color-adjust: exact; -webkit-print-color-adjust: exact; }
.signs { display: flex; flex-wrap: wrap; gap: 1rem; margin-top: 1rem; }
.signs span { flex: 1 1 8rem; border-bottom: 1px solid #1b1d1f; padding-bottom: 1.2rem; font-size: .8rem; color: #4a5056; }
table { width: 100%; border-collapse: collapse; font-size: .9rem; font-variant-numeric: tabular-nums; margin-top: .5rem; }
th, td { text-align: left; padding: .25rem .4rem; border: 1px solid #9aa1a8; vertical-align: top; overflow-wrap: normal; }
td[data-name="read"] { min-width: 4.5rem; }
@media screen and (max-width: 40rem) {
  table, tbody, tr, th, td { display: block; border: 0; padding: .1rem 0; }
  thead { display: none; }
  tr { border: 1px solid #9aa1a8; padding: .3rem .5rem; margin: .4rem 0; }
  td { display: flex; justify-content: space-between; gap: 1rem; }
  td::before { content: attr(data-name); color: #4a5056; }
  td[data-name="read"] { border-bottom: 1px solid #1b1d1f; min-height: 1.8rem; }
}
@media print {
  @page { margin: 14mm; }
  body { max-width: none; padding: 0; font-size: 10.5pt; }
}
`;
