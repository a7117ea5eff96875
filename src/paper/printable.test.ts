import { describe, expect, it } from 'vitest';
import { printable } from './printable.ts';

describe('data made printable', () => {
  it('stays as it is where every character has a glyph', () => {
    const data = { name: 'Márta Kő-Ñandú · عمر "שלום" \\ #x' };
    const made = printable(data);
    expect(JSON.parse(made.json)).toEqual(data);
    expect(made).toMatchObject({ needsHan: false, replaced: [] });
  });

  it('asks for the large font only where a text needs it', () => {
    expect(printable({ name: '中村' })).toMatchObject({ needsHan: true, replaced: [] });
  });

  it('shows a box for what no font has, and says so once', () => {
    const made = printable({ name: 'Sam 😀😀', note: '\ud800' });
    expect(JSON.parse(made.json)).toEqual({ name: 'Sam □□', note: '□' });
    expect(made.replaced).toEqual(['😀', '\ufffd']);
  });

  it('puts a space for controls and rare blanks, and composes accents', () => {
    const made = printable({ name: 'a\u0001b\nc\ufeffd n\u0303' });
    expect(JSON.parse(made.json)).toEqual({ name: 'a b c d ñ' });
  });
});
