/**
 * Which characters a TrueType font can draw, and how wide, read from its `cmap` table (OpenType
 * specification, formats 4 and 12) and its `hmtx` table. A paper must know beforehand: one missing
 * glyph fails the whole PDF/UA check, and columns are measured before anything is set.
 */

const FORMAT_BMP = 4;
const FORMAT_ALL = 12;

/** The characters of a font as sorted, inclusive ranges of code points. */
export class GlyphCoverage {
  readonly #starts: number[] = [];
  readonly #ends: number[] = [];
  /** The glyph of each range's first character; the others follow it. */
  readonly #glyphs: number[] = [];
  readonly #view: DataView;

  constructor(font: Uint8Array) {
    this.#view = new DataView(font.buffer, font.byteOffset, font.byteLength);
    for (const [start, end, glyph] of rangesOf(this.#view)) {
      this.#starts.push(start);
      this.#ends.push(end);
      this.#glyphs.push(glyph);
    }
  }

  has(codePoint: number): boolean {
    return this.#rangeOf(codePoint) !== undefined;
  }

  /** How far a character moves on, in thousandths of the type size; undefined where not drawn. */
  advance(codePoint: number): number | undefined {
    const range = this.#rangeOf(codePoint);
    if (range === undefined) return undefined;
    const glyph = (this.#glyphs[range] ?? 0) + codePoint - (this.#starts[range] ?? 0);
    return advanceOf(this.#view, glyph);
  }

  #rangeOf(codePoint: number): number | undefined {
    let low = 0;
    let high = this.#starts.length - 1;
    while (low <= high) {
      const middle = (low + high) >> 1;
      if (codePoint < (this.#starts[middle] ?? 0)) high = middle - 1;
      else if (codePoint > (this.#ends[middle] ?? 0)) low = middle + 1;
      else return middle;
    }
    return undefined;
  }
}

type Range = readonly [start: number, end: number, glyph: number];

/** Glyphs past the last full entry of `hmtx` are all as wide as that one. */
function advanceOf(view: DataView, glyph: number): number | undefined {
  const [head, hhea, hmtx] = ['head', 'hhea', 'hmtx'].map((name) => tableAt(view, name));
  if (head === undefined || hhea === undefined || hmtx === undefined) return undefined;
  const unitsPerEm = view.getUint16(head + 18);
  const last = view.getUint16(hhea + 34) - 1;
  return (view.getUint16(hmtx + 4 * Math.min(glyph, last)) * 1000) / unitsPerEm;
}

/** The ranges of the fullest Unicode subtable, in ascending order. */
function rangesOf(view: DataView): Range[] {
  const cmap = tableAt(view, 'cmap');
  if (cmap === undefined) return [];
  let bmp: number | undefined;
  for (let at = 0; at < view.getUint16(cmap + 2); at += 1) {
    const subtable = cmap + view.getUint32(cmap + 4 + 8 * at + 4);
    const format = view.getUint16(subtable);
    if (format === FORMAT_ALL) return rangesOfAll(view, subtable);
    if (format === FORMAT_BMP) bmp = subtable;
  }
  return bmp === undefined ? [] : rangesOfBmp(view, bmp);
}

function tableAt(view: DataView, name: string): number | undefined {
  for (let at = 0; at < view.getUint16(4); at += 1) {
    const entry = 12 + 16 * at;
    const tag = String.fromCharCode(...[0, 1, 2, 3].map((letter) => view.getUint8(entry + letter)));
    if (tag === name) return view.getUint32(entry + 8);
  }
  return undefined;
}

function rangesOfAll(view: DataView, subtable: number): Range[] {
  const ranges: Range[] = [];
  for (let group = 0; group < view.getUint32(subtable + 12); group += 1) {
    const at = subtable + 16 + 12 * group;
    ranges.push([view.getUint32(at), view.getUint32(at + 4), view.getUint32(at + 8)]);
  }
  return ranges;
}

/** Format 4 may map a code of a segment to glyph 0, which is no glyph. */
function rangesOfBmp(view: DataView, subtable: number): Range[] {
  const twice = view.getUint16(subtable + 6);
  const ends = subtable + 14;
  const starts = ends + twice + 2;
  const deltas = starts + twice;
  const offsets = deltas + twice;
  const ranges: Range[] = [];
  for (let at = 0; at < twice; at += 2) {
    const start = view.getUint16(starts + at);
    const end = view.getUint16(ends + at);
    const offset = view.getUint16(offsets + at);
    for (let code = start; code <= end && code < 0xffff; code += 1) {
      const glyphAt = offsets + at + offset + 2 * (code - start);
      const delta = view.getUint16(deltas + at);
      const listed = offset === 0 ? code : view.getUint16(glyphAt);
      const glyph = listed === 0 ? 0 : (listed + delta) & 0xffff;
      if (glyph !== 0) ranges.push([code, code, glyph]);
    }
  }
  return ranges;
}
