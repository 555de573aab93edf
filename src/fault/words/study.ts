import type { FaultData, Sentences } from '../fault.ts';

type Words = Record<string, (data: FaultData) => Sentences>;

const list = (names: FaultData[string]) => (Array.isArray(names) && names.length > 0 ? names.join(', ') : 'none');
const meant = (nearest: FaultData[string]) => (nearest ? `did you mean "${nearest}"?` : undefined);
const inField = (field: FaultData[string]) => (field ? `in ${field}` : 'at the top of the study');
const atStep = (d: FaultData) => (d.step ? ` (at step "${d.step}")` : '');
const isOne = (count: FaultData[string], one: string, many: string) => (count === 1 ? `1 ${one}` : `${count} ${many}`);

/** What the YAML reader stumbled over, by its code. */
const yaml: Record<string, string> = {
  TAB_AS_INDENT: 'a tab is used to indent',
  BAD_INDENT: 'this line is indented differently from the lines it belongs to, or a bracket above it is not closed',
  BLOCK_AS_IMPLICIT_KEY: 'a second ": " stands in this line, or the line is indented too far',
  MULTILINE_IMPLICIT_KEY: 'this text is neither a key with ": " behind it nor part of the value above',
  MISSING_CHAR: 'a character is missing here: a closing quote or bracket, a ":" or a ","',
  UNEXPECTED_TOKEN: 'this does not belong here',
  MULTIPLE_DOCS: 'a second document begins here ("---")',
  BAD_SCALAR_START: 'a value can not begin with this character unless it is quoted',
  BAD_DQ_ESCAPE: 'a "\\" in a double-quoted text is followed by a letter that means nothing',
};

