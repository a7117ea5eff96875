import { findingLine } from '../../intake/finding.ts';
import { Ledger } from '../../ledger/ledger.ts';
import { checkBook } from '../../rules/check-book.ts';
import { sourceName } from './book-bytes.ts';
import { BOOK_HELP, bookOptions } from './book-options.ts';
import type { Command } from './command.ts';
import { readBookAt } from './open-book.ts';
import { writeJson } from './outlet.ts';

export const check: Command = {
  options: bookOptions,
  takes: ['BOOK'],
  help: `Everything that is not right about a book, one line each: file, line, field, what was said
and what is wanted. An error refuses the book, a warning is only told. Things that only show
in the book as a whole are looked for once every line is readable.

  --json   {"records":n,"findings":[{"line":n,"record":id?,"field":"…","said":…,"wanted":"…",…}]}

Exit code: 0 nothing found, 1 findings, 2 not a book at all.

${BOOK_HELP}

Examples
  cratebook check spring.jsonl
  cratebook check - --json < spring.jsonl`,
  run: async (given, outlet) => {
    const [path = ''] = given.positionals;
    const read = await readBookAt(path, given, outlet);
    const isReadable = read.findings.every((finding) => finding.severity === 'warning');
    const whole =
      isReadable && read.header !== undefined
        ? checkBook({
            ledger: Ledger.ofDistinct(read.records, read.places),
            records: read.records,
            lines: read.lines,
          })
        : undefined;
    const findings = [...read.findings, ...(whole?.inOrder() ?? [])];
    findings.sort((a, b) => a.line - b.line);
    const omitted = read.omitted + (whole?.omitted ?? 0);
    const records = read.records.length;
    if (given.has('json')) {
      // JSON has no "undefined": nothing said is null.
      const told = findings.map((finding) => ({ ...finding, said: finding.said ?? null }));
      await writeJson(outlet, { records, findings: told, ...(omitted > 0 ? { omitted } : {}) });
    } else {
      for (const finding of findings) {
        await outlet.write(`${finding.severity}: ${findingLine(finding, sourceName(path))}\n`);
      }
      await outlet.write(sumLine(records, findings.length, omitted));
    }
    if (read.header === undefined) return 2;
    return findings.length === 0 ? 0 : 1;
  },
};

function sumLine(records: number, findings: number, omitted: number): string {
  const told = findings === 0 ? 'nothing found' : `${findings} findings`;
  const rest = omitted === 0 ? '' : `, and ${omitted} more that are not listed`;
  return `${records} records, ${findings === 1 ? '1 finding' : told}${rest}\n`;
}
