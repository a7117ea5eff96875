import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** A PDF as qpdf reads it: objects as JSON, streams unpacked. Knows nothing of who made the PDF. */
export type PdfValue = string | number | boolean | null | PdfValue[] | PdfDictionary;
export interface PdfDictionary {
  [name: string]: PdfValue;
}

interface PdfObject {
  readonly value?: PdfValue;
  readonly stream?: { readonly dict: PdfDictionary; readonly data?: string };
}

export class PdfObjects {
  readonly #objects: Readonly<Record<string, PdfObject>>;

  constructor(objects: Readonly<Record<string, PdfObject>>) {
    this.#objects = objects;
  }

  static of(pdf: Uint8Array): PdfObjects {
    const folder = mkdtempSync(join(tmpdir(), 'pdf-objects-'));
    try {
      const file = join(folder, 'paper.pdf');
      writeFileSync(file, pdf);
      const args = ['--json=2', '--json-stream-data=inline', '--decode-level=generalized', file];
      const text = execFileSync('qpdf', args, { encoding: 'utf8', maxBuffer: 256 * 1024 * 1024 });
      return new PdfObjects(JSON.parse(text).qpdf[1]);
    } finally {
      rmSync(folder, { recursive: true });
    }
  }

  get catalog(): PdfDictionary {
    return this.dictionary(this.#dictionaryAt('trailer')['/Root']);
  }

  /** What a reference points at, or the value itself. */
  value(value: PdfValue | undefined): PdfValue {
    if (typeof value !== 'string' || !/^\d+ \d+ R$/.test(value)) return value ?? null;
    const object = this.#objects[`obj:${value}`];
    return object?.value ?? object?.stream?.dict ?? null;
  }

  dictionary(value: PdfValue | undefined): PdfDictionary {
    const found = this.value(value);
    return typeof found === 'object' && found !== null && !Array.isArray(found) ? found : {};
  }

  /** An array, or one value as an array of it; nothing as an empty one. */
  list(value: PdfValue | undefined): PdfValue[] {
    const found = this.value(value);
    return Array.isArray(found) ? found : found === null ? [] : [value ?? null];
  }

  /** The unpacked bytes of a stream, one character a byte. */
  stream(reference: PdfValue | undefined): string {
    const data = this.#objects[`obj:${String(reference)}`]?.stream?.data ?? '';
    return Buffer.from(data, 'base64').toString('latin1');
  }

  /** Every dictionary of a type. */
  ofType(type: string): PdfDictionary[] {
    return Object.keys(this.#objects)
      .map((name) => this.#dictionaryAt(name))
      .filter((found) => found['/Type'] === type);
  }

  #dictionaryAt(name: string): PdfDictionary {
    const value = this.#objects[name]?.value;
    return typeof value === 'object' && value !== null && !Array.isArray(value) ? value : {};
  }
}