export const studyWords = {
  'study/not-utf8': () => ({
    found: 'this file is not text in UTF-8',
    expected: 'a study as UTF-8 text',
    remedy: 'save it as UTF-8 in an editor, or name the right file',
  }),
  'study/binary': () => ({
    found: 'this file holds characters that text does not have: it is probably not a text file',
    expected: 'a study as UTF-8 text',
    remedy: 'name the study file, or remove the characters',
  }),
  'study/too-big': (d) => ({
    found: `this file holds ${(Number(d.size) / 1e6).toFixed(0)} MB`,
    expected: `a study of at most ${Number(d.most) / 1e6} MB`,
    remedy: 'name the study file; recordings belong into runs/',
  }),
  'study/long-line': (d) => ({
    found: `this line is longer than ${d.most} characters`,
    expected: 'a study written by a person, a field a line',
    remedy: 'name the study file; recordings belong into runs/',
  }),
  'study/empty': () => ({
    found: 'this file is empty',
    expected: 'a study, which begins with "uprate: 1"',
    remedy: 'begin with a copy of examples/mini-pc/study.yaml, which explains each field',
  }),
  'study/no-study-file': (d) => ({
    found: `the folder "${d.path}" holds no study.yaml`,
    expected: 'a study folder, or the study file itself',
    remedy: 'begin with a copy of examples/mini-pc/study.yaml, or name another folder',
  }),
  'study/yaml': (d) => ({
    found: yaml[String(d.code)] ?? `this is not YAML: ${d.message}`,
    expected: 'YAML: "key: value" lines, indented with spaces',
    remedy: 'correct this first; the rest of the file can not be read until then',
  }),
  'study/too-deep': () => ({
    found: 'maps and lists are nested too deeply',
    expected: 'a study, which is about ten levels deep',
  }),
  'study/alias': () => ({
    found: 'an anchor (&name) or an alias (*name) stands here',
    expected: 'values written out: a study has no anchors and no aliases',
    remedy: 'write the value itself here; text that begins with & or * needs quotes',
  }),
  'study/tag': () => ({
    found: 'a YAML tag (!name) stands here',
    expected: 'plain values: a study has no tags',
    remedy: 'remove the tag; text that begins with ! needs quotes',
  }),
  'study/bad-key': () => ({
    found: 'this can not be the name of a field',
    expected: 'a plain word in front of the ":"',
  }),
  'study/duplicate-key': (d) => ({
    found: `"${d.name}" stands here a second time`,
    expected: `each name once; it is first used in line ${d.line}`,
    remedy: 'rename or remove one of the two',
  }),
  'study/not-a-study': () => ({
    found: 'this is not a study',
    expected: 'a map of fields that begins with "uprate: 1"',
  }),
  'study/version': (d) => ({
    found: `the version of the format is "${d.found}"`,
    expected: 'uprate: 1',
    remedy: 'use the version of the tool that the study was made with, or correct the number',
  }),
  'study/unknown-key': (d) => ({
    found: `there is no field "${d.key}" ${inField(d.field)}${atStep(d)}`,
    expected: `one of: ${list(d.keys)}`,
    remedy: meant(d.nearest) ?? 'remove it; a note for readers can go into "note" or a comment (#)',
  }),
  'study/missing-key': (d) => ({
    found: `"${d.key}" is missing ${inField(d.field)}${atStep(d)}`,
    expected:
      Array.isArray(d.choices) && d.choices.length > 0
        ? `${d.key}: one of ${list(d.choices)}`
        : d.about
          ? `${d.key}: ${d.about}`
          : `${d.key}`,
    remedy: 'add it',
  }),
  'study/wrong-shape': (d) => ({
    found: `${d.field || 'the study'} is ${d.found}${atStep(d)}`,
    expected: `${d.expected}`,
    remedy: d.expected === 'text' ? 'put quotes around it if it is meant as text' : undefined,
  }),
  'study/not-a-quantity': (d) => ({
    found: `${d.field} is ${d.found}${atStep(d)}`,
    expected: `a number with its unit: ${d.about}`,
    remedy: 'write it as text such as 5 mΩ ± 1 %, or as { value: 5 mΩ ± 1 %, source: measured }',
  }),
  'study/rating-word': (d) => ({
    found: `${d.field} is "${d.text}"${atStep(d)}`,
    expected: 'a number with its unit, or open (not known), or none (does not apply)',
    remedy: meant(d.nearest) ?? 'write the rating, or open if it is not known',
  }),
  'study/not-a-count': (d) => ({
    found: `${d.field} is ${d.text}${atStep(d)}`,
    expected: `a whole number from ${d.least}`,
  }),
  'study/out-of-range': (d) => ({
    found: `"${d.text}" can't be ${d.kind} here`,
    expected: `${d.expected}`,
    remedy: 'check the sign and the digits',
  }),
  'study/bad-name': (d) => ({
    found: `"${d.name}" can't be a name`,
    expected: 'lower-case letters, digits and hyphens, a letter first, such as core-sense',
    remedy: 'what people call it can go into "title"',
  }),
  'study/wrong-choice': (d) => ({
    found: `${d.field} is "${d.text}"${atStep(d)}`,
    expected: `one of: ${list(d.choices)}`,
    remedy: meant(d.nearest),
  }),
  'study/one-of': (d) => ({
    found: `${d.field} holds ${list(d.found)}${atStep(d)}`,
    expected: `exactly one of: ${list(d.keys)}`,
    remedy:
      meant(d.nearest) ??
      (Array.isArray(d.found) && d.found.length > 1 ? 'make one list entry ("- ") of each' : undefined),
  }),
  'study/too-few': (d) => ({
    found: `${d.field} has ${isOne(d.found, 'entry', 'entries')}${atStep(d)}`,
    expected: `at least ${d.least}`,
  }),
  'study/too-many': (d) => ({
    found: `${d.field} has ${isOne(d.found, 'entry', 'entries')}${atStep(d)}`,
    expected: `at most ${d.most}`,
  }),
  'study/empty-text': (d) => ({
    found: `${d.field} is empty`,
    expected: 'some text',
  }),
  'study/unknown-name': (d) => ({
    found: d.isPart
      ? `${d.field} names "${d.name}", which is a part but no sense point${atStep(d)}`
      : `${d.field} names "${d.name}", which does not exist${atStep(d)}`,
    expected:
      Array.isArray(d.names) && d.names.length > 0
        ? `${toWhat[String(d.to)]}: ${list(d.names)}`
        : `${toWhat[String(d.to)]}`,
    remedy: meant(d.nearest),
  }),
  'study/beyond': (d) => ({
    found: `${d.field} is ${d.text}`,
    expected: `${d.about}`,
    remedy: 'write a number in this range',
  }),
  'study/named-twice': (d) => ({
    found: `${d.field} names "${d.name}" twice`,
    expected: 'each number once',
    remedy: 'leave one out, or name the other one that was meant',
  }),
  'study/offset-kind': (d) => ({
    found: `"${d.shared}" is an offset in the unit of ${d.offset}, but "${d.name}" is ${d.kind}`,
    expected: 'numbers of the same kind as the offset; a factor can enter any',
    remedy: 'write a factor such as 100 % ± 0.2 %, or leave this number out',
  }),
  'study/exact-correlated': (d) => ({
    found: `"${d.name}" has no uncertainty, so there is nothing that could be correlated`,
    expected: 'two numbers that both have an uncertainty',
    remedy: 'give it one, or leave the correlation out',
  }),
  'study/correlated-twice': (d) => ({
    found: `the correlation between ${list(d.names)} is stated a second time`,
    expected: 'one coefficient for each pair',
    remedy: 'leave one out',
  }),
  'study/impossible-correlations': (d) => ({
    found: `no numbers can be correlated like this: ${list(d.names)}`,
    expected: 'coefficients that hold together; a pair that is not stated counts as uncorrelated',
    remedy: 'state the missing pairs too, or name what the numbers have in common under "shared" instead',
  }),
  'study/correlated-learnt': (d) => ({
    found: `"${d.name}" is to be learnt, but stands under "correlations"`,
    expected: 'numbers that are known independently of each other',
    remedy: 'name what they have in common under "shared", and learn that and the numbers by themselves',
  }),
  'study/no-supply': (d) => ({
    found: `no part is a supply: nothing feeds this board${atStep(d)}`,
    expected: 'at least one part of kind supply',
    remedy: `add the adapter or battery as a part of kind supply; the parts are ${list(d.parts)}`,
  }),
  'study/fed-by-load': (d) => ({
    found: `"${d.name}" is fed by "${d.load}", which is a load${atStep(d)}`,
    expected: 'a supply, conductor, sense or regulator: a load feeds nothing',
  }),
  'study/cycle': (d) => ({
    found: `parts feed each other in a circle: ${Array.isArray(d.way) ? d.way.join(' → ') : d.way}${atStep(d)}`,
    expected: 'a way back to a supply from every part (each arrow reads "is fed by")',
    remedy: 'correct "fed-by" of one of them',
  }),
  'study/resistance-and-wire': (d) => ({
    found: `"${d.name}" has both a resistance and a wire${atStep(d)}`,
    expected: 'one of the two',
    remedy: 'keep the measured resistance if there is one',
  }),
  'study/no-resistance': (d) => ({
    found: `"${d.name}" has neither a resistance nor a wire${atStep(d)}`,
    expected: 'resistance: 12 mΩ ± 10 %, or wire with gauge and length',
  }),
  'study/reserved-name': (d) => ({
    found: `"${d.name}" can't be the name of a heat node`,
    expected: 'another name: ambient is the surroundings, and its temperature stands in heat.ambient',
    remedy: 'remove the node, or rename it',
  }),
  'study/self-link': (d) => ({
    found: `this link joins "${d.node}" to itself${atStep(d)}`,
    expected: 'two different nodes',
  }),
  'study/passed-twice': (d) => ({
    found: `air node "${d.node}" already stands in stream "${d.stream}"${atStep(d)}`,
    expected: 'each air node once, in one stream',
    remedy: 'give each stretch of air a node of its own',
  }),
  'study/no-way-out': (d) => ({
    found: `heat can't leave node "${d.node}": no links or streams lead from it to ambient${atStep(d)}`,
    expected: 'a way to ambient from every node',
    remedy: 'add the link that is missing, or let a stream pass the node',
  }),
  'study/no-follower': (d) => ({
    found: `limiter "${d.limiter}" regulates, but no load follows the processor${atStep(d)}`,
    expected: 'at least one load with "follows: processor": that is what gives way',
  }),
  'study/derating-order': (d) => ({
    found: `the derating ends at ${d.end} and begins at ${d.from}${atStep(d)}`,
    expected: 'an end above the beginning',
  }),
  'study/curve-order': (d) => ({
    found: `the loss curve goes from ${d.before} to ${d.current}${atStep(d)}`,
    expected: 'currents that rise from point to point',
  }),
  'study/nothing-pulls': (d) => ({
    found: `the plate has no screws${atStep(d)}`,
    expected: 'at least one screw or spring that pulls it down',
  }),
  'study/nothing-carries': (d) => ({
    found: `nothing carries the plate${atStep(d)}`,
    expected: 'at least one of pads, dies and stops',
  }),
  'study/pad-crushed': (d) => ({
    found: `a pad can't be compressed by ${d.strain}${atStep(d)}`,
    expected: 'a strain of less than 100 %',
  }),
  'study/pad-curve-order': (d) => ({
    found: `the pad's curve goes from (${d.before}) to (${d.point})${atStep(d)}`,
    expected: 'strains and pressures that rise from point to point; (0, 0) is understood',
  }),
  'study/pressure-and-plate': (d) => ({
    found: `${d.field} has both a pressure and a die that it is pressed by${atStep(d)}`,
    expected: 'one of the two',
    remedy: 'keep "pressed-by" to let the pressure follow from the plate',
  }),
  'study/no-pressure': (d) => ({
    found: `${d.field} has no pressure${atStep(d)}`,
    expected: 'pressure: 300 kPa ± 20 %, or pressed-by: the name of a die of the plate',
  }),
  'study/destroys-surface': (d) => ({
    found: `${d.material} must not touch ${d.surface}: ${d.reason}${atStep(d)}`,
    expected: `another material or another surface (how long it takes: ${d.timeScale}; source: ${d.source})`,
    remedy: 'use a paste or a phase-change material here, or a cooler of nickel-plated copper',
  }),
  'study/attacks-surface': (d) => ({
    found: `${d.material} on ${d.surface}: ${d.reason}${atStep(d)}`,
    expected: `a joint that is looked after (how long it takes: ${d.timeScale}; source: ${d.source})`,
    remedy: 'compare the temperature drop with the first one every few months, and renew the joint when it has grown',
  }),
  'study/unknown-pair': (d) => ({
    found: `nothing is known about ${d.material} on ${d.surface}; that is no permission${atStep(d)}`,
    expected: 'a surface of which it is known that it bears this metal',
    remedy: 'ask the maker, or try it on a piece that may be lost',
  }),
  'study/surfaces-not-named': (d) => ({
    found: `${d.material} can destroy what it touches, and no surfaces are named${atStep(d)}`,
    expected: `${d.field}: [silicon, nickel-plated-copper], every surface that it touches or may reach`,
    remedy: 'look at the cooler’s base: aluminium is destroyed, bare copper dries the joint',
  }),
  'study/duplicate-step': (d) => ({
    found: `there is a second step "${d.id}"`,
    expected: `each step's id once; it is first used in line ${d.line}`,
    remedy: 'rename one of the two',
  }),
  'study/changed-at-first': () => ({
    found: 'the first step changes the board',
    expected: 'the board as delivered in the first step, so that there is something to compare with',
    remedy: 'add a step without changes before it',
  }),
  'study/no-such-path': (d) => ({
    found: `step "${d.step}" ${d.removed ? 'removes' : 'changes'} ${d.path}, but ${d.reached ? `${d.reached} has` : 'the board has'} no "${d.key}"`,
    expected:
      Array.isArray(d.keys) && d.keys.length > 0
        ? `one of: ${list(d.keys)}`
        : `a field: ${d.reached} is a value and holds no others`,
    remedy: meant(d.near) ?? 'correct the path; it counts from the top, with entries of a list counted from 0',
  }),
  'study/change-twice': (d) => ({
    found: `step "${d.step}" changes ${d.path} twice`,
    expected: 'one change of a field in a step',
    remedy: 'make one change of the two',
  }),
  'study/not-a-time': (d) => ({
    found: `"${d.text}" is not a time`,
    expected: 'a date such as 2026-03-05, or a time in UTC such as 2026-03-05T14:10Z',
  }),
  'study/photo-outside': (d) => ({
    found: `"${d.text}" is no picture of this study`,
    expected: 'a path inside the study’s folder, with / between its parts, such as photos/r2.jpg',
    remedy: 'copy the picture into the folder',
  }),
  'study/more-faults': (d) => ({
    found: `and ${d.more} more faults, not shown`,
    remedy: 'correct those above first',
  }),
  'study/no-uncertainty': (d) => ({
    found: `${d.field}: "${d.text}" has no uncertainty${atStep(d)}`,
    expected: 'a tolerance (± 1 %), a range, or a guess (~ 20 %)',
  }),
  'study/reaches-out': (d) => ({
    found: `${d.field}: the uncertainty of "${d.text}" reaches values that it can't have${atStep(d)}`,
    expected: `${d.possible}, over all of it`,
    remedy: 'write it as a range between ends that it can have; a guess of ~ 20 % or more stays above zero',
  }),
  'study/under-and-over': (d) => ({
    found: `limit "${d.limit}" has both "under" and "over"${atStep(d)}`,
    expected: 'one of the two',
    remedy: 'make two limits of it',
  }),
  'study/open-rating': (d) => ({
    found: `${d.field} is ${d.left ? 'not given' : 'open'}${atStep(d)}`,
    expected: `${d.about}`,
    remedy: 'look it up or measure it; write none if it does not apply',
  }),
  'study/changed-meanwhile': (d) => ({
    found: `"${d.path}" has been changed since it was read; it was left as it is`,
    remedy: 'give the command again: it reads what stands there now',
  }),
  'study/no-such-field': (d) => ({
    found: `there is no number at "${d.path}"`,
    expected: 'the address of a number in the study',
    remedy: meant(d.nearest),
  }),
  'study/not-the-last-step': (d) => ({
    found: `steps can't be written behind "${d.step}": "${d.last}" is the last step of the ladder, and stands on it`,
    expected: 'a start from the last step',
    remedy: 'name the last step with --step, or paste the steps where they belong',
  }),
  'study/steps-in-brackets': () => ({
    found: 'the steps of this study stand in brackets',
    expected: 'a list with a dash for each step',
    remedy: 'write the steps under each other, or paste the new ones yourself',
  }),
} satisfies Words;

const toWhat: Record<string, string> = {
  part: 'a part that feeds it',
  node: 'a heat node',
  sense: 'a part of kind sense',
  die: 'a die of the plate',
  limiter: 'a limiter',
  instrument: 'an instrument',
  step: 'a step',
  number: 'a number of the study by its address, such as parts.core-sense.fitted.0.resistance',
};
