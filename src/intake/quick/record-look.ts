import type { BookRecord } from '../../records/record.ts';
import { type KindForm, KindForms } from './kind-forms.ts';
import { Layout } from './layout.ts';
import { BYTE, LineBytes } from './line-bytes.ts';
import { type Field, openField, passField } from './object-part.ts';
import { RecordMarks } from './record-marks.ts';
import { TapeReader } from './tape.ts';

/** More orders of fields than these are read the slow way. */
const LAYOUTS_MAX = 4096;
/** A kind that stands farther back in its line leaves the line to the slow way. */
const KIND_WITHIN = 4096;

/**
 * Looks at a line's bytes and says "surely a good record" of most, without making an object or a
 * text of any. What it lets pass fits the schema of its kind, has each field once, and has nothing
 * to tell of itself. What it is not sure of, it leaves to the slow way; it never refuses.
 */
export class RecordLook {
  readonly line = new LineBytes();
  readonly marks = new RecordMarks(this.line);
  readonly #forms = new KindForms(this.line, this.marks.parts);
  readonly #layouts: Layout[] = [];
  readonly #root = this.#newLayout();
  readonly #roots = new Map<KindForm, Layout>();
  /** The fields that may come before the kind is known. */
  readonly #open: readonly Field[] = [
    openField('id', this.marks.parts),
    openField('at', this.marks.parts),
    openField('by', this.marks.parts),
    openField('kind', this.marks.parts),
  ];
  /** How far the line went that was looked at last. */
  #reached = this.#root;
  readonly #from = new TapeReader(this.line.tape);

  /**
   * Looks at the line that begins at a place. Gives the place of its record on the tape, or -1
   * where it does not pass.
   */
  look(bytes: Uint8Array, start: number): number {
    const { tape } = this.line;
    this.line.bytes = bytes;
    if (tape.isNearlyFull) tape.turn();
    let top = tape.top;
    let passes = this.#passes(start, top);
    if (tape.isFull) {
      tape.turn();
      top = 0;
      passes = this.#passes(start, top) && !tape.isFull;
    }
    if (!passes) tape.top = top;
    return passes ? tape.placeOf(top) : -1;
  }

  /** The form of the record that passed last. */
  get form(): KindForm | undefined {
    return this.#reached.form;
  }

  /**
   * The record at a place of the tape, without its free text, id and time. It is the one object of
   * its kind, filled anew: to be used and not kept.
   */
  recordAt(place: number): BookRecord | undefined {
    this.#from.goTo(place);
    const layout = this.#layouts[this.#from.next()];
    const form = layout?.form;
    if (layout === undefined || form === undefined) return undefined;
    const { object } = form;
    if (form.filledBy !== layout) for (const name of layout.missing) object[name] = undefined;
    form.filledBy = layout;
    const { kept } = layout;
    for (let at = 0; at < kept.length; at += 1) {
      const field = kept[at];
      if (field !== undefined) object[field.name] = field.part.value(this.#from);
    }
    return isFilled(object, layout) ? object : undefined;
  }

  #passes(start: number, top: number): boolean {
    if (this.#goes(start, top, this.#root)) return true;
    if (this.#reached.form !== undefined) return false;
    const form = this.#formAhead(start);
    return form !== undefined && this.#goes(start, top, this.#rootOf(form));
  }

  #goes(start: number, top: number, root: Layout): boolean {
    const { line } = this;
    this.marks.clear();
    line.at = start;
    line.tape.top = top;
    line.tape.put(0);
    let layout = root;
    let isThrough = line.pass(BYTE.start);
    while (isThrough) {
      this.#reached = layout;
      const next = this.#step(layout);
      if (next === undefined) return false;
      layout = next;
      if (line.bytes[line.at] === BYTE.end) break;
      isThrough = line.pass(BYTE.comma);
    }
    this.#reached = layout;
    line.tape.set(top, layout.number);
    line.at += 1;
    return isThrough && layout.isComplete && line.passEnd();
  }

  /** Goes past one field; undefined where it is not plain. */
  #step(layout: Layout): Layout | undefined {
    const { line } = this;
    const next = layout.wayHere(line) ?? this.#newWay(layout);
    if (next?.field === undefined) return undefined;
    passField(line, next.field);
    if (layout.form === undefined && next.field.name === 'kind') return this.#withKind(next);
    return next.field.part.look(line) ? next : undefined;
  }

  /** A way that no line went yet; undefined where its field is none, or there already. */
  #newWay(layout: Layout): Layout | undefined {
    const fields = layout.form?.fields ?? this.#open;
    const field = fields.find((each) => this.line.has(each.key));
    if (field === undefined || layout.names.includes(field.name)) return undefined;
    if (this.#layouts.length >= LAYOUTS_MAX) return undefined;
    return this.#addedWay(layout, layout.form, field, [...layout.names, field.name]);
  }

  #withKind(open: Layout): Layout | undefined {
    const word = this.line.word();
    if (word < 0) return undefined;
    return open.wayOfKind(word) ?? this.#newKind(open, word);
  }

  #newKind(open: Layout, word: number): Layout | undefined {
    const form = this.#forms.of(word);
    return form && this.#addedWay(open, form, open.field, open.names);
  }

  #addedWay(
    from: Layout,
    form: KindForm | undefined,
    field: Field | undefined,
    names: readonly string[],
  ): Layout {
    const way = this.#newLayout(form, field, names);
    from.addWay(way);
    return way;
  }

  /** Where the kind comes late in a line: its form, found ahead of time. */
  #formAhead(start: number): KindForm | undefined {
    const { line } = this;
    const { bytes } = line;
    const [, , , kind] = this.#open;
    if (kind === undefined) return undefined;
    for (line.at = start; line.at < start + KIND_WITHIN; line.at += 1) {
      if (bytes[line.at] === BYTE.newline) return undefined;
      if (!line.has(kind.key)) continue;
      passField(line, kind);
      const word = line.word();
      return word < 0 ? undefined : this.#forms.of(word);
    }
    return undefined;
  }

  #rootOf(form: KindForm): Layout {
    const root = this.#roots.get(form) ?? this.#newLayout(form);
    this.#roots.set(form, root);
    return root;
  }

  #newLayout(form?: KindForm, field?: Field, names: readonly string[] = []): Layout {
    const layout = new Layout(this.#layouts.length, form, field, names);
    this.#layouts.push(layout);
    return layout;
  }
}

/** Filled by the parts of its own schema; the free text that is missing, no rule ever reads. */
function isFilled(_object: object, layout: Layout): _object is BookRecord {
  return layout.isComplete;
}
