// Every relative link in a Markdown file of the project leads to a file, and to a heading when it names one.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

const FOLDERS = ['docs', 'examples', 'validation', 'bench'];

export async function checkDocs() {
  const files = [
    ...readdirSync('.'),
    ...FOLDERS.filter((folder) => existsSync(folder)).flatMap((folder) =>
      readdirSync(folder, { recursive: true }).map((name) => join(folder, name)),
    ),
  ].filter((file) => file.endsWith('.md'));
  const links = files.flatMap(findLinks);
  const faults = links.map(judgeLink).filter(Boolean);
  return { said: `${links.length} links in ${files.length} files, ${faults.length} broken`, faults };
}

function findLinks(file) {
  const text = withoutCode(readFileSync(file, 'utf8'));
  return text
    .split('\n')
    .flatMap((line, index) =>
      [...line.matchAll(/\]\(([^)\s]+)[^)]*\)/g)]
        .map((match) => ({ file, line: index + 1, link: match[1] }))
        .filter(({ link }) => !/^[a-z]+:/.test(link)),
    );
}

function judgeLink({ file, line, link }) {
  const [path, heading] = decodeURIComponent(link).split('#');
  const target = path === '' ? file : join(dirname(file), path);
  if (!existsSync(target)) return `${file}:${line}: "${link}" leads to no file`;
  if (heading && target.endsWith('.md') && !headingsOf(target).has(heading))
    return `${file}:${line}: "${link}" leads to no heading`;
  return null;
}

function headingsOf(file) {
  const headings = withoutCode(readFileSync(file, 'utf8')).matchAll(/^#+ +(.*)$/gm);
  return new Set([...headings].map((match) => anchorOf(match[1])));
}

function anchorOf(heading) {
  return heading
    .trim()
    .toLowerCase()
    .replace(/[^\p{Letter}\p{Number}\s_-]/gu, '')
    .replaceAll(/\s/g, '-');
}

/** Fenced blocks become empty lines, so that line numbers stay. */
function withoutCode(text) {
  return text.replace(/^```[\s\S]*?^```/gm, (block) => block.replace(/[^\n]/g, ''));
}
