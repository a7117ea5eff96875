import { RecordId } from '../../records/fields.ts';
import { numberOf, partOf } from '../schema-node.ts';
import { ListPart, MapPart, TextsPart } from './group-parts.ts';
import type { LineBytes } from './line-bytes.ts';
import { ObjectPart } from './object-part.ts';
import type { Part } from './part.ts';
import { RecordIdPart, TextPart, WordPart, WordTest } from './text-parts.ts';
import { FlagPart, WholePart } from './whole-parts.ts';
import { WholesPart } from './wholes-part.ts';

/**
 * Makes the parts of a schema. Together they let pass only what the schema itself lets pass; a test
 * holds them to it, as it does for the quick look at parsed values.
 */
export class PartMaker {
  readonly #line: LineBytes;
  /** One test for each pattern, so that a word that is known to pass is not tested again. */
  readonly #tests = new Map<string, WordTest>();

  constructor(line: LineBytes) {
    this.#line = line;
  }

  /** @param isInside true within a list or a map, where a record has several of the value */
  partFor(schema: unknown, isInside = false): Part {
    const fixed = partOf(schema, 'const');
    if (typeof fixed === 'string') return this.#oneOf([fixed]);
    const words = partOf(schema, 'anyOf');
    if (Array.isArray(words)) return this.#oneOf(words.map((word) => partOf(word, 'const')));
    switch (partOf(schema, 'type')) {
      case 'string':
        return this.#stringPart(schema, isInside);
      case 'integer':
        return new WholePart(numberOf(schema, 'minimum') ?? 0, numberOf(schema, 'maximum') ?? -1);
      case 'boolean':
        return new FlagPart();
      case 'array':
        return this.#arrayPart(schema);
      case 'object':
        return partOf(schema, 'patternProperties') === undefined
          ? new ObjectPart(schema, (node) => this.partFor(node, true))
          : this.#mapPart(schema, isInside);
      default:
        return nothing;
    }
  }

  #oneOf(words: readonly unknown[]): Part {
    const known = new Set(words);
    return new WordPart(new WordTest((text) => known.has(text)), this.#line.words);
  }

  #stringPart(schema: unknown, isInside: boolean): Part {
    const pattern = partOf(schema, 'pattern');
    // Lists of ids say what was in the cash box: they move nothing. Other ids are RecordMarks' own.
    if (pattern === partOf(RecordId, 'pattern')) return isInside ? new RecordIdPart() : nothing;
    if (typeof pattern === 'string') return new WordPart(this.#testFor(pattern), this.#line.words);
    return new TextPart(numberOf(schema, 'minLength') ?? 0, numberOf(schema, 'maxLength') ?? -1);
  }

  #arrayPart(schema: unknown): Part {
    const items = partOf(schema, 'items');
    if (!Array.isArray(items)) return new ListPart(this.partFor(items, true));
    // Of lists of fixed length there are only names of people.
    const parts = items.map((item) => this.partFor(item, true));
    return parts.every((part) => part.isLeftOut) ? new TextsPart(parts) : nothing;
  }

  #mapPart(schema: unknown, isInside: boolean): Part {
    const [entry] = Object.entries(partOf(schema, 'patternProperties') ?? {});
    if (entry === undefined) return nothing;
    const [pattern, each] = entry;
    const test = this.#testFor(pattern);
    const { words } = this.#line;
    if (partOf(each, 'type') !== 'integer')
      return new MapPart(test, this.partFor(each, true), words);
    return new WholesPart(this.#line, test, numberOf(each, 'minimum') ?? 0, isInside);
  }

  #testFor(pattern: string): WordTest {
    const known = this.#tests.get(pattern);
    if (known !== undefined) return known;
    const expression = new RegExp(pattern, 'u');
    const test = new WordTest((text) => expression.test(text));
    this.#tests.set(pattern, test);
    return test;
  }
}

/** For what no quick look is worth having. */
const nothing: Part = { isLeftOut: true, look: () => false, value: () => undefined };
