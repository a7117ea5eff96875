import type { Paper } from '../statements/paper.ts';
import { paperPdf } from './paper-pdf.ts';
import type { PaperSize, Printed, Sheaf } from './paper-printer.ts';
import { PrintQueue } from './print-queue.ts';

/** Many papers at once: a few are printed here, more go to processes of their own. */

/** Up to this many papers, starting processes would take longer than printing. */
const HERE_MAX = 24;
const WORKERS_MAX = 4;
const WAITING_MAX = 3;
/**
 * Papers in one PDF: the typesetter keeps a whole document in memory, about 2.5 MB a paper.
 */
export const TOGETHER_MAX = 200;

export interface BatchOptions {
  readonly size: PaperSize;
  /**
   * Called for each paper as it is done, in no fixed order. One that was refused does not stop the
   * others. `done` counts from 1 to the number of papers, for showing progress.
   */
  readonly each: (paper: Paper, printed: Printed, done: number) => void;
}

/** @param papers may be made as they are taken */
export async function paperPdfs(papers: Iterable<Paper>, options: BatchOptions): Promise<void> {
  let done = 0;
  const tell = (paper: Paper, printed: Printed): void => {
    done += 1;
    options.each(paper, printed, done);
  };
  const taken = papers[Symbol.iterator]();
  const first = upTo(HERE_MAX + 1, taken);
  if (first.length <= HERE_MAX) {
    for (const paper of first) tell(paper, await paperPdf(paper, options));
    return;
  }
  const queue = new PrintQueue(alone(first, taken), options.size, WAITING_MAX, (sheaf, printed) => {
    for (const paper of sheaf.papers) tell(paper, printed);
  });
  await queue.print(WORKERS_MAX);
}

function upTo(most: number, papers: Iterator<Paper>): Paper[] {
  const taken: Paper[] = [];
  while (taken.length < most) {
    const { value, done } = papers.next();
    if (done === true) break;
    taken.push(value);
  }
  return taken;
}

function* alone(first: readonly Paper[], rest: Iterator<Paper>): Generator<Sheaf> {
  const sheaf = (paper: Paper) => ({
    fileName: paper.fileName,
    title: paper.title,
    language: paper.language,
    papers: [paper],
  });
  yield* first.map(sheaf);
  for (let next = rest.next(); next.done !== true; next = rest.next()) yield sheaf(next.value);
}

export interface TogetherOptions {
  readonly size: PaperSize;
  /** Title of the PDF. */
  readonly title: string;
  /** BCP 47 tag of the title. */
  readonly language: string;
  readonly fileName: string;
}

/**
 * Papers in one PDF to be printed at once, each on sheets of its own also when printed on both
 * sides. More papers than one document holds become several, in the order given.
 */
export async function papersTogether(
  papers: readonly Paper[],
  { size, title, language, fileName }: TogetherOptions,
): Promise<Printed[]> {
  const parts = Math.ceil(papers.length / TOGETHER_MAX);
  const sheaves = Array.from({ length: parts }, (_, part): Sheaf => {
    const from = part * TOGETHER_MAX;
    return { fileName, title, language, papers: papers.slice(from, from + TOGETHER_MAX) };
  });
  const made = new Map<Sheaf, Printed>();
  const queue = new PrintQueue(sheaves, size, 1, (sheaf, printed) => made.set(sheaf, printed));
  // One process after the other: each needs half a gigabyte at most.
  await queue.print(1);
  return sheaves.flatMap((sheaf) => made.get(sheaf) ?? []);
}
