import { readFileSync } from 'node:fs';
import { NodeCompiler } from '@myriaddreamin/typst-ts-node-compiler';
import { done, type Outcome, refused } from '../base/outcome.ts';
import type { Paper } from '../statements/paper.ts';
import { fontBytes, hanFont, usualFonts } from './paper-fonts.ts';
import { printable } from './printable.ts';
import { laidOut } from './table-layout.ts';

export type PaperSize = 'a4' | 'letter';

/** Papers that are printed into one PDF, each on sheets of its own and in a language of its own. */
export interface Sheaf {
  readonly fileName: string;
  readonly title: string;
  /** BCP 47 tag of the title. */
  readonly language: string;
  readonly papers: readonly Paper[];
}

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

export type Printed = Outcome<PrintedPaper, PaperRefusal>;

/** A folder that does not exist: the typesetter sees the files given here and nothing else. */
const NOWHERE = '/cratebook-paper';
const TEMPLATE = readFileSync(new URL('./paper.typ', import.meta.url), 'utf8');
const SIZES: Readonly<Record<PaperSize, string>> = { a4: 'a4', letter: 'us-letter' };
/** Results are kept from one PDF to the next, and dropped after this many: dropping takes time. */
const PDFS_CACHED = 10;

/**
 * Makes PDFs one after the other with compilers that are kept: making one takes longer than a
 * paper. Same paper, same bytes: no clock, machine font or network is read.
 */
export class PaperPrinter {
  readonly #compilers = new Map<boolean, NodeCompiler>();
  #made = 0;

  print(paper: Paper, size: PaperSize): Printed {
    const { fileName, title, language } = paper;
    return this.printSheaf({ fileName, title, language, papers: [paper] }, size);
  }

  /** Every paper starts on a sheet of its own, also where sheets are printed on both sides. */
  printSheaf(sheaf: Sheaf, size: PaperSize): Printed {
    // Counting pages costs a second round of typesetting, and most papers are one page.
    const isAlone = sheaf.papers.length === 1;
    const printed = this.#typeset(sheaf, size, isAlone);
    if (!isAlone || !printed.ok || printed.value.pages === 1) return printed;
    return this.#typeset(sheaf, size, false);
  }

  /** @param isOnePage what the feet of pages say; the paper may turn out to be longer */
  #typeset(sheaf: Sheaf, size: PaperSize, isOnePage: boolean): Printed {
    const { json, needsHan, replaced } = printable({
      title: sheaf.title,
      speaks: typesetLanguage(sheaf.language),
      size: SIZES[size],
      isOnePage,
      papers: sheaf.papers.map((paper) => ({
        ...laidOut(paper),
        speaks: typesetLanguage(paper.language),
      })),
    });
    const compiler = this.#compilerFor(needsHan);
    compiler.mapShadow(`${NOWHERE}/papers.json`, Buffer.from(json));
    const compiled = compiler.compile({ mainFilePath: `${NOWHERE}/paper.typ` });
    try {
      const document = compiled.result;
      if (document === null) {
        const error = compiled.takeError();
        const said = error === null ? [] : compiler.fetchDiagnostics(error);
        return refused(paperNotMade(sheaf.fileName, JSON.stringify(said)));
      }
      const pdf = compiler.pdf(document, { pdfStandard: 'ua-1' });
      return done({ pdf, pages: document.numOfPages, replaced });
    } catch (error) {
      return refused(paperNotMade(sheaf.fileName, String(error)));
    } finally {
      this.#made += 1;
      if (this.#made % PDFS_CACHED === 0) compiler.evictCache(0);
    }
  }

  #compilerFor(needsHan: boolean): NodeCompiler {
    const known = this.#compilers.get(needsHan);
    if (known !== undefined) return known;
    const fonts = needsHan ? [...usualFonts, hanFont] : usualFonts;
    const compiler = NodeCompiler.create({
      workspace: NOWHERE,
      fontArgs: [{ fontBlobs: fonts.map(fontBytes) }],
    });
    const families = [...new Set(fonts.map((font) => font.family))];
    compiler.mapShadow(`${NOWHERE}/fonts.json`, Buffer.from(JSON.stringify(families)));
    compiler.addSource(`${NOWHERE}/paper.typ`, TEMPLATE);
    this.#compilers.set(needsHan, compiler);
    return compiler;
  }
}

interface TypesetLanguage {
  readonly lang: string;
  readonly region: string | null;
}

/** The typesetter tells scripts of one language apart by a country where they are usual. */
function typesetLanguage(tag: string): TypesetLanguage {
  const { language, script } = new Intl.Locale(tag);
  const region = script === undefined ? undefined : new Intl.Locale(tag).maximize().region;
  return { lang: language ?? 'und', region: region ?? null };
}

/** @param paper the name of its file */
export function paperNotMade(paper: string, detail: string): PaperRefusal {
  return { name: 'paper_not_made', paper, detail };
}
