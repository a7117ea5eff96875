import { type Finding, findingLine } from '../../src/intake/finding.ts';
import type { BrokenFile } from './broken-file.ts';

/** The list of broken files that docs/broken-files.md shows, with the line each is answered by. */
export function listOfFiles(told: ReadonlyMap<BrokenFile, readonly Finding[]>): string {
  const groups = Map.groupBy(told.keys(), (file) => file.group);
  const parts = [...groups].map(([group, files]) => {
    const rows = files.map((file) => `- ${code(file.name)}\n${answers(told.get(file) ?? [])}`);
    return `## ${capital(group)} (${files.length})\n\n${rows.join('')}`;
  });
  return `${HEAD}\n${parts.join('\n')}`;
}

const HEAD = `# Broken book files, and what is said about each

Made from \`checks/broken-files\` by its test, which holds this page to what the reader says. Each
file differs from a good one in one thing. All are refused whole, with nothing changed in a store,
but for the last group, which is told by \`check\` and not refused.
`;

function answers(findings: readonly Finding[]): string {
  return findings.map((finding) => folded(findingLine(finding, 'book.jsonl'))).join('');
}

/** Markdown folds lines anyway; the source stays within a screen's width. */
function folded(text: string): string {
  const lines: string[] = [];
  let line = ' ';
  for (const word of text.split(' ')) {
    if (line.length + word.length > 95 && line.trim() !== '') {
      lines.push(line);
      line = ' ';
    }
    line += ` ${escaped(word)}`;
  }
  return `${[...lines, line].join('\n')}\n`;
}

function code(text: string): string {
  const short = text.length > 80 ? `${text.slice(0, 79)}…` : text;
  return escaped(short);
}

function escaped(text: string): string {
  return text.replace(/[\\`*_<>[\]]/g, (mark) => `\\${mark}`);
}

function capital(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}
