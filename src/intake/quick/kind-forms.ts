import { allKinds, isKind, type Kind } from '../../records/record.ts';
import { recordSchemas } from '../../records/schema.ts';
import { partOf } from '../schema-node.ts';
import type { LineBytes } from './line-bytes.ts';
import { type Field, fieldsOf } from './object-part.ts';
import type { Part } from './part.ts';
import { PartMaker } from './part-for.ts';
import { decidesPrices } from './price-rows.ts';

/** What a quick look needs of a kind of record, made when the kind is first met. */
export interface KindForm {
  /** The word that names it in the book at hand. */
  readonly word: number;
  readonly kind: Kind;
  /** Its number in `allKinds`. */
  readonly number: number;
  readonly decidesPrices: boolean;
  readonly fields: readonly Field[];
  readonly required: readonly string[];
  /** The one object of the kind, filled anew for each record, and the layout it was filled by. */
  readonly object: Record<string, unknown>;
  filledBy: unknown;
}

export class KindForms {
  readonly #line: LineBytes;
  readonly #maker: PartMaker;
  readonly #own: ReadonlyMap<string, Part>;
  readonly #forms = new Map<number, KindForm>();

  /** @param own parts of the fields that are not read by their schema alone */
  constructor(line: LineBytes, own: ReadonlyMap<string, Part>) {
    this.#line = line;
    this.#maker = new PartMaker(line);
    this.#own = own;
  }

  /** The form of the kind that a word names; undefined where it names none. */
  of(word: number): KindForm | undefined {
    const form = this.#forms.get(word) ?? this.#newForm(word);
    if (form !== undefined) this.#forms.set(word, form);
    return form;
  }

  #newForm(word: number): KindForm | undefined {
    const kind = this.#line.words.text(word);
    if (!isKind(kind)) return undefined;
    const schema = recordSchemas[kind];
    const { fields } = fieldsOf(schema, (node, name) =>
      name === 'kind' ? kindPart(word) : (this.#own.get(name) ?? this.#maker.partFor(node)),
    );
    const required = Object.values(partOf(schema, 'required') ?? {}).map(String);
    return {
      word,
      kind,
      number: allKinds.indexOf(kind),
      decidesPrices: decidesPrices(kind),
      fields,
      required,
      // All fields from the start: an object that gains fields later is another one to the engine.
      object: {
        ...Object.fromEntries(fields.map(({ name }) => [name, undefined])),
        ...always(kind),
      },
      filledBy: undefined,
    };
  }
}

const always = (kind: Kind) => ({ id: '', at: '', by: '', kind });

/** The kind itself, once it is known. */
function kindPart(kind: number): Part {
  return { isLeftOut: true, look: (line) => line.word() === kind, value: () => undefined };
}
