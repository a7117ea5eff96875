import { holdsCardNumber } from './card-text.ts';
import { type Finding, fieldPath, saidOf } from './finding.ts';
import type { FieldForm, Fields } from './record-form.ts';
import type { Place } from './schema-findings.ts';

/**
 * What a schema does not say about a record: fields it does not know (kept, and told), card numbers
 * in free text (never kept), characters that no store or paper can hold.
 */

type Path = readonly (string | number)[];

const DEPTH_MAX = 16;
const NO_CARD = 'no payment card number here: leave it out, or keep only the last four digits';
const NO_BROKEN = 'text without NUL or half characters';

/** Everything there is to tell about a record beyond its schema, field by field. */
export function partFindings(value: object, fields: Fields, place: Place): Finding[] {
  const look = new Look(place);
  look.object(value, fields, []);
  return look.findings;
}

class Look {
  readonly findings: Finding[] = [];
  readonly #place: Place;

  constructor(place: Place) {
    this.#place = place;
  }

  object(value: object, fields: Fields, path: Path): void {
    for (const key of Object.keys(value)) {
      const part: unknown = Reflect.get(value, key);
      const form = fields.get(key);
      if (form === undefined) this.#unknownField(key, part, [...path, key]);
      else this.#known(part, form, [...path, key]);
    }
  }

  #known(part: unknown, form: FieldForm, path: Path): void {
    if (typeof part === 'string') this.#text(part, form.holds === 'text', path);
    if (typeof part !== 'object' || part === null) return;
    if (form.holds === 'object') {
      this.object(part, form.fields, path);
    } else if (form.holds === 'map' || form.holds === 'list') {
      for (const key of Object.keys(part)) {
        this.#known(Reflect.get(part, key), form.each, [...path, key]);
      }
    }
  }

  #text(text: string, isFree: boolean, path: Path): void {
    if (isFree && holdsCardNumber(text)) this.#add('error', path, saidOf(text), NO_CARD);
    else if (text.includes('\0') || !text.isWellFormed()) {
      this.#add('error', path, saidOf(text), NO_BROKEN);
    }
  }

  #unknownField(key: string, part: unknown, path: Path): void {
    const before = this.findings.length;
    this.#unknown(key, part, path);
    if (this.findings.length > before) return;
    this.#add('warning', path, saidOf(part), 'a field that the book knows; it is kept as it came');
  }

  #unknown(key: string, part: unknown, path: Path): void {
    if (key === '__proto__') {
      this.#add('error', path, '__proto__', 'another name for the field: this one is reserved');
    } else if (holdsCardNumber(key)) {
      this.#add('error', path, saidOf(key), NO_CARD);
    } else if (typeof part === 'string') {
      this.#text(part, true, path);
    } else if (typeof part === 'number' && holdsCardNumber(String(part))) {
      this.#add('error', path, saidOf(part), NO_CARD);
    } else if (typeof part === 'object' && part !== null) {
      if (path.length > DEPTH_MAX) {
        this.#add('error', path, saidOf(part), `at most ${DEPTH_MAX} fields inside each other`);
        return;
      }
      for (const inner of Object.keys(part)) {
        this.#unknown(inner, Reflect.get(part, inner), [...path, inner]);
      }
    }
  }

  #add(severity: Finding['severity'], path: Path, said: unknown, wanted: string): void {
    this.findings.push({ ...this.#place, field: fieldPath(path), said, wanted, severity });
  }
}
