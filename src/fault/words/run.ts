import type { FaultData, Sentences } from '../fault.ts';

type Words = Record<string, (data: FaultData) => Sentences>;

const list = (names: FaultData[string]) => (Array.isArray(names) && names.length > 0 ? names.join(', ') : 'none');

export const runWords = {
  'run/empty': () => ({
    found: 'the log holds no header and no readings',
    expected: 'a header line and readings below it',
    remedy: 'check that the logger had written its file when it was copied',
  }),
  'run/header-only': () => ({
    found: 'the log has a header and no readings',
    expected: 'at least one line of readings below the header',
    remedy: 'check that the logger had written its file when it was copied',
  }),
  'run/binary': (d) => ({
    found: `this is no text: byte ${d.byte} of it is zero`,
    expected: 'a text log with a header line and separated values',
    remedy: 'export the recording as text (CSV) from where it comes',
  }),
  'run/encoding': (d) => ({
    found: `the log is written in ${d.encoding}`,
    expected: 'UTF-8, with or without a byte order mark',
    remedy: `save it as UTF-8, for example with \`iconv -f ${d.encoding} -t UTF-8\``,
  }),
  'run/not-utf8': (d) => ({
    found: `byte ${d.byte} of the log (hexadecimal ${d.code}) can't be UTF-8; the log may be written in Windows-1252 or Latin-1`,
    expected: 'UTF-8, with or without a byte order mark',
    remedy: 'save it as UTF-8, for example with `iconv -f WINDOWS-1252 -t UTF-8`',
  }),
  'run/line-ends': () => ({
    found: 'this line ends in another way than the lines before: line feed with and without carriage return',
    expected: 'the same line end throughout',
    remedy: 'save the log with one kind of line end; two logs may have been joined here',
  }),
  'run/packed': (d) => ({
    found: `${d.file} ends in .gz but can't be unpacked`,
    expected: 'a whole gzip file',
    remedy: 'copy it again, or unpack it by hand',
  }),
  'run/long-line': (d) => ({
    found: `this line is longer than ${d.bytes} bytes`,
    expected: 'a table of readings, one row a line',
    remedy: 'check that this is a log, and that its line ends have survived',
  }),
  'run/one-column': () => ({
    found: 'only one column is found in the header',
    expected: 'a time column and at least one channel, separated by comma, semicolon, tab or bar',
    remedy: 'give the delimiter with --delimiter',
  }),
  'run/bad-delimiter': (d) => ({
    found: `"${d.delimiter}" is no delimiter that can be used`,
    expected: 'one of: , ; | or a tab',
    remedy: 'give one of these with --delimiter',
  }),
  'run/duplicate-column': (d) => ({
    found: `column "${d.column}" stands twice in the header`,
    expected: 'a different heading for each column; capitals make no difference',
    remedy: 'rename one of them in the log',
  }),
  'run/nameless-column': (d) => ({
    found: `column ${d.number} has no heading`,
    expected: 'a heading for each column',
    remedy: 'name it in the log, or remove a delimiter at the end of the lines',
  }),
  'run/no-time': (d) => ({
    found: 'no column looks like a time',
    expected: 'a heading such as time, timestamp, elapsed_s or date',
    remedy: `give its heading with --time; the columns are: ${list(d.known)}`,
  }),
  'run/no-such-column': (d) => ({
    found: `there is no column "${d.column}"`,
    expected: `one of: ${list(d.known)}`,
    remedy: `give one of these headings with ${d.option}`,
  }),
  'run/no-header': () => ({
    found: 'the first line holds numbers only, no headings',
    expected: 'a header line that names the columns',
    remedy: 'put a line of headings in front, with units, such as time_s,power_W,die_C',
  }),
  'run/reserved-column': (d) => ({
    found: `column "${d.column}" has the name that a run gives to its time`,
    expected: 'another heading than t for what is no time',
    remedy: 'rename it in the log, or give it with --time if it is the time',
  }),
  'run/bad-unit': (d) => ({
    found: `"${d.unit}", given for column "${d.column}", is no unit of a recorded quantity`,
    expected: 'a unit such as W, V, mA, degC, s, MHz, J or %, or nothing for a column without one',
    remedy: 'give another one with --unit',
  }),
  'run/ragged': (d) => ({
    found: `this line has ${d.found} ${d.found === 1 ? 'field' : 'fields'}, the header has ${d.expected}`,
    expected: `${d.expected} fields in every line`,
    remedy: 'complete or remove the line',
  }),
  'run/not-a-number': (d) => ({
    found: `"${d.text}" in column "${d.column}" is no number`,
    expected: 'a number with a decimal point, or an empty field where a reading is missing',
    remedy: 'correct the field or empty it; for a column of words give its heading with --text',
  }),
  'run/not-a-comma-number': (d) => ({
    found: `"${d.text}" in column "${d.column}" is no number`,
    expected: 'a number with a decimal comma, as in the rest of this log, or an empty field where a reading is missing',
    remedy: 'correct the field or empty it; for a column of words give its heading with --text',
  }),
  'run/time-format': (d) => ({
    found: `"${d.text}" in column "${d.column}" is no time that can be read here`,
    expected: 'seconds since the start or since 1970, or date and time of day as in 2026-01-31T14:05:09.25Z',
    remedy: 'rewrite the column so, or give the heading of another one with --time',
  }),
  'run/cut-off': () => ({
    found: 'the log breaks off in this line: it has no line end and something is missing from it',
    expected: 'whole lines',
    remedy: 'copy the log again when the logger has finished, or give --allow-cut to leave this line out',
  }),
  'run/bad-unit-assignment': (d) => ({
    found: `"${d.text}" is not a heading with its unit`,
    expected: "heading=unit, for example --unit 'draw=W'",
    remedy: 'put the equals sign between the heading and the unit',
  }),
  'run/time-missing': (d) => ({
    found: `this line has no time in column "${d.column}"`,
    expected: 'a time in every line',
    remedy: 'complete or remove the line',
  }),
  'run/time-back': (d) => ({
    found: `time goes back here: ${d.now} in column "${d.column}" after ${d.before}`,
    expected: 'times that rise from line to line',
    remedy: 'sort the lines by time, or cut the log where the clock was set',
  }),
  'run/time-twice': (d) => ({
    found: `time stands still here: ${d.now} in column "${d.column}" stood in the line before too`,
    expected: 'times that rise from line to line',
    remedy: 'remove the repeated line',
  }),
  'run/store': (d) => ({
    found: `the store refuses this log: ${d.message}`,
    expected: 'a table of readings',
    remedy: 'look for quotation marks that are not closed; save the log anew as plain CSV',
  }),
  'run/bad-id': (d) => ({
    found: `"${d.id}" can't be the name of a run`,
    expected: 'lower-case letters, digits and hyphens, beginning with a letter',
    remedy: 'give another one with --id',
  }),
  'run/exists': (d) => ({
    found: `the study has a run "${d.id}" already; nothing was changed`,
    expected: 'a new name',
    remedy: 'give another one with --id, or remove the folder of that run',
  }),
  'run/no-file': (d) => ({
    found: `there is no log "${d.file}"`,
    expected: 'a file that exists',
    remedy: 'check the spelling, and the folder the command is given in',
  }),
  'run/no-plain-file': (d) => ({
    found: `"${d.file}" is a folder or a device`,
    expected: 'a log file',
    remedy: 'name a file',
  }),
  'run/open-quote': () => ({
    found: 'a quotation mark in this line has no other one to close it',
    expected: 'quotation marks in pairs, within one line',
    remedy: 'remove it, or write it twice if it belongs to the text',
  }),
  'run/rows': (d) => ({
    found: `${d.file} gives ${d.rows} rows of readings from ${d.lines} lines`,
    expected: 'one row from each line',
    remedy: 'if the log was still being written, import it again',
  }),
  'run/no-such-run': (d) => ({
    found: `the study has no run "${d.id}"`,
    expected: Array.isArray(d.known) && d.known.length > 0 ? `one of: ${list(d.known)}` : 'a run; there is none yet',
    remedy: d.near ? `did you mean "${d.near}"?` : '`uprate import` makes one from a log',
  }),
  'run/bad-file': (d) => ({
    found: `${d.file} can't be read: ${d.message}`,
    expected: 'the file as `uprate import` wrote it',
    remedy: 'bring it back from version control, or import the log again',
  }),
  'run/no-power': (d) => ({
    found: `run "${d.run}" has no channel of power`,
    expected: 'a column whose heading states watts, such as power_W',
    remedy: 'rename the column in the log and import it again',
  }),
  'run/one-id': (d) => ({
    found: `one name ("${d.id}") is given for ${d.files} logs`,
    expected: 'one log with --id',
    remedy: 'import them one by one, or leave --id out',
  }),
} satisfies Words;
