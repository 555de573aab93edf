// What a mutation run found, as a Markdown page and as lines for a terminal.

/** `results`: `{ file, mutants, survivors }` each; `missing`: files not tried; `reasons`: why a survivor may live, by its key. */
export function writeReport(results, missing, reasons) {
  const rows = results.map(({ file, mutants, survivors }) => ({
    file,
    mutants,
    killed: mutants - survivors.length,
    explained: survivors.filter(({ key }) => reasonFor(key, reasons) !== undefined).length,
  }));
  const sum = (name) => rows.reduce((total, row) => total + row[name], 0);
  const all = { file: 'all', mutants: sum('mutants'), killed: sum('killed'), explained: sum('explained') };
  const cells = ({ file, mutants, killed, explained }) => [
    file,
    mutants,
    killed,
    explained,
    `${share(killed, mutants)} %`,
  ];
  const survivors = results.flatMap((result) => result.survivors);
  const text = [
    '# Changed laws that the tests notice',
    'Written by `npm run mutate`. Each operator, constant, function, comparison and result in `src/physics` is changed, one at a time; a mutant is killed when a published figure, a test beside the law, a check of `validation/`, or the worked example of a formula fails. The boards of `validation/boards`, which notice more, are left out here.',
    table(['file', 'mutants', 'killed', 'alive with a reason', 'killed share'], [all, ...rows].map(cells)),
    ...(missing.length > 0 ? [`Not tried yet: ${missing.map(code).join(', ')}.`] : []),
    '## Alive',
    'Reasons stand in `mutant-reasons.json`, by file, line and change, or by file and line for every change of it.',
    table(
      ['place', 'line', 'change', 'reason'],
      survivors.map(({ file, line, key, change }) => [
        `${file}:${line}`,
        code(key.split(' | ')[1]),
        code(change),
        reasonFor(key, reasons) ?? 'open',
      ]),
    ),
  ].join('\n\n');
  const lines = [...rows, all].map(
    ({ file, mutants, killed, explained }) =>
      `${share(killed, mutants).padStart(5)} %  ${String(killed).padStart(4)} of ${String(mutants).padStart(4)}, ${explained} explained  ${file}`,
  );
  return { text: `${text}\n`, lines };
}

/** By the whole key, or by its file and line alone: then it holds for each change of the line. */
function reasonFor(key, reasons) {
  return reasons[key] ?? reasons[key.split(' | ').slice(0, 2).join(' | ')];
}

function share(killed, mutants) {
  return mutants === 0 ? '100' : ((100 * killed) / mutants).toFixed(1);
}

function code(text) {
  return `\`${text.replaceAll('`', "'")}\``;
}

function table(headings, rows) {
  const line = (cells) => `| ${cells.map((cell) => String(cell).replaceAll('|', '\\|')).join(' | ')} |`;
  return [line(headings), line(headings.map(() => '---')), ...rows.map(line)].join('\n');
}
