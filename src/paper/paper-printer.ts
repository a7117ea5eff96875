import { readFileSync } from 'node:fs';
import { NodeCompiler } from '@myriaddreamin/typst-ts-node-compiler';
import { done, type Outcome, refused } from '../base/outcome.ts';
import type { Paper } from '../statements/paper.ts';
import { fontBytes, hanFont, usualFonts } from './paper-fonts.ts';
import { printablePaper } from './printable-paper.ts';

export type PaperSize = 'a4' | 'letter';

export interface PrintedPaper {
  /** A tagged PDF that the compiler has checked against PDF/UA-1. */
  readonly pdf: Uint8Array;
  readonly pages: number;
  /** Characters that no font has, printed as an empty box; to be told to the user. */
  readonly replaced: readonly string[];
}

/** The typesetter would not make the paper: a fault of ours, told in its own words. */
export interface PaperRefusal {
  readonly name: 'paper_not_made';
  readonly paper: string;
  readonly detail: string;
}

/** A folder that does not exist: the typesetter sees the two files given here and nothing else. */
const NOWHERE = '/cratebook-paper';
const TEMPLATE = readFileSync(new URL('./paper.typ', import.meta.url), 'utf8');
const SIZES: Readonly<Record<PaperSize, string>> = { a4: 'a4', letter: 'us-letter' };
/** Results of the last papers that are kept for the next one; more costs memory and time. */
const CACHE_AGE = 1;

/**
 * Makes PDFs one after the other with compilers that are kept: making one takes longer than a
 * paper. Same paper, same bytes: no clock, machine font or network is read.
 */
export class PaperPrinter {
  readonly #compilers = new Map<string, NodeCompiler>();

  print(paper: Paper, size: PaperSize): Outcome<PrintedPaper, PaperRefusal> {
    const { paper: printable, families, replaced } = printablePaper(paper);
    const compiler = this.#compilerFor(families.includes(hanFont.family));
    const data = { ...printable, size: SIZES[size], fonts: families };
    compiler.mapShadow(`${NOWHERE}/paper.json`, Buffer.from(JSON.stringify(data)));
    const compiled = compiler.compile({ mainFilePath: `${NOWHERE}/paper.typ` });
    try {
      const document = compiled.result;
      if (document === null) {
        const error = compiled.takeError();
        const said = error === null ? [] : compiler.fetchDiagnostics(error);
        return refused(notMade(paper, JSON.stringify(said)));
      }
      const pdf = compiler.pdf(document, { pdfStandard: 'ua-1' });
      return done({ pdf, pages: document.numOfPages, replaced });
    } catch (error) {
      return refused(notMade(paper, String(error)));
    } finally {
      compiler.evictCache(CACHE_AGE);
    }
  }

  #compilerFor(han: boolean): NodeCompiler {
    const key = han ? 'han' : 'usual';
    const known = this.#compilers.get(key);
    if (known !== undefined) return known;
    const fonts = han ? [...usualFonts, hanFont] : usualFonts;
    const compiler = NodeCompiler.create({
      workspace: NOWHERE,
      fontArgs: [{ fontBlobs: fonts.map(fontBytes) }],
    });
    compiler.addSource(`${NOWHERE}/paper.typ`, TEMPLATE);
    this.#compilers.set(key, compiler);
    return compiler;
  }
}

function notMade(paper: Paper, detail: string): PaperRefusal {
  return { name: 'paper_not_made', paper: paper.fileName, detail };
}
