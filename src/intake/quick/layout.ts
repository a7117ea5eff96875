import type { KindForm } from './kind-forms.ts';
import type { LineBytes } from './line-bytes.ts';
import type { Field } from './object-part.ts';

/**
 * The fields that a line has, in their order, as a tree: each step from the root is one more field.
 * Nearly every line goes a way that another went before, so the next field is guessed, and the
 * order of fields on the tape need not be written down line by line.
 */
export class Layout {
  /** Its number among all layouts. */
  readonly number: number;
  /** The last field of the way; undefined at the root. */
  readonly field: Field | undefined;
  /** Undefined until the line has said its kind. */
  readonly form: KindForm | undefined;
  readonly names: readonly string[];
  /** True where all fields are there that must be. */
  readonly isComplete: boolean;
  /** The fields that stand on the tape, in their order there. */
  readonly kept: readonly Field[];
  /** The names of fields of the kind that do not stand on the tape. */
  readonly missing: readonly string[];
  /** Where lines went on from here, each with another field, or with another kind. */
  readonly #ways: Layout[] = [];
  /** The way that the last line went. */
  #guess: Layout | undefined;

  constructor(number: number, form?: KindForm, field?: Field, names: readonly string[] = []) {
    this.number = number;
    this.form = form;
    this.field = field;
    this.names = names;
    const fields = form?.fields ?? [];
    this.kept = names.flatMap((name) => fields.find(isKept(name)) ?? []);
    this.missing = fields
      .filter((each) => !ALWAYS.has(each.name) && !this.kept.includes(each))
      .map((each) => each.name);
    this.isComplete = form?.required.every((name) => names.includes(name)) ?? false;
  }

  /** The way on with the field that stands here, where another line went it before. */
  wayHere(line: LineBytes): Layout | undefined {
    const guess = this.#guess;
    if (guess?.field !== undefined && line.has(guess.field.key)) return guess;
    for (let at = 0; at < this.#ways.length; at += 1) {
      const way = this.#ways[at];
      if (way?.field === undefined || !line.has(way.field.key)) continue;
      this.#guess = way;
      return way;
    }
    return undefined;
  }

  /** The way on with a kind, where another line went it before. */
  wayOfKind(word: number): Layout | undefined {
    for (let at = 0; at < this.#ways.length; at += 1) {
      const way = this.#ways[at];
      if (way?.form?.word === word) return way;
    }
    return undefined;
  }

  addWay(way: Layout): void {
    this.#ways.push(way);
  }
}

/** What the object of a kind has from the start. */
const ALWAYS: ReadonlySet<string> = new Set(['id', 'at', 'by', 'kind']);

function isKept(name: string): (field: Field) => boolean {
  return (field) => field.name === name && !field.part.isLeftOut;
}
